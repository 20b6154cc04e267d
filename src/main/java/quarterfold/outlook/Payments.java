package quarterfold.outlook;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import quarterfold.law.Law;
import quarterfold.ledger.PaymentMethod;

/**
 * When a payment must be made by each method (GOV.UK, Pay your VAT bill; the tax authority's
 * deadline calculator). A fast payment may arrive on any day; what goes by the banks' working days
 * must arrive on the last of them.
 */
record Payments(Law law, WorkingDays days) {

    /**
     * @param due the last day of payment, the seven extra days included where they apply
     * @param extended whether they apply; without them every payment must arrive on a working day,
     *     and no rule read says when a direct debit is collected
     */
    List<PaymentDates> by(LocalDate due, boolean extended) {
        return Arrays.stream(PaymentMethod.values()).map(m -> by(m, due, extended)).toList();
    }

    private PaymentDates by(PaymentMethod method, LocalDate due, boolean extended) {
        LocalDate working = days.onOrBefore(due);
        return switch (method) {
            case FASTER_PAYMENT -> {
                LocalDate last = extended ? due : working;
                yield new PaymentDates(method, last, last, Optional.empty(), Optional.empty());
            }
            case CHAPS ->
                    new PaymentDates(method, working, working, Optional.empty(), Optional.empty());
            case CARD, BACS ->
                    new PaymentDates(
                            method,
                            working,
                            days.before(working, number("card-or-bacs-working-days", due)),
                            Optional.empty(),
                            Optional.empty());
            case DIRECT_DEBIT -> directDebit(due, working, extended);
        };
    }

    /** Two official texts differ on the set-up; the stricter is the day, the other is kept. */
    private PaymentDates directDebit(LocalDate due, LocalDate working, boolean extended) {
        LocalDate one = days.before(working, number("direct-debit-set-up-guidance", due));
        LocalDate other = days.before(working, number("direct-debit-set-up-calculator", due));
        LocalDate stricter = one.isBefore(other) ? one : other;
        LocalDate later = one.isBefore(other) ? other : one;
        return new PaymentDates(
                PaymentMethod.DIRECT_DEBIT,
                extended ? due : working,
                stricter,
                Optional.of(later).filter(l -> !l.equals(stricter)),
                extended
                        ? Optional.of(days.after(due, number("direct-debit-taken", due)))
                        : Optional.empty());
    }

    private int number(String rule, LocalDate day) {
        return Integer.parseInt(law.periodRule(rule, day).value());
    }
}
