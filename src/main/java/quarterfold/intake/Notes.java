package quarterfold.intake;

import java.util.Set;
import java.util.stream.IntStream;

/** What the columns no one asked for say: {@code column: value; …}, blanks left out. */
final class Notes {
    private final int[] columns;
    private final String[] labels;
    private final StringBuilder text = new StringBuilder();

    Notes(Header header, Set<String> named) {
        columns =
                IntStream.range(0, header.width())
                        .filter(i -> !header.columns(named).contains(i))
                        .toArray();
        labels = IntStream.of(columns).mapToObj(i -> label(header, i)).toArray(String[]::new);
    }

    private static String label(Header header, int column) {
        String name = header.name(column);
        return (name.isEmpty() ? "#" + (column + 1) : name) + ": ";
    }

    String read(Row row) {
        if (columns.length == 0) {
            return "";
        }
        text.setLength(0);
        for (int i = 0; i < columns.length; i++) {
            String cell = row.text(columns[i]);
            if (!cell.isEmpty()) {
                if (text.length() > 0) {
                    text.append("; ");
                }
                text.append(labels[i]).append(cell);
            }
        }
        return text.toString();
    }
}
