package quarterfold.intake;

import quarterfold.ledger.Amounts;
import quarterfold.money.Amount;

/** The identity that a document's amounts must keep where it prints all three. */
final class AmountsCheck {
    private AmountsCheck() {}

    /** Adds a problem unless net and VAT make the gross; {@code column} is that of the gross. */
    static void check(Row row, String column, Amounts amounts) {
        if (amounts.net().isEmpty() || amounts.vat().isEmpty() || amounts.gross().isEmpty()) {
            return;
        }
        Amount net = amounts.net().get();
        Amount vat = amounts.vat().get();
        Amount gross = amounts.gross().get();
        if (!net.plus(vat).equals(gross)) {
            row.fault(
                    column,
                    "found '%s'; expected net %s + vat %s = %s"
                            .formatted(gross, net, vat, net.plus(vat)));
        }
    }
}
