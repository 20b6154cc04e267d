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
                        .filter(i -> !named.contains(header.name(i)))
                        .toArray();
        labels = IntStream.of(columns).mapToObj(i -> header.name(i) + ": ").toArray(String[]::new);
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
