package quarterfold.intake;

import java.util.stream.Collectors;
import java.util.stream.Stream;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Particulars;
import quarterfold.money.Amount;

/**
 * States what an invoice says of advances: that it charges one, or what was paid before it, and
 * which documents it follows. EN 16931-1 takes the amount paid (BT-113) off the total with VAT, so
 * it leaves the VAT breakdown whole; a supplier who takes an advance off before VAT does it by a
 * line below zero or by an allowance.
 */
final class Advanced {
    private Advanced() {}

    static Particulars state(Invoice invoice, Particulars of) {
        if (invoice.type().credit() || invoice.totals().gross().signum() <= 0) {
            return of;
        }
        if (invoice.type().isAdvance()) {
            return of.with(Particular.ADVANCE, "yes");
        }
        Amount paid = invoice.totals().paid().orElse(Amount.ZERO);
        Particulars stated = of;
        if (paid.signum() > 0) {
            stated = stated.with(Particular.PREPAID, paid.toString());
        } else if (takesOff(invoice)) {
            return stated;
        }
        String follows =
                invoice.preceding().stream()
                        .map(number -> number.replaceAll("[\\s\\p{Cntrl},]", ""))
                        .filter(number -> !number.isEmpty())
                        .collect(Collectors.joining(","));
        return Particulars.isOf(Particular.FOLLOWS, follows)
                ? stated.with(Particular.FOLLOWS, follows)
                : stated;
    }

    /** Whether anything is taken off before VAT. */
    private static boolean takesOff(Invoice invoice) {
        return Stream.concat(
                        invoice.items().stream().map(i -> i.net().signum() < 0),
                        invoice.adjustments().stream().map(a -> !a.charge()))
                .anyMatch(off -> off);
    }
}
