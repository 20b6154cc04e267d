package quarterfold.law;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A table as it stands, whatever its columns mean: for showing the whole law, tables of a later day
 * included.
 *
 * @param name such as {@code rates.csv}
 * @param columns in the table's order, such as {@code category}
 */
public record TableRows(String name, List<String> columns, List<Row> rows) {

    public TableRows {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
    }

    /**
     * Every row of a table of the law.
     *
     * @throws LawException if the table is no CSV, or a date in it is none
     */
    public static TableRows of(TableFile file) {
        Table table = Table.read(file);
        List<Row> rows = new ArrayList<>();
        for (Table.Row row : table.rows()) {
            boolean dated = table.columns().containsAll(List.of("from", "to"));
            String day = "a date such as 2011-01-04";
            rows.add(
                    new Row(
                            rows.size() + 2,
                            row.cells().toMap(),
                            dated ? row.parse("from", LocalDate::parse, day) : LocalDate.MIN,
                            dated
                                    ? row.maybe("to", LocalDate::parse, day).orElse(LocalDate.MAX)
                                    : LocalDate.MAX));
        }
        return new TableRows(file.name(), table.columns(), rows);
    }

    /** The rows in force on the day; all of them where there is no day, or the table has none. */
    public TableRows on(Optional<LocalDate> day) {
        return new TableRows(
                name,
                columns,
                rows.stream().filter(r -> day.map(r::isInForce).orElse(true)).toList());
    }

    /** Whether the table's rows come and go with the law: it has columns for their days. */
    public boolean isDated() {
        return columns.contains("from") && columns.contains("to");
    }

    /**
     * One row.
     *
     * @param number as a spreadsheet counts it: 2 is the first below the headings
     * @param cells every cell by its column; empty where the table leaves it so
     * @param from the first day it holds; {@link LocalDate#MIN} in a table without days
     * @param to the last; {@link LocalDate#MAX} while it is still in force
     */
    public record Row(int number, Map<String, String> cells, LocalDate from, LocalDate to) {

        public Row {
            cells = Map.copyOf(cells);
        }

        /** The cell's text; empty also where the table has no such column. */
        public String cell(String column) {
            return cells.getOrDefault(column, "");
        }

        public boolean isInForce(LocalDate day) {
            return !day.isBefore(from) && !day.isAfter(to);
        }

        /** Whether there is a day on which both are in force. */
        public boolean overlaps(Row other) {
            return !from.isAfter(other.to) && !other.from.isAfter(to);
        }

        /** Whether it is in force on every day on which the other is. */
        public boolean covers(Row other) {
            return !from.isAfter(other.from) && !to.isBefore(other.to);
        }
    }
}
