package quarterfold.intake;

import java.util.Arrays;

/**
 * The marks of the rows an earlier file entered, each to be met once, with what tells the row: some
 * 27 bytes a row. Rows that say the same are met in the order they were added. For one thread.
 */
final class MarkTable {
    private final long[] digests;
    private final int[] more;
    private final int[] rows;
    private final int[] entries;

    /** {@code rows}: as many as will be added. */
    MarkTable(long rows) {
        int size = Math.toIntExact(Math.addExact(rows, rows / 3 + 1));
        digests = new long[size];
        more = new int[size];
        this.rows = new int[size];
        entries = new int[size];
        Arrays.fill(entries, -1);
    }

    /** {@code entry}: of the row's first entry, counted from the file's first. */
    void add(RowMark mark, long entry) {
        int at = start(mark);
        while (entries[at] >= 0) {
            at = next(at);
        }
        digests[at] = mark.digest();
        more[at] = mark.more();
        rows[at] = Math.toIntExact(mark.row());
        entries[at] = Math.toIntExact(entry);
    }

    /** Where a row that says the same and was not met yet is, which is met now; -1 for none. */
    int meet(RowMark mark) {
        for (int at = start(mark); entries[at] >= 0; at = next(at)) {
            if (digests[at] == mark.digest() && more[at] == mark.more() && rows[at] >= 0) {
                rows[at] = ~rows[at];
                return at;
            }
        }
        return -1;
    }

    /** The number of a row that was met. */
    long row(int at) {
        return ~rows[at];
    }

    long entry(int at) {
        return entries[at];
    }

    private int start(RowMark mark) {
        return (int) Long.remainderUnsigned(mark.digest(), digests.length);
    }

    private int next(int at) {
        return at + 1 == digests.length ? 0 : at + 1;
    }
}
