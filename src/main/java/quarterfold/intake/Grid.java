package quarterfold.intake;

import java.io.IOException;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/**
 * The first rows of a table, held for looking at: enough to learn from, the whole of all but very
 * long files.
 *
 * @param table its name in the file
 * @param whole whether these are all rows
 */
record Grid(String table, Layout.Shape shape, List<Line> lines, boolean whole) {
    private static final int LIMIT = 120_000;

    /** The most columns of a report to be learned: the time it takes grows with their square. */
    static final int WIDEST = 500;

    /** A row: its number in the file, its cells trimmed, and which of them are stored numbers. */
    record Line(long number, List<String> cells, BitSet numbers) {
        String cell(int column) {
            return column < cells.size() ? cells.get(column) : "";
        }

        int width() {
            return cells.size();
        }

        /** How many cells are not blank. */
        int filled() {
            return (int) cells.stream().filter(c -> !c.isEmpty()).count();
        }

        String first() {
            return cells.stream().filter(c -> !c.isEmpty()).findFirst().orElse("");
        }
    }

    static Grid read(Tables tables, String table, Layout.Shape shape, int limit)
            throws BadFile, IOException {
        List<Line> lines = new ArrayList<>();
        try (Rows rows = tables.rows(table, shape)) {
            int most = Math.min(limit, LIMIT);
            while (lines.size() < most && rows.next()) {
                Line line = line(rows);
                if (line.width() > WIDEST) {
                    throw new BadFile(
                            rows.place(),
                            "found %,d cells in a row; expected at most %d in a report to be learned, such as one without the columns you do not need"
                                    .formatted(line.width(), WIDEST));
                }
                lines.add(line);
            }
            return new Grid(table, shape, lines, lines.size() < most);
        }
    }

    static Grid read(Tables tables, String table, Layout.Shape shape) throws BadFile, IOException {
        return read(tables, table, shape, LIMIT);
    }

    private static Line line(Rows rows) {
        List<String> cells = new ArrayList<>(rows.width());
        BitSet numbers = new BitSet();
        for (int i = 0; i < rows.width(); i++) {
            cells.add(rows.cell(i).strip());
            numbers.set(i, rows.isNumber(i));
        }
        int last = cells.size();
        while (last > 0 && cells.get(last - 1).isEmpty()) {
            last--;
        }
        return new Line(rows.number(), List.copyOf(cells.subList(0, last)), numbers);
    }
}
