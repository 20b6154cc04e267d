package quarterfold.law;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** One law table as rows; every cell a text, every row with its line, dates and source. */
final class Table {

    private static final CSVFormat FORMAT =
            CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).setTrim(true).get();

    private final List<Row> rows = new ArrayList<>();
    private final List<String> columns = new ArrayList<>();

    private Table() {}

    static Table read(TableFile file) {
        Table table = new Table();
        try (CSVParser parser = CSVParser.parse(new StringReader(file.text()), FORMAT)) {
            table.columns.addAll(parser.getHeaderNames());
            for (CSVRecord cells : parser) {
                Row row = new Row(file.name(), parser.getCurrentLineNumber(), cells);
                if (cells.size() != parser.getHeaderNames().size()) {
                    throw row.fault(
                            "has %d cells; expected %d, one for each of %s"
                                    .formatted(
                                            cells.size(),
                                            parser.getHeaderNames().size(),
                                            parser.getHeaderNames()));
                }
                table.rows.add(row);
            }
        } catch (IOException | UncheckedIOException | IllegalArgumentException e) {
            Throwable cause = e instanceof UncheckedIOException ? e.getCause() : e;
            throw new LawException(
                    "%s: cannot be read as CSV: %s"
                            .formatted(file.name(), cause == null ? e : cause.getMessage()),
                    e);
        }
        return table;
    }

    List<Row> rows() {
        return rows;
    }

    List<String> columns() {
        return columns;
    }

    /**
     * The rows as values with their dates and source. Refuses two of one name in force together.
     */
    <T> List<Dated<T>> dated(Function<Row, T> value, Function<T, String> name) {
        List<Dated<T>> all = new ArrayList<>();
        for (Row row : rows) {
            Dated<T> dated = row.dated(value.apply(row));
            String named = name.apply(dated.value());
            if (all.stream()
                    .anyMatch(d -> dated.overlaps(d) && name.apply(d.value()).equals(named))) {
                throw row.fault("'%s' has another row in force on the same days".formatted(named));
            }
            all.add(dated);
        }
        return List.copyOf(all);
    }

    /** The rows as values by name. Refuses two of one name. */
    <T> Map<String, T> named(String nameColumn, Function<Row, T> value) {
        Map<String, T> all = new LinkedHashMap<>();
        for (Row row : rows) {
            String name = row.needed(nameColumn);
            if (all.put(name, value.apply(row)) != null) {
                throw row.fault("[%s]: '%s' has a row already".formatted(nameColumn, name));
            }
        }
        return all;
    }

    /** One row: its cells by column name. */
    record Row(String file, long line, CSVRecord cells) {

        /** The cell's text; a column the table does not have is a fault of the table. */
        String cell(String column) {
            if (!cells.isMapped(column)) {
                throw new LawException(file + ": has no column " + column);
            }
            return cells.get(column);
        }

        /** The cell's text; empty in a table frozen before there was such a column. */
        String later(String column) {
            return cells.isMapped(column) ? cells.get(column) : "";
        }

        String needed(String column) {
            String text = cell(column);
            if (text.isBlank()) {
                throw fault("[%s] is empty".formatted(column));
            }
            return text;
        }

        <T> T parse(String column, Function<String, T> parser, String expected) {
            String text = cell(column);
            try {
                return parser.apply(text);
            } catch (DateTimeException | ArithmeticException | IllegalArgumentException e) {
                throw fault("[%s]: found '%s'; expected %s".formatted(column, text, expected));
            }
        }

        <T> Optional<T> maybe(String column, Function<String, T> parser, String expected) {
            return cell(column).isBlank()
                    ? Optional.empty()
                    : Optional.of(parse(column, parser, expected));
        }

        <T> Dated<T> dated(T value) {
            String day = "a date such as 2011-01-04";
            LocalDate from = parse("from", LocalDate::parse, day);
            LocalDate to = maybe("to", LocalDate::parse, day).orElse(LocalDate.MAX);
            if (to.isBefore(from)) {
                throw fault("[to]: %s is before %s".formatted(to, from));
            }
            if (cell("source").isBlank()) {
                throw fault("[source] is empty; cite the text that sets this row");
            }
            return new Dated<>(value, from, to, cell("source"));
        }

        LawException fault(String what) {
            return new LawException(file + ":" + line + ": " + what);
        }
    }
}
