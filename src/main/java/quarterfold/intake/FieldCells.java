package quarterfold.intake;

import java.util.EnumMap;
import java.util.Map;

/** Where each field of an entry comes from: a column of the table, a fixed value, or both. */
final class FieldCells {
    private final Map<Field, Integer> columns = new EnumMap<>(Field.class);
    private final Map<Field, String> fixed = new EnumMap<>(Field.class);

    private FieldCells() {}

    /** A blank cell falls back on the constant. */
    static FieldCells of(
            Header header, Map<Field, String> columnNames, Map<Field, String> constants) {
        FieldCells cells = new FieldCells();
        columnNames.forEach((field, name) -> cells.columns.put(field, header.column(name)));
        cells.fixed.putAll(constants);
        return cells;
    }

    /** The same but for some fixed values, which win over columns. */
    FieldCells with(Map<Field, String> values) {
        FieldCells cells = new FieldCells();
        cells.columns.putAll(columns);
        cells.columns.keySet().removeAll(values.keySet());
        cells.fixed.putAll(fixed);
        cells.fixed.putAll(values);
        return cells;
    }

    /** The field's column, or -1. */
    int column(Field field) {
        return columns.getOrDefault(field, -1);
    }

    /** The field's text in this row; empty where it has neither a cell nor a constant. */
    String text(Field field, Row row) {
        String text = row.text(column(field));
        return text.isEmpty() ? fixed.getOrDefault(field, "") : text;
    }
}
