package quarterfold.intake;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import quarterfold.intake.Layout.Dates;
import quarterfold.intake.Layout.OtherRow;

/**
 * Makes the layout of one table, or of the rows of one shape, from what the studies of its parts
 * find. First {@link #begin}, then {@link #study}, then {@link #layout}: rows of several shapes
 * take each step together.
 */
final class LayoutMaker implements Making {
    private static final String MONEY = "Money";

    private final ShapePart part;
    private final TableFinder.Found full;
    private final boolean nativeDates;
    private final Vocabulary words;
    private final NumberText text;
    private final KindFinder kinds;
    private final Findings findings;
    private final List<String> found = new ArrayList<>();
    private Optional<Map<String, List<String>>> states = Optional.empty();
    private TotalRows totals = TotalRows.NONE;
    private TableFinder.Found table;
    private List<Column> columns = List.of();
    private Optional<NumberStudy> numbers = Optional.empty();
    private Optional<Dates> dates = Optional.empty();
    private Optional<Layout.Mark> mark = Optional.empty();
    private Optional<MoneyPlan> plan = Optional.empty();
    private Optional<RuleStudy> rules = Optional.empty();
    private Optional<Layout.Balance> balance = Optional.empty();
    private Optional<Column> payout = Optional.empty();

    LayoutMaker(
            ShapePart part,
            boolean nativeDates,
            Vocabulary words,
            NumberText text,
            KindFinder kinds,
            Findings findings) {
        this.part = part;
        this.full = part.table();
        this.table = full;
        this.nativeDates = nativeDates;
        this.words = words;
        this.text = text;
        this.kinds = kinds;
        this.findings = findings;
    }

    @Override
    public List<String> found() {
        return found;
    }

    @Override
    public Optional<Layout> make(String name, String file) {
        if (!begin() || !study(file, List.of())) {
            return Optional.empty();
        }
        WholeClaims whole = new WholeClaims(this, words, findings);
        List<OtherRow> round = new ArrayList<>(whole.claimed());
        round.addAll(round(table.round(table.preamble(), whole.left())));
        Layout layout = layout(name, round, currency());
        return Optional.of(AboveStudy.of(table.preamble(), layout, money(), words, findings));
    }

    @Override
    public Optional<OwnTotal> ownTotal() {
        return plan.flatMap(MoneyPlan::root).map(r -> new OwnTotal(r.reference(), r.sum()));
    }

    private List<OtherRow> round(TableFinder.Found of) {
        RoundStudy round = new RoundStudy(of, columns, numbers(), words, money(), findings);
        round.study();
        return round.others();
    }

    /** How rows round the table are known, and what they state: of these rows alone. */
    List<OtherRow> round(List<Grid.Line> lines) {
        return round(table.round(List.of(), lines));
    }

    /** Finds the columns; false where names stand over the wrong cells, as the findings say. */
    boolean begin() {
        List<Column> all = columns(full);
        if (slipped(all)) {
            return false;
        }
        totals = TotalRows.find(withNumbers(full, all), full.body(), words, findings);
        TableFinder.Found rows = full.of(totals.others(full.body()));
        List<Column> own = totals.isEmpty() ? all : columns(rows);
        states =
                new RepeatStudy(withNumbers(rows, own), rows.body(), kinds, words, findings)
                        .study();
        table = states.map(s -> without(rows, s, own)).orElse(rows);
        columns = states.isPresent() ? columns(table) : own;
        numbers = Optional.of(new NumberStudy(table, columns, words, text, findings));
        return true;
    }

