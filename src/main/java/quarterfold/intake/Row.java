package quarterfold.intake;

import java.util.BitSet;
import java.util.List;
import java.util.Set;

/**
 * The row being read, with the table's header: its cells trimmed, and the problems found in it. One
 * object for a whole table. For one thread.
 */
final class Row {
    private final Rows rows;
    private final Header header;
    private final Set<String> blanks;
    private final Problems problems;
    private final BitSet reported = new BitSet();
    private final BitSet reportedAbove = new BitSet();
    private long reportedIn;
    private boolean bad;

    Row(Rows rows, Header header, Set<String> blanks, Problems problems) {
        this.rows = rows;
        this.header = header;
        this.blanks = blanks;
        this.problems = problems;
    }

    /** Moves to the next row; false at the end. */
    boolean next() throws BadFile {
        bad = false;
        return rows.next();
    }

    Header header() {
        return header;
    }

    /** The same rows under another header: it stands where this one does. */
    Row under(Header other) {
        return new Row(rows, other, blanks, problems);
    }

    /** Forgets the problems of the row before, where another moves on. */
    void begin() {
        bad = false;
    }

    long number() {
        return rows.number();
    }

    int width() {
        return rows.width();
    }

    /**
     * The cell, trimmed; empty where its text means that, and for a column below 0. A formula that
     * failed is a problem.
     */
    String text(int column) {
        if (column < 0) {
            return "";
        }
        String text = rows.cell(column).strip();
        if (rows.isError(column)) {
            wrong(column, text, "a value, such as 12.50: put the cell's formula right");
        }
        return !blanks.isEmpty() && blanks.contains(text) ? "" : text;
    }

    /** The cell as it stands, trimmed; adds no problem, whatever is in it. */
    String bare(int column) {
        return rows.cell(column).strip();
    }

    /** All of them as they stand, without blanks at the end. */
    List<String> bare() {
        return Header.texts(rows);
    }

    boolean isNumber(int column) {
        return rows.isNumber(column);
    }

    /** Whether a problem was found in this row. */
    boolean isBad() {
        return bad;
    }

    /** Adds a problem with a cell, unless the row has one there already. */
    void wrong(int column, String expected) {
        wrong(column, rows.cell(column).strip(), expected);
    }

    void wrong(int column, String found, String expected) {
        bad = true;
        if (reportedIn != number()) {
            reported.clear();
            reportedIn = number();
        }
        BitSet told = column < Header.ABOVE ? reported : reportedAbove;
        if (!told.get(column)) {
            told.set(column);
            problems.add(Problem.found(rows.place(column), header.name(column), found, expected));
        }
    }

    /** Adds a problem with the whole row, or with what several columns say together. */
    void fault(String columns, String fault) {
        bad = true;
        problems.add(new Problem(rows.place(), columns, fault));
    }

    /** Whether the row has as many cells as it should; a problem if not. */
    boolean isWhole() {
        int width = rows.width();
        boolean whole = !rows.isEven() || width >= header.width();
        for (int i = header.width(); whole && i < width; i++) {
            whole = rows.cell(i).isBlank();
        }
        if (!whole) {
            fault(
                    "",
                    "found %d cells; expected the %d of the header; is a text that holds the delimiter without its quotes, such as \"blue, 12 cm\"?"
                            .formatted(width, header.width()));
        }
        return whole;
    }
}
