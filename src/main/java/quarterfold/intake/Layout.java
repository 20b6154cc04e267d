package quarterfold.intake;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import quarterfold.ledger.Kind;

/**
 * How to read one kind of report, as its YAML file says. Every value is valid on its own; that the
 * columns are there is known only with a file.
 *
 * @param name as {@code --layout} takes it, such as {@code quaylark-statement}
 * @param fields entry fields and the columns they are taken from
 * @param constants entry fields and their fixed values
 * @param workedOut columns the file does not have, and the two columns whose product they are
 * @param amounts the columns whose money must all be accounted for
 * @param payoutColumn the column that repeats a settlement's payout on each of its rows
 */
record Layout(
        String name,
        Shape shape,
        Dates dates,
        Numbers numbers,
        Signs signs,
        Optional<String> currency,
        Map<Field, String> fields,
        Map<Field, String> constants,
        Map<String, List<String>> workedOut,
        List<Rule> rules,
        Optional<Tax> tax,
        List<Check> checks,
        List<String> amounts,
        Optional<String> payoutColumn)
        implements Form {

    /**
     * The file around the cells.
     *
     * @param headerRow from 1; rows above it are preamble
     * @param blanks texts that mean an empty cell
     */
    record Shape(char delimiter, Charset encoding, int headerRow, Set<String> blanks) {
        static final Shape COMMA = new Shape(',', StandardCharsets.UTF_8, 1, Set.of());
        static final Shape TAB = new Shape('\t', StandardCharsets.UTF_8, 1, Set.of());
    }

    /**
     * @param pattern of java.time, with {@code y} for the year
     * @param zone of times without an offset; the book's where empty
     */
    record Dates(String pattern, Optional<ZoneId> zone) {
        static final Dates ISO = new Dates("yyyy-MM-dd", Optional.empty());
        private static final LocalDateTime EXAMPLE = LocalDateTime.of(2026, 9, 30, 13, 45);

        /** Refuses days that are not on the calendar; month names are English. */
        DateTimeFormatter formatter() {
            return new DateTimeFormatterBuilder()
                    .parseCaseInsensitive()
                    .appendPattern(withProlepticYear())
                    .toFormatter(Locale.ENGLISH)
                    .withResolverStyle(ResolverStyle.STRICT);
        }

        /** {@code y} is a year of an era, which a strict reading asks for; {@code u} needs none. */
        private String withProlepticYear() {
            StringBuilder years = new StringBuilder();
            boolean quoted = false;
            for (int i = 0; i < pattern.length(); i++) {
                char c = pattern.charAt(i);
                quoted ^= c == '\'';
                years.append(c == 'y' && !quoted ? 'u' : c);
            }
            return years.toString();
        }

        boolean hasTime() {
            return pattern.replaceAll("'[^']*'", "").matches(".*[HhKk].*");
        }

        String example() {
            return formatter().format(EXAMPLE.atZone(zone.orElse(ZoneOffset.UTC)));
        }
    }

    /**
     * @param thousands the mark between groups of three digits, or 0 for none
     * @param trailingMinus whether {@code 5.00-} is a negative
     * @param brackets whether {@code (5.00)} is a negative
     */
    record Numbers(char decimal, char thousands, boolean trailingMinus, boolean brackets) {
        static final Numbers PLAIN = new Numbers('.', (char) 0, false, false);

        /** A space stands for the no-break spaces that print like it. */
        boolean isThousands(char c) {
            return c == thousands || (thousands == ' ' && (c == '\u00a0' || c == '\u202f'));
        }

        String expected() {
            return "an amount with at most 4 decimals, such as "
                    + (thousands == 0 ? "1234" : "1" + thousands + "234")
                    + decimal
                    + "50";
        }
    }

    /** Whether + means money to the owner, or amounts are as the document prints them. */
    enum Signs {
        OWNER,
        DOCUMENT
    }

    /**
     * A kind of row, the first whose conditions hold.
     *
     * @param when columns and the texts that may stand in them
     * @param setAside the reason the row makes no entry; empty where it makes some
     * @param line where it stands in the layout's file
     */
    record Rule(Map<String, List<String>> when, List<Enter> enter, String setAside, int line) {}

    /** An entry a row makes: amount fields and their columns, and values of its own. */
    record Enter(Kind kind, Map<Field, String> amounts, Map<Field, String> set) {}

    /** A tax column beside prices, and the column of what the channel withholds of it. */
    record Tax(String column, Optional<String> withheld) {}

    /** An identity that every row must keep. */
    record Check(List<String> sum, String equals) {}

    @Override
    public Set<String> columns() {
        Set<String> columns = new LinkedHashSet<>(fields.values());
        for (Rule rule : rules) {
            columns.addAll(rule.when().keySet());
            rule.enter().forEach(enter -> columns.addAll(enter.amounts().values()));
        }
        columns.addAll(amounts);
        tax.ifPresent(
                t -> {
                    columns.add(t.column());
                    t.withheld().ifPresent(columns::add);
                });
        checks.forEach(
                check -> {
                    columns.addAll(check.sum());
                    columns.add(check.equals());
                });
        payoutColumn.ifPresent(columns::add);
        workedOut.values().forEach(columns::addAll);
        columns.removeAll(workedOut.keySet());
        return columns;
    }

    @Override
    public Set<String> named() {
        return columns();
    }

    @Override
    public RowReader reader(Terms terms) {
        return new LayoutRows(this, terms);
    }
}
