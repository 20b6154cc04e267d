package quarterfold.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.intake.Layout.OtherRow;
import quarterfold.money.Amount;

/** Holds what rows round the shapes of a file state against the rows of all shapes together. */
final class WholeStudy {
    private final List<LayoutMaker> makers;
    private final TableMoney all;
    private final Vocabulary words;
    private final Findings findings;
    private final LineAmounts amounts;
    private final boolean minor;

    WholeStudy(List<LayoutMaker> makers, Vocabulary words, Findings findings) {
        this.makers = makers;
        this.words = words;
        this.findings = findings;
        all = makers.stream().map(LayoutMaker::money).reduce(TableMoney::and).orElseThrow();
        amounts = new LineAmounts(makers.get(0).numbers());
        minor = makers.get(0).numbers().minor() > 0;
    }

    /** What the rows of all shapes come to. */
    TableMoney money() {
        return all;
    }

    /** Holds a total or payout that a row above all tables states. */
    void above(Grid.Line line) {
        String text = String.join(" ", line.cells()).strip();
        List<Long> stated =
                words.isLabel(text, "payout") || words.isLabel(text, "total")
                        ? amounts.of(line)
                        : List.of();
        for (long amount : stated) {
            Optional<String> known = known(amount);
            if (known.isPresent()) {
                prove(line, amount, known.get());
                return;
            }
        }
        if (!stated.isEmpty()) {
            findings.fault(
                    "row %d ('%s') states %s; the rows of all shapes come to %s"
                            .formatted(
                                    line.number(),
                                    text,
                                    new Amount(stated.get(0)),
                                    new Amount(all.all())));
        }
    }

    private void prove(Grid.Line line, long amount, String known) {
        findings.prove(
                "%s: row %d states %s too".formatted(known, line.number(), new Amount(amount)));
    }

    /** What of the file comes to the amount, whatever its sign. */
    private Optional<String> known(long amount) {
        Optional<String> whole =
                all.known(amount).map(k -> k.replaceFirst("^the rows", "the rows of all shapes"));
        return whole.or(
                () -> makers.stream().flatMap(m -> m.money().known(amount).stream()).findFirst());
    }

    /** What of the whole file the amount is, to the sign. */
    private Optional<FileTotal> total(long amount) {
        if (amount == all.all()) {
            return Optional.of(FileTotal.MONEY);
        }
        return amount == all.all() - all.paid() ? Optional.of(FileTotal.PAYOUT) : Optional.empty();
    }

    /** A row below the last table, where it states what all tables come to and not just its own. */
    Optional<OtherRow> claim(Grid.Line line, LayoutMaker last) {
        Optional<String> start = LeadingWords.of(line.first());
        List<Grid.Line> body = last.table().body();
        if (start.isEmpty() || line.number() < body.get(body.size() - 1).number()) {
            return Optional.empty();
        }
        Map<String, FileTotal> states = new LinkedHashMap<>();
        boolean ownAlone = true;
        for (int i = 0; i < line.width(); i++) {
            Optional<Long> amount = isMoney(line, i) ? amounts.cell(line, i) : Optional.empty();
            if (amount.isEmpty()) {
                continue;
            }
            if (known(amount.get()).isEmpty() && total(amount.get()).isEmpty()) {
                return Optional.empty();
            }
            int column = i;
            ownAlone &=
                    last.columns().stream()
                            .anyMatch(
                                    c ->
                                            c.index() == column
                                                    && c.hasValues()
                                                    && c.sum() == amount.get());
            total(amount.get())
                    .filter(t -> column < last.columns().size())
                    .ifPresent(t -> states.put(last.columns().get(column).reference(), t));
        }
        count(line, last, states);
        if (states.isEmpty() || (ownAlone && !states.containsValue(FileTotal.ROWS))) {
            return Optional.empty();
        }
        String text = start.get();
        states.forEach((column, total) -> tell(line, total, 0));
        return Optional.of(
                new OtherRow(
                        "",
                        text,
                        alsoStarts(body, text) ? List.of(date(last)) : List.of(),
                        Map.of(),
                        List.of(),
                        false,
                        false,
                        states,
                        "total of the file"));
    }

    private void count(Grid.Line line, LayoutMaker last, Map<String, FileTotal> states) {
        boolean count = states.isEmpty() && words.isLabel(line.first(), "count");
        for (int i = 0; count && i < Math.min(line.width(), last.columns().size()); i++) {
            if (FileTotals.states(line.cell(i), all.rows())) {
                states.put(last.columns().get(i).reference(), FileTotal.ROWS);
                return;
            }
        }
    }

    private static boolean alsoStarts(List<Grid.Line> body, String text) {
        return body.stream()
                .anyMatch(l -> l.first().regionMatches(true, 0, text, 0, text.length()));
    }

    private static String date(LayoutMaker of) {
        return of.columns().stream()
                .filter(c -> c.role() == Role.DATE)
                .findFirst()
                .map(Column::reference)
                .orElse("");
    }

    private boolean isMoney(Grid.Line line, int column) {
        String cell = line.cell(column);
        boolean number = minor && cell.matches("[-+]?\\d+-?");
        return (LineAmounts.showsDecimals(cell) || line.numbers().get(column) || number)
                && !DateFinder.isLike(cell);
    }

    private String rows() {
        return makers.size() == 1 ? "the rows" : "the rows of all shapes";
    }

