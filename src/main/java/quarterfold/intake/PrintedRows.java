package quarterfold.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import quarterfold.intake.Print.FactLine;

/**
 * The rows of a printed report, by the lines its layout knows. Each line of text is a row, states
 * something, goes on with the row above it, or is one the layout says to pass over; any other is a
 * problem. For one thread.
 */
final class PrintedRows implements Rows {
    private final String file;
    private final String layout;
    private final Print print;
    private final List<PrintedLine> lines;
    private final Problems problems;
    private final List<String> columns;
    private final PrintedTotals totals;
    private final PrintedPages pages;
    private final Map<String, String> facts = new HashMap<>();
    private final Set<FactLine> stated = new HashSet<>();
    private final Set<String> toldMissing = new TreeSet<>();
    private final String[] cells;
    private int next;
    private int at;
    private boolean any;
    private boolean ended;

    PrintedRows(
            String file, Layout layout, Print print, List<PrintedLine> lines, Problems problems) {
        this.file = file;
        this.layout = layout.name();
        this.print = print;
        this.lines = lines;
        this.problems = problems;
        columns = print.columns();
        cells = new String[columns.size()];
        totals = new PrintedTotals(layout, print, file, problems);
        pages = new PrintedPages(print, file, problems);
    }

    @Override
    public boolean next() {
        while (next < lines.size()) {
            at = next;
            PrintedLine line = lines.get(next++);
            Optional<Map<String, String>> row = row(line);
            if (row.isPresent()) {
                enter(line, row.get());
                goOn();
                return true;
            }
            if (!totals.take(line) && !pages.take(line) && !state(line) && !isOther(line)) {
                unknown(line);
            }
        }
        if (!ended) {
            ended = true;
            totals.check();
            pages.check(lines);
        }
        return false;
    }

    private Optional<Map<String, String>> row(PrintedLine line) {
        return print.rows().stream().flatMap(p -> p.match(line.text()).stream()).findFirst();
    }

    private void enter(PrintedLine line, Map<String, String> texts) {
        for (FactLine fact : print.facts()) {
            if (!fact.optional()
                    && !stated.contains(fact)
                    && toldMissing.add(fact.line().toString())) {
                problems.add(
                        new Problem(
                                line.place(file),
                                String.join(", ", fact.line().names()),
                                "found a row and no line above it that states this; expected one, such as '%s'"
                                        .formatted(fact.line())));
            }
        }
        any = true;
        Map<String, String> all = new HashMap<>(facts);
        all.putAll(texts);
        for (int i = 0; i < cells.length; i++) {
            cells[i] = all.getOrDefault(columns.get(i), "");
        }
        totals.row(line.page(), all);
    }

    /** Takes the lines right below the row, on its page, that go on with what it says. */
    private void goOn() {
        int page = lines.get(at).page();
        while (next < lines.size()
                && lines.get(next).page() == page
                && !print.isKnown(lines.get(next).text())) {
            String text = lines.get(next).text();
            Optional<Map<String, String>> more =
                    print.continues().stream().flatMap(p -> p.match(text).stream()).findFirst();
            if (more.isEmpty()) {
                return;
            }
            more.get().forEach(this::append);
            next++;
        }
    }

    private void append(String column, String text) {
        int i = columns.indexOf(column);
        cells[i] = (cells[i] + " " + text).strip();
    }

    private boolean state(PrintedLine line) {
        for (FactLine fact : print.facts()) {
            Optional<Map<String, String>> texts = fact.line().match(line.text());
            if (texts.isPresent()) {
                if (any && fact.optional() && !stated.contains(fact)) {
                    problems.add(
                            Problem.found(
                                    line.place(file),
                                    "",
                                    line.text(),
                                    "such a line above the rows it holds for, as the first of them is above it"));
                }
                facts.putAll(texts.get());
                facts.putAll(fact.set());
                stated.add(fact);
                return true;
            }
        }
        return false;
    }

    private boolean isOther(PrintedLine line) {
        return print.knownBy().stream().anyMatch(p -> p.match(line.text()).isPresent())
                || print.other().stream().anyMatch(p -> p.match(line.text()).isPresent());
    }

    private void unknown(PrintedLine line) {
        totals.spoil();
        problems.add(
                Problem.found(
                        line.place(file),
                        "",
                        line.text(),
                        "a line that layout %s knows, such as the row '%s'; give the layout a line for it under rows, totals, facts or other"
                                .formatted(layout, print.rows().get(0))));
    }

    /** The lines that are rows, in words for a message. */
    String expected() {
        return print.rows().stream()
                .map(row -> "'" + row + "'")
                .collect(Collectors.joining(" or "));
    }

    private PrintedLine at() {
        return lines.get(at);
    }

    @Override
    public long number() {
        return at().number();
    }

    @Override
    public int width() {
        return cells.length;
    }

    @Override
    public String cell(int column) {
        return column < cells.length ? cells[column] : "";
    }

    @Override
    public boolean isNumber(int column) {
        return false;
    }

    @Override
    public boolean isEven() {
        return false;
    }

    @Override
    public String place(int column) {
        return place();
    }

    @Override
    public String place() {
        return at().place(file);
    }

    /** The names of the columns. */
    List<String> columns() {
        return new ArrayList<>(columns);
    }

    @Override
    public void close() {}
}
