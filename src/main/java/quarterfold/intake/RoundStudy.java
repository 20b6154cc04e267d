package quarterfold.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import quarterfold.intake.Layout.OtherRow;
import quarterfold.money.Amount;

/** Studies the rows round a table: what they are, and whether what they state ties with it. */
final class RoundStudy {
    private final TableFinder.Found table;
    private final List<Column> columns;
    private final Vocabulary words;
    private final Findings findings;
    private final LineAmounts amounts;
    private final TableMoney money;
    private final List<OtherRow> others = new ArrayList<>();

    RoundStudy(
            TableFinder.Found table,
            List<Column> columns,
            Layout.Numbers numbers,
            Vocabulary words,
            TableMoney money,
            Findings findings) {
        this.table = table;
        this.columns = columns;
        this.words = words;
        this.money = money;
        this.findings = findings;
        amounts = new LineAmounts(numbers);
    }

    List<OtherRow> others() {
        return others;
    }

    void study() {
        Map<String, List<Grid.Line>> kinds = new LinkedHashMap<>();
        long firstBody = table.body().get(0).number();
        boolean rest = false;
        for (Grid.Line line : table.others()) {
            if (table.second().filter(s -> s.number() == line.number()).isPresent()) {
                rest = true;
                second(line);
            }
            if (!rest) {
                kinds.computeIfAbsent(condition(line), c -> new ArrayList<>()).add(line);
            }
        }
        kinds.forEach((condition, lines) -> other(condition, lines, firstBody));
        for (Grid.Line line : table.preamble()) {
            stated(line);
        }
    }

    /** How such rows are known: by how they start, or by having no date or text. */
    private String condition(Grid.Line line) {
        if (table.record().isPresent()) {
            return "is:" + line.cell(0);
        }
        String first = line.first();
        if (table.header().filter(h -> h.cells().equals(line.cells())).isPresent()) {
            return "is:" + first;
        }
        return LeadingWords.of(first).map(words -> "starts:" + words).orElse("blank:");
    }

    private void other(String condition, List<Grid.Line> lines, long firstBody) {
        String text = condition.substring(condition.indexOf(':') + 1);
        boolean is = condition.startsWith("is:");
        boolean starts = condition.startsWith("starts:");
        String low = text.toLowerCase(Locale.ROOT);
        boolean alsoBody =
                !is
                        && table.body().stream()
                                .anyMatch(l -> l.first().toLowerCase(Locale.ROOT).startsWith(low));
        List<String> blank =
                (starts && alsoBody) || condition.equals("blank:") ? List.of(date()) : List.of();
        tellOtherRecords(text, lines);
        lines.stream().filter(l -> isDatedMoney(l) && !isKnown(l)).forEach(this::lost);
        Set<String> sums = new LinkedHashSet<>();
        boolean count = false;
        boolean headings =
                is
                        && table.header()
                                .filter(h -> h.cells().equals(lines.get(0).cells()))
                                .isPresent();
        long since = 0;
        for (Grid.Line line : lines) {
            if (headings || line.number() < firstBody) {
                since = line.number();
                stated(line);
                continue;
            }
            List<Column> tied = tie(line, since, is ? "" : text);
            tied.forEach(c -> sums.add(c.reference()));
            boolean counts = words.isLabel(line.first(), "count") && tied.isEmpty();
            if (counts || (is && statesCount(line, since))) {
                count |= count(line, since, counts);
            } else if (tied.isEmpty()) {
                stated(line);
            }
            since = line.number();
        }
        others.add(
                new OtherRow(
                        is ? text : "",
                        starts ? text : "",
                        blank,
                        Map.of(),
                        List.copyOf(sums),
                        count,
                        false,
                        headings
                                ? "column names again"
                                : !sums.isEmpty()
                                        ? "total"
                                        : count ? "count" : "no row of the table"));
    }

