package quarterfold.intake;

import java.time.DateTimeException;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Reads months as documents print them: each of its ways says one month alone. */
final class MonthReader {
    private static final List<DateTimeFormatter> WAYS =
            List.of(way("uuuu-MM"), way("MM/uuuu"), way("MMMM uuuu"), way("MMM uuuu"));

    private MonthReader() {}

    private static DateTimeFormatter way(String pattern) {
        return new DateTimeFormatterBuilder()
                .parseCaseInsensitive()
                .appendPattern(pattern)
                .toFormatter(Locale.ENGLISH);
    }

    /** The month, or nothing where the text is none. */
    static Optional<YearMonth> read(String text) {
        return WAYS.stream().flatMap(way -> read(text, way).stream()).findFirst();
    }

    private static Optional<YearMonth> read(String text, DateTimeFormatter way) {
        try {
            return Optional.of(YearMonth.parse(text, way));
        } catch (DateTimeException notThisWay) {
            return Optional.empty();
        }
    }
}
