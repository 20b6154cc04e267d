package quarterfold.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Particulars;
import quarterfold.money.Amount;

/**
 * States what an invoice says of documents before it: that it charges an advance, or what was paid
 * before it, which documents it follows, and that it corrects them. EN 16931-1 takes the amount
 * paid (BT-113) off the total with VAT, so it leaves the VAT breakdown whole; a supplier who takes
 * an advance off before VAT does it by a line below zero or by an allowance.
 */
final class Advanced {
    private Advanced() {}

    static Particulars state(Invoice invoice, Particulars of) {
        if (!isCharge(invoice)) {
            return of;
        }
        if (invoice.type().isAdvance()) {
            return of.with(Particular.ADVANCE, "yes");
        }
        Amount paid = paid(invoice);
        Particulars stated = paid.signum() > 0 ? of.with(Particular.PREPAID, paid.toString()) : of;
        Particulars following = follows(numbers(invoice), stated);
        return invoice.type().isCorrected() && following.word(Particular.FOLLOWS).isPresent()
                ? following.with(Particular.AMENDED, "yes")
                : following;
    }

    /** The sales that the seller's credit note takes from. */
    static Particulars credited(Invoice invoice, Particulars of) {
        return invoice.type().credit() ? follows(named(invoice), of) : of;
    }

    private static Particulars follows(List<String> numbers, Particulars of) {
        List<String> fitting = fitting(numbers);
        return fitting.isEmpty() ? of : of.with(Particular.FOLLOWS, String.join(",", fitting));
    }

    /**
     * How many of the documents that it follows the particular has no room for.
     *
     * @param sold whether the business is the seller
     */
    static int leftOut(Invoice invoice, boolean sold) {
        List<String> credited = invoice.type().credit() ? named(invoice) : List.of();
        List<String> numbers = sold ? credited : numbers(invoice);
        return numbers.size() - fitting(numbers).size();
    }

    private static boolean isCharge(Invoice invoice) {
        return !invoice.type().credit() && invoice.totals().gross().signum() > 0;
    }

    private static Amount paid(Invoice invoice) {
        return invoice.totals().paid().orElse(Amount.ZERO);
    }

    /**
     * The documents that it follows, none where it takes off before VAT what was paid for them; but
     * those it corrects in any case.
     */
    private static List<String> numbers(Invoice invoice) {
        if (!isCharge(invoice)
                || invoice.type().isAdvance()
                || (!invoice.type().isCorrected()
                        && paid(invoice).signum() <= 0
                        && takesOff(invoice))) {
            return List.of();
        }
        return named(invoice);
    }

    private static List<String> named(Invoice invoice) {
        return invoice.preceding().stream()
                .map(number -> number.replaceAll("[\\s\\p{Cntrl},]", ""))
                .filter(number -> !number.isEmpty())
                .toList();
    }

    /** Those that the particular has room for, each whole. */
    private static List<String> fitting(List<String> numbers) {
        List<String> fitting = new ArrayList<>();
        for (String number : numbers) {
            fitting.add(number);
            if (!Particulars.isOf(Particular.FOLLOWS, String.join(",", fitting))) {
                fitting.remove(fitting.size() - 1);
            }
        }
        return fitting;
    }

    /** Whether anything is taken off before VAT. */
    private static boolean takesOff(Invoice invoice) {
        return Stream.concat(
                        invoice.items().stream().map(i -> i.net().signum() < 0),
                        invoice.adjustments().stream().map(a -> !a.charge()))
                .anyMatch(off -> off);
    }
}
