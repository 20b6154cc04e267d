package quarterfold.outlook;

import java.time.LocalDate;
import java.time.YearMonth;
import quarterfold.law.Law;
import quarterfold.money.Amount;

/**
 * Points for late returns, by the rules for one day (Finance Act 2021 Sch 24; HMRC manuals CH192070
 * to CH192240).
 *
 * @param day the first day of the period whose return is late
 */
record LatePoints(Law law, LocalDate day) {

    /**
     * What one more late return makes of so many points.
     *
     * @param points after it; they do not rise above the threshold
     * @param penalty what it costs; nothing below the threshold
     */
    record After(int points, Amount penalty) {}

    int threshold(Frequency frequency) {
        return number("late-return-points-" + frequency.code());
    }

    After late(int before, Frequency frequency) {
        int threshold = threshold(frequency);
        boolean reached = before + 1 >= threshold;
        return new After(
                reached ? threshold : before + 1,
                reached ? Amount.of(rule("late-return-penalty")) : Amount.ZERO);
    }

    /**
     * The day at whose end a point below the threshold is gone: the last of the month, so many
     * months after the month of the failure, which is the day after the due day (CH192200).
     */
    LocalDate expiry(LocalDate due) {
        return failed(due).plusMonths(number("late-return-point-expires")).atEndOfMonth();
    }

    /** The first day of the months in which every return must be on time (CH192210). */
    LocalDate complianceBegins(LocalDate due) {
        return failed(due).plusMonths(1).atDay(1);
    }

    LocalDate complianceEnds(LocalDate due, Frequency frequency) {
        return complianceBegins(due).plusMonths(clearMonths(frequency)).minusDays(1);
    }

    int clearMonths(Frequency frequency) {
        return number("late-return-clear-" + frequency.code());
    }

    /** Months back in which every return must be in too. */
    int backMonths() {
        return number("late-return-clear-back");
    }

    /** Points carried over to another frequency, never below nothing (CH192240). */
    int carried(int points, Frequency from, Frequency to) {
        if (from == to) {
            return points;
        }
        int change = number("late-return-change-%s-to-%s".formatted(from.code(), to.code()));
        return Math.max(0, points + change);
    }

    private static YearMonth failed(LocalDate due) {
        return YearMonth.from(due.plusDays(1));
    }

    private int number(String rule) {
        return Integer.parseInt(rule(rule));
    }

    private String rule(String name) {
        return law.periodRule(name, day).value();
    }
}
