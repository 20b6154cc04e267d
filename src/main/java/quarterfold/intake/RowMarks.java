package quarterfold.intake;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Marks the rows of a table: each cell that is not blank, with the name of its column. Columns may
 * stand in another order, and a column without a text is as good as none. For one thread.
 */
final class RowMarks {

    /** {@code name} tells a column from others of its name. */
    private record Column(String name, int at) {}

    private final List<Column> columns = new ArrayList<>();
    private final TextDigest digest = new TextDigest();

    /** {@code ignored}: names of columns that are not looked at. */
    RowMarks(Header header, Set<String> ignored) {
        Map<String, Integer> seen = new HashMap<>();
        Set<Integer> without = header.columns(ignored);
        for (int i = 0; i < header.width(); i++) {
            String name = header.name(i);
            int number = seen.merge(name, 1, Integer::sum);
            if (!without.contains(i)) {
                columns.add(new Column(name + '\n' + number, i));
            }
        }
        for (int i = 0; i < header.above().size(); i++) {
            int column = Header.ABOVE + i;
            if (!without.contains(column)) {
                columns.add(new Column(header.name(column) + "\nabove", column));
            }
        }
        columns.sort(Comparator.comparing(Column::name));
    }

    RowMark of(Row row) {
        for (Column column : columns) {
            String text = row.text(column.at());
            if (!text.isEmpty()) {
                digest.add(column.name()).add(text);
            }
        }
        ByteBuffer found = digest.take();
        return new RowMark(row.number(), found.getLong(), found.getInt());
    }
}
