package quarterfold.intake;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Holds each row against what its layout expects of columns that nothing is read from: no amounts
 * in new ones, and in some only texts that are known. For one thread.
 */
final class ExpectedCells {
    private final Layout layout;
    private final UnreadMoney money;
    private final int[] watched;
    private final boolean[] told;
    private final int[] columns;
    private final List<List<String>> texts;
    private final List<Set<String>> toldTexts = new ArrayList<>();

    ExpectedCells(Layout layout, Header header) {
        this.layout = layout;
        money = new UnreadMoney(layout.numbers());
        Set<Integer> known = new HashSet<>(header.columns(layout.named()));
        known.addAll(header.columns(layout.repeats().ignored()));
        layout.expected().unread().ifPresent(unread -> known.addAll(header.columns(unread)));
        watched =
                layout.expected().unread().isEmpty()
                        ? new int[0]
                        : IntStream.range(0, header.width())
                                .filter(i -> !known.contains(i))
                                .toArray();
        told = new boolean[watched.length];
        columns = layout.expected().texts().keySet().stream().mapToInt(header::column).toArray();
        texts = List.copyOf(layout.expected().texts().values());
        texts.forEach(t -> toldTexts.add(new HashSet<>()));
    }

    /** Adds a problem for each first amount of a column, and for each text that is not known. */
    void check(Row row) {
        for (int i = 0; i < watched.length; i++) {
            int column = watched[i];
            String text = told[i] ? "" : row.text(column);
            if (!text.isEmpty()
                    && money.isAmount(row.header().name(column), text, row.isNumber(column))) {
                told[i] = true;
                row.wrong(
                        column,
                        "no amount, for layout %s reads nothing from that column; if it is money, learn the report again with --accept; if it is of no account, add to the layout: unread: [%s]"
                                .formatted(
                                        layout.name(),
                                        LayoutWriter.text(row.header().reference(column))));
            } else if (!text.isEmpty() && money.isTelling(row.header().name(column))) {
                told[i] = true;
                row.wrong(
                        column,
                        "nothing, for layout %s reads nothing from that column; if rows count or are taxed by it, learn the report again with --accept; if it is of no account, add to the layout: unread: [%s]"
                                .formatted(
                                        layout.name(),
                                        LayoutWriter.text(row.header().reference(column))));
            }
        }
        for (int i = 0; i < columns.length; i++) {
            String text = row.text(columns[i]);
            if (!texts.get(i).contains(text) && toldTexts.get(i).add(text)) {
                String name = row.header().name(columns[i]);
                row.wrong(
                        columns[i],
                        "a text that layout %s knows there, such as '%s'; where such rows count as the others do, add it under expect; where they do not count, add to the layout: other_rows: [{when: {%s: %s}, why: of no account}]"
                                .formatted(
                                        layout.name(),
                                        texts.get(i).get(0),
                                        LayoutWriter.text(name),
                                        LayoutWriter.text(text)));
            }
        }
    }
}