    /** A record of another kind may stand there once and state what is known; else it is money. */
    private void tellOtherRecords(String text, List<Grid.Line> lines) {
        if (table.record().isEmpty()) {
            return;
        }
        boolean money =
                lines.stream()
                        .anyMatch(
                                l ->
                                        !amounts.of(LineAmounts.decimals(l)).isEmpty()
                                                && !isKnown(LineAmounts.decimals(l)));
        if (lines.size() > 1 || money) {
            findings.unsound(
                    "records '%s' (%,d, the first in row %d) have no date and amount in columns of their own, and may hold money: save the file without them"
                            .formatted(text, lines.size(), lines.get(0).number()));
        }
    }

    /** The column that no row of the table has blank. */
    private String date() {
        if (table.dated().isPresent()) {
            return table.dated().get().filled();
        }
        return columns.stream()
                .filter(c -> c.role() == Role.DATE)
                .findFirst()
                .map(Column::reference)
                .orElse("");
    }

    /** The columns whose cell in the row is the sum of the rows above; what is not is told. */
    private List<Column> tie(Grid.Line line, long since, String label) {
        List<Column> tied = new ArrayList<>();
        if (table.record().isPresent()) {
            return tied;
        }
        List<String> loose = new ArrayList<>();
        for (Column column : columns) {
            String cell = line.cell(column.index());
            boolean sums =
                    column.hasValues()
                            && column.role() != Role.BALANCE
                            && column.role() != Role.UNIT_PRICE
                            && column.role() != Role.PAYOUT
                            && !cell.isEmpty();
            Optional<Long> value = sums ? amounts.cell(line, column.index()) : Optional.empty();
            if (sums && value.isEmpty() && cell.matches(".*\\d[.,]\\d{2}\\b.*")) {
                findings.fault(
                        "row %d ('%s'): found %s in '%s', which is no amount as the rows above write them"
                                .formatted(
                                        line.number(),
                                        line.first(),
                                        Problem.quoted(cell),
                                        column.reference()));
            }
            if (value.isEmpty()) {
                continue;
            }
            long sum = sum(column, since, line.number());
            if (sum == value.get()) {
                tied.add(column);
            } else if (value.get() != 0) {
                loose.add(
                        "found %s in '%s'; the rows above come to %s; the difference is %s"
                                .formatted(
                                        new Amount(value.get()),
                                        column.reference(),
                                        new Amount(sum),
                                        new Amount(Math.subtractExact(value.get(), sum))));
            }
        }
        boolean total = words.isLabel(label, "total") || words.isLabel(label, "payout");
        if (!total) {
            astray(line);
        }
        if (!tied.isEmpty() && loose.isEmpty()) {
            findings.prove(
                    "row %d states the sum of %s: it ties"
                            .formatted(line.number(), MoneyPlanner.names(tied)));
        }
        boolean matchesElsewhere = total && tied.isEmpty() && loose.size() == 1 && isKnown(line);
        if (!loose.isEmpty() && !matchesElsewhere) {
            loose.forEach(
                    l ->
                            findings.fault(
                                    "row %d ('%s'): %s".formatted(line.number(), line.first(), l)));
            if (!total && tied.isEmpty()) {
                findings.unsound(
                        "row %d ('%s') holds money, but no date, and is no total: it would be lost"
                                .formatted(line.number(), line.first()));
            }
        }
        return tied;
    }

    /** Tells amounts where the rows of the table have none. */
    private void astray(Grid.Line line) {
        for (int i = 0; i < line.width(); i++) {
            boolean amounts = i < columns.size() && columns.get(i).hasValues();
            String cell = line.cell(i);
            boolean amount = LineAmounts.showsDecimals(cell) && !DateFinder.isLike(cell);
            Optional<Long> value =
                    amount && !amounts ? this.amounts.cell(line, i) : Optional.empty();
            if (value.filter(v -> v != 0 && money.known(v).isEmpty()).isPresent()) {
                findings.fault(
                        "row %d ('%s'): found %s in column %d, where the rows of the table have no amounts"
                                .formatted(
                                        line.number(), line.first(), Problem.quoted(cell), i + 1));
            }
        }
    }

