package quarterfold.intake;

import java.util.EnumMap;
import java.util.Map;

/** Where each field of an entry is found. */
final class FieldCells {
    private final Map<Field, Cell> cells = new EnumMap<>(Field.class);

    private FieldCells() {}

    /** A blank cell falls back on the constant. */
    static FieldCells of(
            Header header, Map<Field, String> columnNames, Map<Field, String> constants) {
        FieldCells of = new FieldCells();
        constants.forEach((field, value) -> of.cells.put(field, new Cell(-1, value)));
        columnNames.forEach(
                (field, name) ->
                        of.cells.put(field, new Cell(header.column(name), of.cell(field).fixed())));
        return of;
    }

    /** The same but for some fixed values, which win over columns. */
    FieldCells with(Map<Field, String> values) {
        FieldCells with = new FieldCells();
        with.cells.putAll(cells);
        values.forEach((field, value) -> with.cells.put(field, new Cell(-1, value)));
        return with;
    }

    Cell cell(Field field) {
        return cells.getOrDefault(field, Cell.NONE);
    }

    /** The field's column, or -1. */
    int column(Field field) {
        return cell(field).column();
    }

    /** The field's text in this row; empty where it has neither a cell nor a constant. */
    String text(Field field, Row row) {
        return cell(field).text(row);
    }
}
