package quarterfold.ledger;

import java.util.Optional;
import quarterfold.money.Amount;

/**
 * The amounts a document prints, positive as printed; a negative is a reversal. At least one is
 * there, but for a fuel scale charge, which a table sets; what is absent was not printed, and is
 * for the treatment to work out.
 */
public record Amounts(Optional<Amount> net, Optional<Amount> vat, Optional<Amount> gross) {

    public static Amounts ofGross(Amount gross) {
        return new Amounts(Optional.empty(), Optional.empty(), Optional.of(gross));
    }

    public static Amounts ofNet(Amount net) {
        return new Amounts(Optional.of(net), Optional.empty(), Optional.empty());
    }

    /** The same with every sign turned. */
    Amounts negated() {
        return new Amounts(
                net.map(Amount::negated), vat.map(Amount::negated), gross.map(Amount::negated));
    }

    /** The money that moves: the gross, or net and VAT together, or the one amount there is. */
    public Amount money() {
        return gross.orElseGet(() -> net.orElse(Amount.ZERO).plus(vat.orElse(Amount.ZERO)));
    }
}