    private long sum(Column column, long since, long before) {
        long sum = 0;
        for (int row = 0; row < table.body().size(); row++) {
            long number = table.body().get(row).number();
            if (number > since && number < before) {
                sum = Math.addExact(sum, column.values()[row]);
            }
        }
        return sum;
    }

    private long rowsBetween(long since, long before) {
        return table.body().stream().filter(l -> l.number() > since && l.number() < before).count();
    }

    private boolean statesCount(Grid.Line line, long since) {
        String rows = Long.toString(rowsBetween(since, line.number()));
        return line.cells().stream()
                .skip(1)
                .anyMatch(c -> c.replaceFirst("^0+(?=.)", "").equals(rows));
    }

    private boolean count(Grid.Line line, long since, boolean labelled) {
        long rows = rowsBetween(since, line.number());
        Matcher digits = Pattern.compile("\\d+").matcher(String.join(" ", line.cells()));
        while (digits.find()) {
            if (digits.group().replaceFirst("^0+(?=.)", "").equals(Long.toString(rows))) {
                findings.prove("row %d states %,d rows: there are".formatted(line.number(), rows));
                return true;
            }
        }
        if (labelled) {
            findings.fault(
                    "row %d ('%s'): there are %,d rows above"
                            .formatted(
                                    line.number(), String.join(" ", line.cells()).strip(), rows));
        }
        return false;
    }

    /** Holds a total or payout that a row of words states against the table. */
    private void stated(Grid.Line line) {
        String text = String.join(" ", line.cells());
        if (!words.isLabel(text, "payout") && !words.isLabel(text, "total")) {
            return;
        }
        List<Long> stated = amounts.of(line);
        if (stated.isEmpty()) {
            return;
        }
        for (long amount : stated) {
            Optional<String> known = money.known(amount);
            if (known.isPresent()) {
                findings.prove(
                        "%s: row %d states %s too"
                                .formatted(known.get(), line.number(), new Amount(amount)));
                return;
            }
        }
        findings.fault(
                "row %d ('%s') states %s; the rows come to %s"
                        .formatted(
                                line.number(),
                                text.strip(),
                                new Amount(stated.get(0)),
                                new Amount(money.all())));
    }

    private boolean isKnown(Grid.Line line) {
        return amounts.of(line).stream().anyMatch(a -> money.known(a).isPresent());
    }

    private void lost(Grid.Line line) {
        findings.unsound(
                "row %d ('%s') has a date and an amount, but not in the columns of the table: it would be lost"
                        .formatted(line.number(), line.first()));
    }

    private boolean isDatedMoney(Grid.Line line) {
        return line.cells().stream()
                        .anyMatch(c -> DateFinder.isLike(c) && !words.isLabel(c, "total"))
                && line.cells().stream().anyMatch(LineAmounts::showsDecimals);
    }

    private void second(Grid.Line header) {
        List<Grid.Line> below =
                table.others().stream().filter(l -> l.number() > header.number()).toList();
        boolean summary =
                below.stream().anyMatch(this::isKnown)
                        && below.stream().allMatch(l -> isKnown(l) || !isDatedMoney(l));
        others.add(
                new OtherRow(
                        "",
                        header.first(),
                        List.of(),
                        Map.of(),
                        List.of(),
                        false,
                        true,
                        "another table below"));
        if (summary) {
            findings.prove(
                    "the table below, from row %d, states what the rows come to"
                            .formatted(header.number()));
        } else {
            findings.unsound(
                    "a second table begins in row %d (%s), whose rows could not be read: they need a date and an amount each, under names of their own; save it as a file of its own"
                            .formatted(header.number(), String.join(", ", header.cells())));
        }
    }
}
