package quarterfold.period;

import java.time.LocalDate;
import java.time.YearMonth;

/**
 * A return period, named by its last month, such as {@code 2026-09}.
 *
 * @param start first day
 * @param end last day
 * @param due the day the return must be in by
 */
public record Period(YearMonth name, LocalDate start, LocalDate end, LocalDate due) {

    public boolean contains(LocalDate day) {
        return !day.isBefore(start) && !day.isAfter(end);
    }
}
