package quarterfold.intake;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellReference;

/**
 * What a person who looks at a sheet would not see, or would see otherwise, of the rows that are
 * read: rows and columns that are hidden, and cells that are merged. Rows and columns count from 1.
 */
final class SheetLook {
    private static final int NAMED = 10;

    private final BitSet filled = new BitSet();
    private final BitSet hiddenRows = new BitSet();
    private final BitSet hiddenColumns = new BitSet();
    private final List<CellRangeAddress> merged = new ArrayList<>();
    private int width;

    /** A row that has a text in some cell; {@code cells} is how many it has. */
    void row(long number, boolean isHidden, int cells) {
        filled.set((int) number);
        hiddenRows.set((int) number, isHidden);
        width = Math.max(width, cells);
    }

    void hiddenColumns(int first, int last) {
        hiddenColumns.set(first, Math.min(last, Rows.COLUMN_LIMIT) + 1);
    }

    /** Cells that are one on the screen; only the first of them holds the value. */
    void merged(CellRangeAddress cells) {
        merged.add(cells);
    }

    /** The hidden rows below the header, and columns, such as {@code rows 3 to 5, column D}. */
    Optional<String> hidden(long header) {
        BitSet rows = (BitSet) hiddenRows.clone();
        rows.clear(0, (int) header + 1);
        BitSet columns = (BitSet) hiddenColumns.clone();
        columns.clear(width + 1, Math.max(width + 1, columns.length()));
        List<String> words = new ArrayList<>();
        words("row", rows, false, words);
        words("column", columns, true, words);
        return words.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", words));
    }

    private static void words(String word, BitSet set, boolean letters, List<String> words) {
        if (set.isEmpty()) {
            return;
        }
        List<String> runs = new ArrayList<>();
        for (int from = set.nextSetBit(0); from >= 0; ) {
            int to = set.nextClearBit(from) - 1;
            runs.add(
                    from == to
                            ? name(from, letters)
                            : name(from, letters) + " to " + name(to, letters));
            from = set.nextSetBit(to + 1);
        }
        int more = runs.size() - NAMED;
        String text = String.join(" and ", runs.subList(0, Math.min(NAMED, runs.size())));
        words.add(
                (set.cardinality() == 1 ? word : word + "s")
                        + " "
                        + text
                        + (more > 0 ? " and %d more".formatted(more) : ""));
    }

    private static String name(int number, boolean letters) {
        return letters ? CellReference.convertNumToColString(number - 1) : Integer.toString(number);
    }

    /** The first cells merged over several rows below the header that are read. */
    Optional<String> mergedRows(long header) {
        return merged.stream()
                .filter(
                        cells -> {
                            int second = Math.max(cells.getFirstRow() + 2, (int) header + 1);
                            int next = filled.nextSetBit(second);
                            return next >= 0 && next <= cells.getLastRow() + 1;
                        })
                .map(CellRangeAddress::formatAsString)
                .findFirst();
    }
}
