package quarterfold.intake;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import quarterfold.ledger.PublishedRate;
import quarterfold.ledger.Publisher;

/** Reads the texts of a row of exchange rates; what cannot be read becomes a problem. */
final class RateCells {
    private static final Pattern CODE = Pattern.compile("[A-Z]{3}");
    private static final Pattern UNITS = Pattern.compile("[0-9]{1,12}(\\.[0-9]{1,12})?");
    private static final Pattern SLASHED = Pattern.compile("([0-9]{2})/([0-9]{2})/([0-9]{4})");
    private static final Pattern NAMED =
            Pattern.compile("([0-9]{1,2})[/ ]([A-Za-z]{3,9})[/ ]([0-9]{4})");
    private static final Pattern PERIOD = Pattern.compile("(.+) to (.+)");
    private static final List<String> MONTHS =
            List.of(
                    "january",
                    "february",
                    "march",
                    "april",
                    "may",
                    "june",
                    "july",
                    "august",
                    "september",
                    "october",
                    "november",
                    "december");

    private final String place;
    private final Problems problems;

    RateCells(String place, Problems problems) {
        this.place = place;
        this.problems = problems;
    }

    /** Days from the first to the last. */
    record Days(LocalDate first, LocalDate last) {}

    /**
     * The rate of a row.
     *
     * @param columns the names of the currency's and the units' columns, for problems
     */
    Optional<PublishedRate> rate(
            long row,
            Publisher publisher,
            List<String> columns,
            String currency,
            Optional<Days> days,
            String units) {
        boolean code = CODE.matcher(currency).matches();
        if (!code) {
            wrong(columns.get(0), currency, "a currency code of three letters, such as EUR");
        }
        boolean number = UNITS.matcher(units).matches() && new BigDecimal(units).signum() > 0;
        if (!number) {
            wrong(
                    columns.get(1),
                    units,
                    "units of the currency for one %s, above nought, such as 1.1719"
                            .formatted(publisher.base()));
        }
        return code && number
                ? days.map(
                        d ->
                                new PublishedRate(
                                        row,
                                        publisher,
                                        currency,
                                        d.first(),
                                        d.last(),
                                        new BigDecimal(units)))
                : Optional.empty();
    }

    /** Two days in one text, such as {@code 01/Aug/2026 to 31/Aug/2026}. */
    Optional<Days> period(String column, String text) {
        Matcher matcher = PERIOD.matcher(text);
        Optional<Days> days =
                matcher.matches()
                        ? day(matcher.group(1))
                                .flatMap(f -> day(matcher.group(2)).map(l -> new Days(f, l)))
                        : Optional.empty();
        return sound(days, column, text, "two days such as 01/Aug/2026 to 31/Aug/2026");
    }

    /** Two days in a column each, such as {@code 01/08/2026} and {@code 31/08/2026}. */
    Optional<Days> days(String column, String first, String last) {
        return sound(
                day(first).flatMap(f -> day(last).map(l -> new Days(f, l))),
                column,
                first + " to " + last,
                "two days such as 01/08/2026 and 31/08/2026");
    }

    /** One day, such as {@code 2026-08-14} or {@code 14 August 2026}. */
    Optional<Days> day(String column, String text) {
        return sound(day(text).map(d -> new Days(d, d)), column, text, "a day such as 2026-08-14");
    }

    private Optional<Days> sound(
            Optional<Days> days, String column, String found, String expected) {
        Optional<Days> sound =
                days.filter(d -> !d.last().isBefore(d.first()))
                        .filter(d -> d.last().isBefore(d.first().plusDays(HeldRates.LONGEST)));
        if (sound.isEmpty()) {
            wrong(column, found, expected);
        }
        return sound;
    }

    private void wrong(String column, String found, String expected) {
        problems.add(Problem.found(place, column, found, expected));
    }

    /** A day as publishers write it: day, month and year, or as ISO 8601 has it. */
    private static Optional<LocalDate> day(String text) {
        try {
            Matcher slashed = SLASHED.matcher(text);
            if (slashed.matches()) {
                return Optional.of(
                        LocalDate.of(number(slashed, 3), number(slashed, 2), number(slashed, 1)));
            }
            Matcher named = NAMED.matcher(text);
            if (named.matches()) {
                return Optional.of(
                        LocalDate.of(number(named, 3), month(named.group(2)), number(named, 1)));
            }
            return Optional.of(LocalDate.parse(text));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    private static int number(Matcher matcher, int group) {
        return Integer.parseInt(matcher.group(group));
    }

    /** 0 where it is no month: no day has that. */
    private static int month(String name) {
        String small = name.toLowerCase(Locale.ROOT);
        for (int i = 0; i < MONTHS.size(); i++) {
            if (MONTHS.get(i).equals(small) || MONTHS.get(i).substring(0, 3).equals(small)) {
                return i + 1;
            }
        }
        return 0;
    }
}
