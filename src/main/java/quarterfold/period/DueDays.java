package quarterfold.period;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Optional;
import quarterfold.law.Law;
import quarterfold.ledger.AnnualAccounting;
import quarterfold.ledger.PaymentsOnAccount;
import quarterfold.ledger.Periods;

/**
 * The days returns are due: as the tax authority notified, or else by {@code periods.csv} as it is
 * on the last day of the period. A due day does not move for a weekend.
 */
record DueDays(Periods periods, Law law) {

    LocalDate of(LocalDate start, LocalDate end) {
        return periods.notified().stream()
                .filter(n -> n.from().equals(start))
                .flatMap(n -> n.due().stream())
                .findFirst()
                .orElseGet(() -> byRule(start, end));
    }

    private LocalDate byRule(LocalDate start, LocalDate end) {
        if (periods.registeredTo().filter(end::equals).isPresent()) {
            return end.plusMonths(number("final-due-months", end))
                    .plusDays(number("due-extra-days", end));
        }
        if (annual(start).isPresent()) {
            int shortYear = number("annual-short-year-months", end);
            boolean isShort = end.isBefore(start.plusMonths(shortYear).minusDays(1));
            return monthEnd(end, isShort ? "annual-short-due-months" : "annual-due-months");
        }
        LocalDate due = monthEnd(end, "due-month-ends-after");
        return onAccount(start).isPresent() ? due : due.plusDays(number("due-extra-days", end));
    }

    /** Annual accounting, where a period that begins on the day is under it. */
    Optional<AnnualAccounting> annual(LocalDate start) {
        return periods.annual().filter(a -> !start.isBefore(a.from()));
    }

    /** Payments on account, where they are due in a period that begins on the day. */
    Optional<PaymentsOnAccount> onAccount(LocalDate start) {
        return periods.onAccount().filter(a -> !start.isBefore(a.from()));
    }

    private LocalDate monthEnd(LocalDate end, String rule) {
        return YearMonth.from(end).plusMonths(number(rule, end)).atEndOfMonth();
    }

    private int number(String rule, LocalDate end) {
        return Integer.parseInt(law.periodRule(rule, end).value());
    }
}
