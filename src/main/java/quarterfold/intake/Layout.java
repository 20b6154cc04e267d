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
import java.util.stream.Stream;
import quarterfold.ledger.Kind;

/**
 * How to read one kind of report, as its YAML file says. Every value is valid on its own; that the
 * columns are there is known only with a file.
 *
 * @param name as {@code --layout} takes it, such as {@code quaylark-statement}
 * @param fields entry fields and the columns they are taken from
 * @param constants entry fields and their fixed values
 * @param workedOut columns the file does not have, and those they are worked out from
 * @param amounts the columns whose money must all be accounted for
 * @param payoutColumn the column that repeats a settlement's payout on each of its rows
 * @param outgoing columns printed positive where their money leaves the business; read as negative
 * @param mark the column that says on which rows amounts printed positive are negative
 * @param otherRows rows of the file that are no rows of the table: totals, titles, other records
 * @param repeats what becomes of rows that an earlier file has too
 * @param optional columns that a file may be without; it is then read as if no column were named so
 * @param print the lines of a PDF; empty where the layout is of a table
 * @param when columns and the texts that may stand in them on the rows read so, where a file has
 *     rows of several shapes; empty for any
 * @param shapes how to read the file's rows of other shapes, each whole by itself
 * @param above lines above the column names, and the columns that all rows have from them
 * @param tablesNeeded whether a file must have every table of its shapes
 * @param expected what columns may hold that nothing is read from
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
        Map<String, WorkedOut> workedOut,
        List<Rule> rules,
        Optional<Tax> tax,
        List<Check> checks,
        List<String> amounts,
        Optional<String> payoutColumn,
        Set<String> outgoing,
        Optional<Mark> mark,
        List<OtherRow> otherRows,
        Optional<Balance> balance,
        RepeatRule repeats,
        Set<String> optional,
        Optional<Print> print,
        Map<String, List<String>> when,
        List<Layout> shapes,
        List<LinePattern> above,
        boolean tablesNeeded,
        Expected expected)
        implements Form {

    /**
     * The file around the cells.
     *
     * @param quote round a cell that holds the delimiter; 0 where quotes are text
     * @param twice whether the text was encoded in UTF-8 twice, the second time as windows-1252
     * @param headerRow from 1; rows above it are preamble; 0 where no row names the columns
     * @param columns how many there are where no row names them; their names are {@code #1} and on
     * @param blanks texts that mean an empty cell
     */
    record Shape(
            char delimiter,
            char quote,
            Charset encoding,
            boolean twice,
            int headerRow,
            int columns,
            Set<String> blanks) {
        static final Shape COMMA = of(',');
        static final Shape TAB = of('\t');

        /** UTF-8 with its column names in the first row. */
        static Shape of(char delimiter) {
            return new Shape(delimiter, '"', StandardCharsets.UTF_8, false, 1, 0, Set.of());
        }

        private Shape with(int row, Set<String> empty) {
            return new Shape(delimiter, quote, encoding, twice, row, columns, empty);
        }
    }

    /**
     * @param pattern of java.time, with {@code y} for the year
     * @param zone of times without an offset; the book's where empty
     * @param language of month names
     */
    record Dates(String pattern, Optional<ZoneId> zone, Locale language) {
        static final Dates ISO = new Dates("yyyy-MM-dd", Optional.empty());

        Dates(String pattern, Optional<ZoneId> zone) {
            this(pattern, zone, Locale.ENGLISH);
        }

        private static final LocalDateTime EXAMPLE = LocalDateTime.of(2026, 9, 30, 13, 45);

        /** Refuses days that are not on the calendar. */
        DateTimeFormatter formatter() {
            return new DateTimeFormatterBuilder()
                    .parseCaseInsensitive()
                    .appendPattern(withProlepticYear())
                    .toFormatter(language)
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
            // Of letters that may stand there the first.
            Dates one = new Dates(pattern.replaceFirst("\\]\\[.*", "]"), zone, language);
            return one.formatter().format(EXAMPLE.atZone(zone.orElse(ZoneOffset.UTC)));
        }
    }

    /**
     * @param thousands the mark between groups of three digits, or 0 for none
     * @param trailingMinus whether {@code 5.00-} is a negative
     * @param brackets whether {@code (5.00)} is a negative
     * @param plus whether {@code +5.00} is a positive
     * @param letters whether {@code 5.00 DR} is a negative and {@code 5.00 CR} a positive, and
     *     money is one or the other
     * @param minor how many of the last digits are decimals without a mark: {@code 500} is 5.00
     *     where it is 2
     * @param units texts that may stand before or behind the digits, such as a currency's sign
     */
    record Numbers(
            char decimal,
            char thousands,
            boolean trailingMinus,
            boolean brackets,
            boolean plus,
            boolean letters,
            int minor,
            List<String> units) {
        Numbers(char decimal, char thousands, boolean trailingMinus, boolean brackets) {
            this(decimal, thousands, trailingMinus, brackets, false, false, 0, List.of());
        }

        static final Numbers PLAIN = new Numbers('.', (char) 0, false, false);

        /** With a mark spaces and apostrophes are marks too: they can be nothing else. */
        boolean isThousands(char c) {
            return c == thousands || (thousands != 0 && " \u00a0\u202f'\u2019".indexOf(c) >= 0);
        }

        String expected() {
            if (minor > 0) {
                return "an amount in the currency's smallest unit, without a decimal mark, such as 123450";
            }
            return "an amount with at most 4 decimals"
                    + (letters ? " and with CR or DR behind it" : "")
                    + ", such as "
                    + (thousands == 0 ? "1234" : "1" + thousands + "234")
                    + decimal
                    + "50"
                    + (letters ? " CR" : "");
        }
    }

    /** What + means: money to the owner, an amount as the document prints it, or money out. */
    enum Signs {
        OWNER,
        DOCUMENT,
        TURNED;

        /** What makes a printed amount the owner's, where its entry's kind goes this way. */
        int owners(int direction) {
            return this == OWNER ? 1 : this == DOCUMENT ? direction : -1;
        }
    }

    /**
     * A kind of row, the first whose conditions hold.
     *
     * @param when columns and the texts that may stand in them
     * @param setAside the reason the row makes no entry; empty where it makes some
     * @param ask what a person is asked about the rows it fits; empty where nothing is open
     * @param line where it stands in the layout's file
     * @param own the signs of its rows, where they are not the layout's
     */
    record Rule(
            Map<String, List<String>> when,
            List<Enter> enter,
            String setAside,
            String ask,
            int line,
            Optional<Signs> own) {
        Rule(
                Map<String, List<String>> when,
                List<Enter> enter,
                String setAside,
                String ask,
                int line) {
            this(when, enter, setAside, ask, line, Optional.empty());
        }

        Signs signs(Layout layout) {
            return own.orElse(layout.signs());
        }

        Rule with(Optional<Signs> signs) {
            return new Rule(when, enter, setAside, ask, line, signs);
        }
    }

    /** An entry a row makes: amount fields and their columns, and values of its own. */
    record Enter(Kind kind, Map<Field, String> amounts, Map<Field, String> set) {}

    /** A tax column beside prices, and the column of what the channel withholds of it. */
    record Tax(String column, Optional<String> withheld) {}

    /**
     * How a column the file does not have is worked out: the product of two columns, or the sum of
     * any number.
     */
    record WorkedOut(boolean product, List<String> columns) {}

    /** The column whose text says that the row's amounts, printed positive, are negative. */
    record Mark(String column, Set<String> negative) {}

    /**
     * A column of the balance after a row: it grows by what the counted cells of rows say.
     *
     * @param newestFirst whether the newest row is the first; where empty, either may be
     */
    record Balance(String column, Optional<Boolean> newestFirst) {}

    /**
     * Rows that are no rows of the table. All that is stated must hold.
     *
     * @param is the text of the first cell that is not blank; empty for any
     * @param starts how that text starts, in either case; empty for any
     * @param blank columns that are blank
     * @param when columns and the texts that may stand in them
     * @param sums columns whose cells must be the sums of the rows above, since the last such row
     * @param count whether the row states how many rows are above
     * @param rest whether all rows below are no rows of the table either
     * @param states columns whose cells state what the whole file comes to
     * @param why the reason such rows are set aside
     */
    record OtherRow(
            String is,
            String starts,
            List<String> blank,
            Map<String, List<String>> when,
            List<String> sums,
            boolean count,
            boolean rest,
            Map<String, FileTotal> states,
            String why) {
        OtherRow(
                String is,
                String starts,
                List<String> blank,
                Map<String, List<String>> when,
                List<String> sums,
                boolean count,
                boolean rest,
                String why) {
            this(is, starts, blank, when, sums, count, rest, Map.of(), why);
        }
    }

    /** An identity that every row must keep. */
    record Check(List<String> sum, String equals) {}

    @Override
    public Set<String> columns() {
        Set<String> columns = named();
        columns.addAll(expected.texts().keySet());
        columns.removeAll(optional);
        return columns;
    }

    @Override
    public Set<String> named() {
        Set<String> columns = new LinkedHashSet<>(fields.values());
        columns.addAll(needed());
        return columns;
    }

    /** The columns that something beside a field is read from. */
    Set<String> needed() {
        return LayoutColumns.needed(this);
    }

    @Override
    public Optional<String> documents() {
        return Optional.ofNullable(fields.get(Field.FILE));
    }

    /**
     * The same with rows of other shapes beside its own.
     *
     * @param blanks texts that mean an empty cell in any of them
     */
    Layout with(Set<String> blanks, List<Layout> others) {
        return with(shape.with(shape.headerRow(), blanks), numbers, others, expected);
    }

    /** The same of a file whose column names stand in another row. */
    Layout at(int headerRow) {
        return with(shape.with(headerRow, shape.blanks()), numbers, shapes, expected);
    }

    /** The same with numbers written in more ways. */
    Layout with(Numbers ways) {
        List<Layout> others =
                shapes.stream().map(s -> s.numbers().equals(numbers) ? s.with(ways) : s).toList();
        return with(shape, ways, others, expected);
    }

    /** The same with more said of columns that nothing is read from. */
    Layout with(Expected more) {
        return with(shape, numbers, shapes, more);
    }

    private Layout with(Shape file, Numbers ways, List<Layout> others, Expected more) {
        return new Layout(
                name,
                file,
                dates,
                ways,
                signs,
                currency,
                fields,
                constants,
                workedOut,
                rules,
                tax,
                checks,
                amounts,
                payoutColumn,
                outgoing,
                mark,
                otherRows,
                balance,
                repeats,
                optional,
                print,
                when,
                others,
                above,
                tablesNeeded,
                more);
    }

    /** Every shape of a row: its own, then the others. */
    List<Layout> all() {
        return Stream.concat(Stream.of(this), shapes.stream()).toList();
    }

    /** The shapes whose rows stand below a row of their own column names. */
    List<Layout> tables() {
        return shapes.stream().filter(s -> s.when().isEmpty()).toList();
    }

    @Override
    public RowReader reader(Terms terms) {
        boolean plain =
                shapes.isEmpty()
                        && when.isEmpty()
                        && otherRows.stream().allMatch(o -> o.states().isEmpty());
        return plain ? new LayoutRows(this, terms) : new ShapedRows(this, terms);
    }
}
