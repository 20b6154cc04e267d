package quarterfold.papers;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import quarterfold.law.TableRows;

/** Which rows of the law say themselves that their source was not checked, and their marks. */
final class Unchecked {

    static final String TITLE = "What was not checked against the official text";

    /** How a source says that it was not checked; what it says of a part counts for the row. */
    enum Mark {
        MEMORY("†", "from memory"),
        SECONDARY("‡", "secondary source");

        private final String sign;
        private final String words;

        Mark(String sign, String words) {
            this.sign = sign;
            this.words = words;
        }

        String words() {
            return words;
        }

        boolean isOn(TableRows.Row row) {
            return row.cell("source").contains(words);
        }
    }

    private Unchecked() {}

    static boolean isOn(TableRows.Row row) {
        return Arrays.stream(Mark.values()).anyMatch(m -> m.isOn(row));
    }

    /** A blank and the row's marks, such as <code>&nbsp;†‡</code>; nothing where it has none. */
    static String signs(Collection<TableRows.Row> rows) {
        String signs =
                Arrays.stream(Mark.values())
                        .filter(m -> rows.stream().anyMatch(m::isOn))
                        .map(m -> m.sign)
                        .collect(Collectors.joining());
        return signs.isEmpty() ? "" : " " + signs;
    }

    static String legend() {
        return "† from memory, ‡ from a secondary source: in whole, or in the part its source names.";
    }

    /** How many rows have a mark, and where they are listed. */
    static String count(List<TableRows> tables) {
        List<TableRows.Row> rows =
                tables.stream()
                        .filter(Unchecked::hasSources)
                        .flatMap(t -> t.rows().stream())
                        .toList();
        return "%s of the %s rows with a source have a mark: %s."
                .formatted(
                        Words.count(rows.stream().filter(Unchecked::isOn).count()),
                        Words.count(rows.size()),
                        Markdown.link(TITLE));
    }

    /** The section: how many rows of each table, and which. */
    static String section(List<TableRows> tables) {
        List<List<String>> counts = new ArrayList<>();
        StringBuilder named = new StringBuilder();
        for (TableRows table : tables.stream().filter(Unchecked::hasSources).toList()) {
            counts.add(
                    List.of(
                            "`" + table.name() + "`",
                            count(table, r -> true),
                            count(table, Unchecked::isOn),
                            count(table, Mark.MEMORY::isOn),
                            count(table, Mark.SECONDARY::isOn)));
            for (Mark mark : Mark.values()) {
                List<String> names =
                        table.rows().stream()
                                .filter(mark::isOn)
                                .map(r -> Markdown.plain(name(table, r)))
                                .toList();
                if (!names.isEmpty()) {
                    named.append(
                            Markdown.item(
                                    "`%s` %s %s".formatted(table.name(), mark.sign, mark.words),
                                    String.join(", ", names)));
                }
            }
        }
        return Markdown.heading(2, TITLE)
                + Markdown.paragraph(
                        "Each of these rows says so in its source. Every other row was seen in the law, an official"
                                + " notice, manual or published schema. A row may have both marks. What is uncertain and"
                                + " why is in [law-notes.md](law-notes.md).")
                + Markdown.table(
                        List.of(
                                "Table",
                                "Rows",
                                "Not checked in full",
                                "† From memory",
                                "‡ Secondary source"),
                        counts)
                + named;
    }

    private static boolean hasSources(TableRows table) {
        return table.columns().contains("source");
    }

    private static String count(TableRows table, Predicate<TableRows.Row> which) {
        return Words.count(table.rows().stream().filter(which).count());
    }

    /** The row's first cell, with its first day where that names several rows. */
    private static String name(TableRows table, TableRows.Row row) {
        String column = table.columns().get(0);
        String name = row.cell(column);
        boolean several =
                table.rows().stream().filter(r -> r.cell(column).equals(name)).count() > 1;
        return several && table.isDated() ? name + " from " + row.from() : name;
    }
}