    /**
     * Finds what the rows are and come to; false where something needed was not found, as the
     * findings say.
     *
     * @param beside the rows of other shapes in the file, which write numbers and dates alike
     */
    boolean study(String file, List<LayoutMaker> beside) {
        NumberStudy study = numbers.orElseThrow();
        List<String> days = new ArrayList<>();
        full.dated().ifPresent(d -> days.addAll(d.others()));
        for (LayoutMaker other : beside) {
            study.readAlso(other.numbers.orElseThrow());
            other.columns.stream()
                    .filter(c -> c.role() == Role.DATE)
                    .findFirst()
                    .ifPresent(c -> days.addAll(c.stated()));
        }
        dates = new DateStudy(columns, nativeDates, days, findings).study();
        study.study();
        if (full.dated().isPresent()) {
            UnmarkedTotal.tell(columns, table.body(), findings);
        }
        LayoutParts.askCodes(columns, findings);
        mark = mark(columns);
        plan =
                findings.canBeWritten()
                        ? new MoneyPlanner(columns, table.body(), findings).plan()
                        : Optional.empty();
        Set<String> leftOut = states.map(Map::keySet).orElse(Set.of());
        found.addAll(FoundText.of(table, columns, leftOut, plan));
        if (plan.isEmpty() || dates.isEmpty()) {
            return false;
        }
        RuleStudy kindsOfRows =
                new RuleStudy(
                        columns,
                        plan.get(),
                        moneyName(plan.get(), columns),
                        kinds,
                        Subject.of(full, columns, file, words),
                        part.titled(plan.get()),
                        findings);
        kindsOfRows.study();
        rules = Optional.of(kindsOfRows);
        balance = BalanceStudy.balance(columns, table.body(), kindsOfRows, findings);
        String sum = plan.get().root().map(Column::reference).orElse("");
        List<Column> others = columns.stream().filter(c -> !c.reference().equals(sum)).toList();
        payout = PayoutStudy.find(others, kindsOfRows, findings);
        return true;
    }

    /** What the rows come to. */
    TableMoney money() {
        return TableMoney.of(table.body(), columns, rules.orElseThrow());
    }

    List<Column> columns() {
        return columns;
    }

    TableFinder.Found table() {
        return table;
    }

    Findings findings() {
        return findings;
    }

    /** The currency stated outside a column of its own. */
    Optional<String> currency() {
        return numbers.orElseThrow().currency();
    }

    /** The currencies stated anywhere. */
    Set<String> currencies() {
        Set<String> codes = new LinkedHashSet<>();
        columns.stream()
                .filter(c -> c.role() == Role.CURRENCY)
                .forEach(c -> codes.addAll(c.stated()));
        currency().ifPresent(codes::add);
        return codes;
    }

    Layout.Numbers numbers() {
        return numbers.orElseThrow().numbers();
    }

    /** {@code round}: the rows round the table. */
    Layout layout(String name, List<OtherRow> round, Optional<String> currency) {
        NumberStudy study = numbers.orElseThrow();
        MoneyPlan of = plan.orElseThrow();
        String money = moneyName(of, columns);
        Layout.Signs signs = rules.orElseThrow().signs();
        List<OtherRow> others = new ArrayList<>(round);
        others.addAll(totals.rows());
        states.ifPresent(s -> others.add(state(s)));
        Layout made =
                new Layout(
                        name,
                        shape(study),
                        dates.orElseThrow(),
                        study.numbers(),
                        signs,
                        currency,
                        LayoutParts.fields(columns),
                        LayoutParts.constants(findings),
                        LayoutParts.workedOut(of, money),
                        LayoutParts.merged(rules.orElseThrow().rules()),
                        LayoutParts.tax(of),
                        LayoutParts.checks(of),
                        LayoutParts.amounts(of, money, columns),
                        payout.map(Column::reference),
                        LayoutParts.outgoing(of),
                        mark,
                        others,
                        balance,
                        LayoutParts.repeats(signs, columns),
                        Set.of(),
                        Optional.empty(),
                        part.when(),
                        List.of(),
                        full.dated().map(DateAbove::line).stream().toList(),
                        true,
                        Expected.NOTHING);
        return made.with(
                LayoutParts.expected(columns, table.body(), made.named(), study.numbers()));
    }

    private List<Column> columns(TableFinder.Found table) {
        List<Column> columns = part.columns(table);
        part.findRoles(columns, new RoleFinder(words, text));
        for (Column column : columns) {
            findings.answer("column/" + column.reference(), Role.words()).ifPresent(column::settle);
        }
        return columns;
    }

