package quarterfold.independent;

import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.util.List;
import java.util.stream.Stream;

/** Return periods to the end of March, June, September and December. */
final class Quarters {

    static final List<Month> ENDS =
            List.of(Month.MARCH, Month.JUNE, Month.SEPTEMBER, Month.DECEMBER);

    private Quarters() {}

    /** So many in a row, each by the month it ends in, from the one the day is in. */
    static List<YearMonth> from(LocalDate first, int number) {
        return Stream.iterate(of(first), q -> q.plusMonths(3)).limit(number).toList();
    }

    static YearMonth of(LocalDate day) {
        YearMonth month = YearMonth.from(day);
        return month.plusMonths((12 - month.getMonthValue()) % 3);
    }

    /** A day of the quarter. */
    static LocalDate day(Dice dice, YearMonth quarter) {
        return dice.dayOf(quarter.minusMonths(dice.between(0, 2)));
    }
}