    /** {@code records}: how many rows of any kind there are down to this one. */
    private void tell(Grid.Line line, FileTotal total, int records) {
        String said =
                switch (total) {
                    case MONEY -> "what %s come to, %s".formatted(rows(), new Amount(all.all()));
                    case PAYOUT ->
                            "what %s but payouts come to, %s"
                                    .formatted(rows(), new Amount(all.all() - all.paid()));
                    case ROWS -> "%,d rows of all shapes".formatted(all.rows());
                    case RECORDS -> "%,d rows with itself".formatted(records);
                };
        findings.prove(
                "row %d states %s: %s"
                        .formatted(line.number(), said, total.isMoney() ? "it ties" : "there are"));
    }

    /** Rows known by a text that have no date and amount: first and last records, remarks. */
    List<OtherRow> loose(List<Grid.Line> lines, Grid grid) {
        Map<String, List<Grid.Line>> marked = new LinkedHashMap<>();
        lines.forEach(l -> marked.computeIfAbsent(l.cell(0), m -> new ArrayList<>()).add(l));
        List<OtherRow> others = new ArrayList<>();
        marked.forEach(
                (mark, of) -> {
                    Map<String, FileTotal> states = new LinkedHashMap<>();
                    boolean count = false;
                    if (of.size() > 1) {
                        several(mark, of);
                    } else {
                        count = single(of.get(0), grid, states);
                    }
                    others.add(
                            new OtherRow(
                                    mark,
                                    "",
                                    List.of(),
                                    Map.of(),
                                    List.of(),
                                    count,
                                    false,
                                    states,
                                    "no row of a shape"));
                });
        return others;
    }

    private void several(String mark, List<Grid.Line> lines) {
        boolean numbers =
                lines.stream()
                        .anyMatch(l -> l.cells().stream().anyMatch(c -> c.matches(".*\\d.*")));
        if (numbers) {
            mayHoldMoney(mark, lines);
        }
    }

    private void mayHoldMoney(String mark, List<Grid.Line> lines) {
        findings.unsound(
                "records '%s' (%,d, the first in row %d) have no date and amount in columns of their own, and may hold money: save the file without them"
                        .formatted(mark, lines.size(), lines.get(0).number()));
    }

    /** Adds what of the whole file it states; whether it counts the rows of the first shape. */
    private boolean single(Grid.Line line, Grid grid, Map<String, FileTotal> states) {
        int at = grid.lines().indexOf(line) + 1;
        boolean below = makers.stream().allMatch(m -> isBelow(line, m.table().body()));
        boolean numbers = false;
        boolean tied = false;
        boolean first = false;
        for (int i = 1; i < line.width(); i++) {
            String cell = line.cell(i);
            Optional<Long> amount = isMoney(line, i) ? amounts.cell(line, i) : Optional.empty();
            boolean count = cell.matches("\\d{1,9}") && !DateFinder.isLike(cell);
            numbers |= count || amount.isPresent();
            Optional<FileTotal> total = amount.flatMap(this::total);
            if (count && below && total.isEmpty()) {
                total = count(line, cell, at);
            }
            String column = "#" + (i + 1);
            if (total.isPresent() && below) {
                total.ifPresent(t -> states.put(column, t));
                total.ifPresent(t -> tell(line, t, at));
                tied = true;
            } else if (amount.isPresent() && !count) {
                Optional<String> known = known(amount.get());
                known.ifPresent(k -> prove(line, amount.get(), k));
                tied |= known.isPresent();
                if (known.isEmpty()) {
                    mayHoldMoney(line.cell(0), List.of(line));
                    return false;
                }
            } else if (count && below && FileTotals.states(cell, makers.get(0).money().rows())) {
                findings.prove(
                        "row %d states %,d rows of the first shape: there are"
                                .formatted(line.number(), makers.get(0).money().rows()));
                first = true;
            }
        }
        tied |= first;
        if (below && at == grid.lines().size() && numbers && !tied) {
            findings.fault(
                    "row %d ('%s') ends the file and states no number that it has: there are %,d rows of shapes, which come to %s"
                            .formatted(
                                    line.number(),
                                    String.join(" ", line.cells()),
                                    all.rows(),
                                    new Amount(all.all())));
        }
        return first;
    }

    /** What the number counts. */
    private Optional<FileTotal> count(Grid.Line line, String cell, int at) {
        if (FileTotals.states(cell, all.rows())) {
            return Optional.of(FileTotal.ROWS);
        }
        if (!FileTotals.states(cell, at)) {
            return Optional.empty();
        }
        boolean ties = false;
        for (int i = 1; i < line.width(); i++) {
            ties |= isMoney(line, i) && amounts.cell(line, i).flatMap(this::total).isPresent();
        }
        // One more than the rows: it may count itself, or a row may be missing.
        return ties || at > all.rows() + 1
                ? Optional.of(FileTotal.RECORDS)
                : findings.ask(
                                new Question(
                                        "counts-itself",
                                        "row %d states %s, and there are %,d rows of shapes: does it count itself? else a row is missing"
                                                .formatted(line.number(), cell, all.rows()),
                                        List.of("yes"),
                                        true))
                        .map(yes -> FileTotal.RECORDS);
    }

    private static boolean isBelow(Grid.Line line, List<Grid.Line> body) {
        return line.number() > body.get(body.size() - 1).number();
    }
}
