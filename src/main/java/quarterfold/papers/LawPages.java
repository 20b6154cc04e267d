package quarterfold.papers;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import quarterfold.law.Law;
import quarterfold.law.LawWords;
import quarterfold.law.TableRows;

/**
 * The law as pages a person reads, made from the tables and nothing else: every treatment in words
 * with its boxes, days and source, every other table whole, and what of it was not checked.
 * Markdown that also reads well as plain text; lines end in a line feed.
 */
public final class LawPages {

    private final LawView view;
    private final TreatmentPages treatments;

    /**
     * The pages of a law.
     *
     * @param day shows only the rows in force on it; empty shows every row
     */
    public LawPages(Law law, LawWords words, Optional<LocalDate> day) {
        view = LawView.of(law, words, day);
        treatments = new TreatmentPages(view);
    }

    /** The names of the tables, such as {@code rates.csv}, in the order they are shown. */
    public List<String> tables() {
        return view.tables().stream().map(TableRows::name).toList();
    }

    /** Everything, as docs/law-uk.md holds it where no day is given. */
    public String whole() {
        StringBuilder text = new StringBuilder();
        text.append(Markdown.heading(1, view.words().say("page", "title")));
        Caution.text().lines().forEach(l -> text.append("> ").append(l).append('\n'));
        text.append('\n');
        text.append(
                Markdown.paragraph(
                        "Every rate, limit, date, rule and box the program uses, made by `quarterfold law` from the tables"
                                + " themselves"
                                + view.day()
                                        .map(d -> ": what was in force on " + Words.day(d))
                                        .orElse("")
                                + ". What is wrong here is put right in the table, never on this page."));
        text.append(contents());
        text.append(Markdown.heading(2, "How to read this page"));
        text.append(treatments.guide());
        text.append(Markdown.item(Unchecked.legend() + " " + Unchecked.count(view.tables())));
        text.append(
                Markdown.item(
                        "Days are the first and the last a row is in force; “from” alone means that it still is, in the"
                                + " texts read."));
        text.append('\n');
        text.append(treatments.text());
        others().forEach(t -> text.append(section(t)));
        text.append(Unchecked.section(view.tables()));
        return text.toString();
    }

    /** One table, by its file's name with or without the ending; empty where there is none. */
    public Optional<String> table(String name) {
        Optional<TableRows> found = view.table(name).or(() -> view.table(name + ".csv"));
        return found.map(
                t ->
                        (t.name().equals(LawView.TREATMENTS) ? treatments.text() : section(t))
                                + Unchecked.legend()
                                + "\n");
    }

    /** One rule of the treatment table, such as {@code S17a}; empty where none has this name. */
    public Optional<String> rule(String name) {
        return row(name).map(treatments::rule).map(text -> text + Unchecked.legend() + "\n");
    }

    /** The rows shown, as JSON, a line each. Those of one table, where one is named. */
    public List<String> json(Optional<String> table) {
        return view.tables().stream()
                .filter(
                        t ->
                                table.map(
                                                n ->
                                                        t.name()
                                                                .replace(".csv", "")
                                                                .equals(n.replace(".csv", "")))
                                        .orElse(true))
                .flatMap(t -> t.rows().stream().map(r -> LawJson.of(view, t, r)))
                .toList();
    }

    /** One rule as JSON. */
    public Optional<String> ruleJson(String name) {
        return row(name)
                .map(r -> LawJson.of(view, view.table(LawView.TREATMENTS).orElseThrow(), r));
    }

    private Optional<TableRows.Row> row(String rule) {
        return view.rows(LawView.TREATMENTS).stream()
                .filter(r -> r.cell("rule").equals(rule))
                .findFirst();
    }

    private List<TableRows> others() {
        return view.tables().stream().filter(t -> !t.name().equals(LawView.TREATMENTS)).toList();
    }

    private String contents() {
        List<String> titles = new ArrayList<>(List.of("How to read this page"));
        titles.addAll(treatments.titles());
        others().forEach(t -> titles.add(view.title(t.name())));
        titles.add(Unchecked.TITLE);
        return titles.stream()
                        .map(t -> "- " + Markdown.link(t) + "\n")
                        .collect(Collectors.joining())
                + "\n";
    }

    private String section(TableRows table) {
        return Markdown.heading(2, view.title(table.name()))
                + Markdown.paragraph(
                        "`%s`, %s."
                                .formatted(
                                        table.name(), Words.of(table.rows().size(), "row", "rows")))
                + new LawTable(view, table).text();
    }
}