    /** The columns with values, for a study that comes before numbers are known for sure. */
    private List<Column> withNumbers(TableFinder.Found table, List<Column> columns) {
        new NumberStudy(table, columns, words, text, new Findings(Map.of())).study();
        return columns;
    }

    private static TableFinder.Found without(
            TableFinder.Found table, Map<String, List<String>> states, List<Column> columns) {
        List<Grid.Line> body =
                table.body().stream()
                        .filter(
                                line ->
                                        columns.stream()
                                                .noneMatch(
                                                        c ->
                                                                states.getOrDefault(
                                                                                c.reference(),
                                                                                List.of())
                                                                        .contains(
                                                                                line.cell(
                                                                                        c
                                                                                                .index()))))
                        .toList();
        return table.of(body);
    }

    private static OtherRow state(Map<String, List<String>> states) {
        return new OtherRow(
                "", "", List.of(), states, List.of(), false, false, "a state that does not count");
    }

    /** Whether names stand over the cells of other columns. */
    private boolean slipped(List<Column> columns) {
        List<Column> wrong = columns.stream().filter(c -> c.meant().isPresent()).toList();
        boolean needed =
                wrong.stream()
                        .anyMatch(
                                c -> {
                                    Role role = c.meant().orElse(Role.NONE);
                                    return role.isNumber() || role == Role.DATE;
                                });
        if (!needed) {
            return false;
        }
        Slips slips = new Slips(full.body(), text);
        wrong.forEach(
                column ->
                        findings.unsound(
                                slips.told(column, findings.id("column/" + column.reference()))));
        return true;
    }

    private Optional<Layout.Mark> mark(List<Column> columns) {
        Optional<Column> mark = columns.stream().filter(c -> c.role() == Role.MARK).findFirst();
        List<Column> amounts =
                columns.stream()
                        .filter(c -> c.role() == Role.AMOUNT && c.hasValues())
                        .filter(c -> Arrays.stream(c.values()).allMatch(v -> v >= 0))
                        .toList();
        if (mark.isEmpty() || amounts.isEmpty()) {
            return Optional.empty();
        }
        Set<String> texts = new LinkedHashSet<>(mark.get().distinct().keySet());
        List<String> known = texts.stream().filter(t -> words.isLabel(t, "negative")).toList();
        Optional<String> negative =
                texts.size() <= 2 && known.size() == 1
                        ? Optional.of(known.get(0))
                        : findings.ask(
                                new Question(
                                        "negative",
                                        "which text in '%s' means that money goes out?"
                                                .formatted(mark.get().reference()),
                                        List.copyOf(texts),
                                        true));
        if (negative.isEmpty()) {
            return Optional.empty();
        }
        for (Column amount : amounts) {
            for (int row = 0; row < amount.values().length; row++) {
                if (mark.get().texts().get(row).equals(negative.get())) {
                    amount.values()[row] = -amount.values()[row];
                }
            }
        }
        return Optional.of(new Layout.Mark(mark.get().reference(), Set.of(negative.get())));
    }

    private static String moneyName(MoneyPlan plan, List<Column> columns) {
        boolean worked =
                plan.shape() == MoneyPlan.Shape.PAIR || plan.shape() == MoneyPlan.Shape.PRODUCT;
        if (!worked) {
            return plan.root().orElse(plan.parts().get(0).column()).reference();
        }
        String name = MONEY;
        Set<String> taken = columns.stream().map(Column::reference).collect(Collectors.toSet());
        while (taken.contains(name)) {
            name += " worked out";
        }
        return name;
    }

    private Layout.Shape shape(NumberStudy study) {
        Layout.Shape shape = table.grid().shape();
        return new Layout.Shape(
                shape.delimiter(),
                shape.quote(),
                nativeDates ? shape.encoding() : EncodingFinder.of(shape, table.grid().lines()),
                shape.twice(),
                table.header().map(h -> (int) h.number()).orElse(0),
                table.header().isPresent() ? 0 : columns.size(),
                study.blanks());
    }
}
