package quarterfold.period;

import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.util.List;

/**
 * A tax year for partial exemption, or the part of the registration before the first or in the last
 * one: VAT Regulations 1995 reg 99(1)(d).
 */
record TaxYear(LocalDate start, LocalDate end) {

    /** The year a day within the registration falls in. */
    static TaxYear of(LocalDate day, Calendar calendar) {
        Month last = calendar.partialExemptionYearEnds(day);
        YearMonth month = YearMonth.from(day);
        while (month.getMonth() != last) {
            month = month.plusMonths(1);
        }
        LocalDate start = month.minusMonths(11).atDay(1);
        LocalDate end = month.atEndOfMonth();
        LocalDate registered = calendar.registeredFrom();
        return new TaxYear(
                start.isBefore(registered) ? registered : start,
                calendar.registeredTo().filter(end::isAfter).orElse(end));
    }

    /** The periods that begin in it. */
    List<Period> periods(Calendar calendar) {
        return end.isBefore(start)
                ? List.of()
                : calendar.from(start, end).stream()
                        .filter(p -> !p.start().isBefore(start))
                        .toList();
    }

    @Override
    public String toString() {
        return start + " to " + end;
    }
}
