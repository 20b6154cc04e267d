package quarterfold.papers;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import quarterfold.law.Box;
import quarterfold.law.TableRows;

/**
 * A table of the law as a table of the page, or as a list where it has more columns and text than a
 * page has room for. Any table will do: it is headed by its own columns.
 */
final class LawTable {

    /** What a page has room for: so many columns, or more of them if their rows are short. */
    private static final int COLUMNS = 5;

    private static final int CHARACTERS = 180;
    private static final String FROM = "from";
    private static final String DAYS = "In force";

    private final LawView view;
    private final TableRows table;

    LawTable(LawView view, TableRows table) {
        this.view = view;
        this.table = table;
    }

    String text() {
        List<String> columns =
                table.columns().stream()
                        .filter(c -> !c.equals("to"))
                        .filter(c -> table.rows().stream().anyMatch(r -> !r.cell(c).isEmpty()))
                        .toList();
        List<String> headings = new ArrayList<>(columns.stream().map(this::heading).toList());
        List<List<String>> rows = new ArrayList<>();
        for (TableRows.Row row : table.rows()) {
            List<String> cells = new ArrayList<>();
            columns.forEach(c -> cells.add(Markdown.plain(cell(row, c))));
            rows.add(cells);
        }
        if (table.name().equals(LawView.QUERIES)) {
            headings.add("Asked by");
            for (int i = 0; i < rows.size(); i++) {
                rows.get(i).add(askedBy(table.rows().get(i).cell("code")));
            }
        }
        for (int i = 0; i < rows.size(); i++) {
            List<String> cells = rows.get(i);
            cells.set(0, cells.get(0) + Unchecked.signs(List.of(table.rows().get(i))));
        }
        return rows.isEmpty()
                ? Markdown.paragraph("No row is in force.")
                : fits(headings, rows) ? Markdown.table(headings, rows) : list(headings, rows);
    }

    private static boolean fits(List<String> headings, List<List<String>> rows) {
        int characters = rows.stream().flatMap(List::stream).mapToInt(String::length).sum();
        return headings.size() <= COLUMNS || characters <= CHARACTERS * rows.size();
    }

    private static String list(List<String> headings, List<List<String>> rows) {
        StringBuilder text = new StringBuilder();
        for (List<String> cells : rows) {
            List<String> parts = new ArrayList<>();
            for (int i = 1; i < cells.size(); i++) {
                if (!cells.get(i).isEmpty()) {
                    parts.add(headings.get(i) + ": " + cells.get(i) + ".");
                }
            }
            text.append(
                    Markdown.item(headings.get(0) + " " + cells.get(0), String.join(" ", parts)));
        }
        return text.append('\n').toString();
    }

    private String heading(String column) {
        return column.equals(FROM) && table.isDated() ? DAYS : Words.heading(column);
    }

    private String cell(TableRows.Row row, String column) {
        String cell = row.cell(column);
        if (column.equals(FROM) && table.isDated()) {
            return row.to().equals(LocalDate.MAX)
                    ? "from " + row.from()
                    : row.from() + " to " + row.to();
        }
        return switch (table.name() + " " + column) {
            case "boxes.csv treatment" -> Words.treatment(cell);
            case "boxes.csv measure" -> view.words().say(column, cell);
            case "form.csv rounding" ->
                    formBox(row).map(b -> Words.rounding(b.rounding())).orElse(cell);
            case "form.csv formula" -> formBox(row).map(b -> Words.made(b)).orElse(cell);
            default -> Cells.text(cell);
        };
    }

    /** The box as the law reads it. */
    private Optional<Box> formBox(TableRows.Row row) {
        return view.law().form(row.from()).stream()
                .filter(b -> b.id().equals(row.cell("box")))
                .findFirst();
    }

    /** The rules that raise a query, or that it comes from a check outside the table. */
    private String askedBy(String code) {
        String rules =
                view.rows(LawView.TREATMENTS).stream()
                        .filter(r -> r.cell("query").equals(code))
                        .map(r -> r.cell("rule"))
                        .collect(Collectors.joining(", "));
        return rules.isEmpty() ? "a check beside the rules" : rules;
    }
}
