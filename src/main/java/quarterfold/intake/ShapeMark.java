package quarterfold.intake;

import java.util.List;
import java.util.Map;

/** How a row of a shape is known: by the texts in some of its columns. */
final class ShapeMark {
    private final int[] columns;
    private final List<List<String>> texts;

    ShapeMark(Map<String, List<String>> when, Header header) {
        columns = when.keySet().stream().mapToInt(header::column).toArray();
        texts = List.copyOf(when.values());
    }

    boolean fits(Row row) {
        for (int i = 0; i < columns.length; i++) {
            if (!texts.get(i).contains(row.text(columns[i]))) {
                return false;
            }
        }
        return true;
    }
}
