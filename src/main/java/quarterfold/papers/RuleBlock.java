package quarterfold.papers;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import quarterfold.law.Fact;
import quarterfold.law.TableRows;
import quarterfold.ledger.Coded;
import quarterfold.ledger.Kind;

/**
 * One rule of the treatment table as a person reads it: a row, or a row together with the one below
 * it that does the same to what reduces the supply.
 */
final class RuleBlock {

    /** Columns that have a place of their own in the block, beside the facts. */
    private static final Set<String> PLACED =
            Set.of(
                    "rule",
                    "treatment",
                    "choice",
                    "rate",
                    "vat_is",
                    "claim",
                    "query",
                    "why",
                    "from",
                    "to",
                    "source");

    private final LawView view;
    private final BoxClauses boxes;
    private final TableRows.Row row;
    private final Optional<TableRows.Row> twin;

    private RuleBlock(LawView view, TableRows.Row row, Optional<TableRows.Row> twin) {
        this.view = view;
        this.boxes = new BoxClauses(view);
        this.row = row;
        this.twin = twin;
    }

    /** Every row as blocks, in the order they are tried. */
    static List<RuleBlock> all(LawView view) {
        List<TableRows.Row> rows = view.rows(LawView.TREATMENTS);
        List<RuleBlock> blocks = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            RuleBlock alone = new RuleBlock(view, rows.get(i), Optional.empty());
            if (i + 1 < rows.size() && alone.isTwin(rows.get(i + 1))) {
                i++;
                blocks.add(new RuleBlock(view, alone.row, Optional.of(rows.get(i))));
            } else {
                blocks.add(alone);
            }
        }
        return blocks;
    }

    /** One rule alone. */
    static RuleBlock of(LawView view, TableRows.Row row) {
        return new RuleBlock(view, row, Optional.empty());
    }

    /** The sides of the business its entries are on. */
    Set<Kind.Side> sides() {
        return rows().flatMap(r -> Cells.values(r.cell("kind")).stream())
                .flatMap(code -> Coded.find(Kind.class, code).stream())
                .map(Kind::side)
                .collect(Collectors.toSet());
    }

    /** Whether it turns on where goods start or go. */
    boolean isOnGoods() {
        return !row.cell("starts").isEmpty() || !row.cell("goes").isEmpty();
    }

    /**
     * Whether the next row differs in nothing but what its name says: other kinds of entry, and
     * from each box is taken what this row adds.
     */
    private boolean isTwin(TableRows.Row next) {
        Set<String> may = Set.of("rule", "treatment", "kind", "why", "source");
        boolean sameCells =
                view.table(LawView.TREATMENTS).orElseThrow().columns().stream()
                        .filter(c -> !may.contains(c))
                        .allMatch(c -> row.cell(c).equals(next.cell(c)));
        return sameCells
                && row.cell("rule").replaceFirst("a$", "b").equals(next.cell("rule"))
                && next.cell("treatment").startsWith(row.cell("treatment") + "-")
                && next.cell("why").startsWith(row.cell("why") + "; ")
                && next.cell("source").endsWith("; " + row.cell("source"))
                && boxes.mirror(row, next);
    }

    private Stream<TableRows.Row> rows() {
        return Stream.concat(Stream.of(row), twin.stream());
    }

    String text() {
        String rules = rows().map(r -> r.cell("rule")).collect(Collectors.joining(", "));
        StringBuilder text =
                new StringBuilder(
                        Markdown.heading(
                                3,
                                rules
                                        + ": "
                                        + Words.treatment(row.cell("treatment"))
                                        + Unchecked.signs(rows().toList())));
        text.append(Markdown.paragraph(Markdown.plain(row.cell("why")) + "."));
        text.append(item("When", when(row)));
        text.append(Markdown.item("VAT", vat()));
        text.append(Markdown.item("Boxes", boxes.text(row)));
        text.append(Markdown.item("Reclaimed", view.words().say("claim", row.cell("claim"))));
        if (!row.cell("choice").isEmpty()) {
            text.append(item("Where the book chooses", choice()));
        }
        if (!row.cell("query").isEmpty()) {
            text.append(item("Query", row.cell("query")));
        }
        view.table(LawView.TREATMENTS).orElseThrow().columns().stream()
                .filter(c -> !PLACED.contains(c) && !isFact(c) && !row.cell(c).isEmpty())
                .forEach(c -> text.append(item(Words.heading(c), row.cell(c))));
        text.append(item("In force", LawView.inForce(row) + "; " + numbers()));
        text.append(item("Source", row.cell("source") + "."));
        twin.ifPresent(reduced -> text.append(reduction(reduced)));
        return text.append('\n').toString();
    }

    /** What a query, a choice or a day asks for is said by the row's own cells, made plain. */
    private static String item(String about, String text) {
        return Markdown.item(about, Markdown.plain(text));
    }

    private String reduction(TableRows.Row reduced) {
        String kinds = view.words().clause("kind", Cells.values(reduced.cell("kind")));
        String source = reduced.cell("source");
        String above =
                source.substring(0, source.length() - row.cell("source").length() - "; ".length());
        String why = reduced.cell("why").substring(row.cell("why").length() + "; ".length());
        String what =
                boxes.of(reduced).isEmpty()
                        ? "likewise in no box"
                        : "the same, but " + boxes.text(reduced);
        return item(
                reduced.cell("rule"),
                "for %s: %s. %s. Source: %s; and the above."
                        .formatted(kinds, what, Words.capital(why), above));
    }

    /** The conditions in words, each after a semicolon. */
    private String when(TableRows.Row of) {
        List<String> clauses =
                Stream.concat(
                                Stream.of(Fact.KIND),
                                Arrays.stream(Fact.values()).filter(f -> f != Fact.KIND))
                        .map(Fact::column)
                        .filter(c -> !of.cell(c).isEmpty())
                        .map(c -> view.words().clause(c, Cells.values(of.cell(c))))
                        .toList();
        return clauses.isEmpty() ? "always" : String.join("; ", clauses);
    }

    static String when(LawView view, TableRows.Row row) {
        return of(view, row).when(row);
    }

    private String vat() {
        String rate = row.cell("rate");
        String how = view.words().say("vat_is", row.cell("vat_is"));
        return rate.isEmpty() ? how : "at %s: %s".formatted(view.words().say("rate", rate), how);
    }

    private String choice() {
        String choice = row.cell("choice");
        boolean standard =
                view.rows(LawView.CHOICES).stream()
                        .anyMatch(c -> choice.equals(c.cell("name") + "=" + c.cell("default")));
        return choice.replace("=", ": ") + (standard ? " (which is the default)" : "");
    }

    private String numbers() {
        return (twin.isEmpty() ? "row " : "rows ")
                + Words.all(rows().map(r -> Integer.toString(r.number())).toList())
                + " of the table";
    }

    private static boolean isFact(String column) {
        return Arrays.stream(Fact.values()).anyMatch(f -> f.column().equals(column));
    }
}
