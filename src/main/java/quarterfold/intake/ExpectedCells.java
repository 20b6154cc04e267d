package quarterfold.intake;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Holds each row against what its layout expects of columns that nothing is read from: no amounts
 * in new ones, and in some only texts that are known. For one thread.
 */
final class ExpectedCells {
    /** Of a column that must not say anything. */
    static final List<String> BLANK = List.of("");

    private final Layout layout;
    private final UnreadMoney money;
    private final int[] watched;
    private final boolean[] told;
    private final boolean lacksMoney;
    private final int[] columns;
    private final List<List<String>> texts;
    private final List<Set<String>> toldTexts = new ArrayList<>();

    ExpectedCells(Layout layout, Header header) {
        this.layout = layout;
        money = new UnreadMoney(layout.numbers());
        Set<Integer> known = new HashSet<>(header.columns(layout.named()));
        known.addAll(header.columns(layout.repeats().ignored()));
        layout.expected().unread().ifPresent(unread -> known.addAll(header.columns(unread)));
        layout.expected()
                .texts()
                .forEach(
                        (column, only) ->
                                known.add(only.equals(BLANK) ? header.column(column) : -1));
        watched =
                layout.expected().unread().isEmpty()
                        ? new int[0]
                        : IntStream.range(0, header.width())
                                .filter(i -> !known.contains(i))
                                .toArray();
        told = new boolean[watched.length];
        Set<String> needed = layout.needed();
        lacksMoney = layout.optional().stream().anyMatch(c -> needed.contains(c) && !header.has(c));
        List<String> there =
                layout.expected().texts().keySet().stream().filter(header::has).toList();
        columns = there.stream().mapToInt(header::column).toArray();
        texts =
                there.stream()
                        .map(c -> layout.expected().texts().getOrDefault(c, List.of()))
                        .toList();
        texts.forEach(t -> toldTexts.add(new HashSet<>()));
    }

    /** Adds a problem for each first amount of a column, and for each text that is not known. */
    void check(Row row) {
        for (int i = 0; i < watched.length; i++) {
            int column = watched[i];
            String text = told[i] ? "" : row.text(column);
            if (!text.isEmpty() && isAmount(row, column, text)) {
                told[i] = true;
                row.wrong(
                        column,
                        "no amount, for layout %1$s reads nothing from that column; if it is money, learn the report again with --name %1$s --accept; if it is of no account, make the layout's line: unread: %2$s"
                                .formatted(layout.name(), unread(row.header().reference(column))));
            } else if (!text.isEmpty() && money.isTelling(row.header().name(column))) {
                told[i] = true;
                row.wrong(
                        column,
                        "nothing, for layout %1$s reads nothing from that column; if rows count or are taxed by it, learn the report again with --name %1$s --accept; if it is of no account, make the layout's line: unread: %2$s"
                                .formatted(layout.name(), unread(row.header().reference(column))));
            }
        }
        for (int i = 0; i < columns.length; i++) {
            String text = row.text(columns[i]);
            if (texts.get(i).equals(BLANK) && !text.isEmpty()) {
                if (toldTexts.get(i).add("")) {
                    blank(row, columns[i]);
                }
            } else if (!texts.get(i).contains(text) && toldTexts.get(i).add(text)) {
                unknown(row, columns[i], text, texts.get(i));
            }
        }
    }

    private String unread(String column) {
        Set<String> all = new TreeSet<>(layout.expected().unread().orElse(Set.of()));
        all.add(column);
        return LayoutWriter.list(all);
    }

    private void unknown(Row row, int column, String text, List<String> known) {
        String name = row.header().reference(column);
        Map<String, List<String>> all = new LinkedHashMap<>(layout.expected().texts());
        all.replaceAll(
                (named, texts) ->
                        row.header().column(named) == column
                                ? Stream.concat(texts.stream(), Stream.of(text)).toList()
                                : texts);
        row.wrong(
                column,
                "a text that layout %s knows there, such as '%s'; where such rows count as the others do, make the layout's line: expect: %s; where they do not count, %s"
                        .formatted(
                                layout.name(),
                                known.get(0),
                                LayoutWriter.when(all),
                                OtherRowText.advice(
                                        "the layout",
                                        layout.otherRows().isEmpty(),
                                        OtherRowText.byText(name, text))));
    }

    /** Where a column of money may be missing, any number may be it under a new name. */
    private boolean isAmount(Row row, int column, String text) {
        boolean stored = row.isNumber(column);
        return money.isAmount(row.header().name(column), text, stored)
                || (lacksMoney && money.isNumber(text, stored));
    }

    private void blank(Row row, int column) {
        row.wrong(
                column,
                "nothing, for layout %s reads reports without that column; learn this one with a name of its own, such as --name %s-2; if the column is of no account, take it away under expect and optional"
                        .formatted(layout.name(), layout.name()));
    }
}
