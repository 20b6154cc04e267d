package quarterfold.intake;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import quarterfold.intake.Layout.Dates;
import quarterfold.intake.Layout.OtherRow;
import quarterfold.intake.Layout.WorkedOut;

/** Makes the layout of one table from what the studies of its parts find. */
final class LayoutMaker {
    private static final String MONEY = "Money";

    private final TableFinder.Found full;
    private final boolean nativeDates;
    private final Vocabulary words;
    private final NumberText text;
    private final KindFinder kinds;
    private final Findings findings;
    private final List<String> found = new ArrayList<>();

    LayoutMaker(
            TableFinder.Found table,
            boolean nativeDates,
            Vocabulary words,
            NumberText text,
            KindFinder kinds,
            Findings findings) {
        this.full = table;
        this.nativeDates = nativeDates;
        this.words = words;
        this.text = text;
        this.kinds = kinds;
        this.findings = findings;
    }

    /** What was found, in words. */
    List<String> found() {
        return found;
    }

    /** Nothing where something needed was not found; the findings then say what. */
    Optional<Layout> make(String name, String file) {
        List<Column> all = columns(full);
        if (slipped(all)) {
            return Optional.empty();
        }
        Optional<Map<String, List<String>>> states =
                new RepeatStudy(withNumbers(full, all), full.body(), kinds, words, findings)
                        .study();
        TableFinder.Found table = states.map(s -> without(s, all)).orElse(full);
        List<Column> columns = states.isPresent() ? columns(table) : all;
        NumberStudy numbers = new NumberStudy(table, columns, words, text, findings);
        Optional<Dates> dates = new DateStudy(columns, nativeDates, findings).study();
        numbers.study();
        Optional<Layout.Mark> mark = mark(columns);
        Optional<MoneyPlan> plan =
                findings.canBeWritten()
                        ? new MoneyPlanner(columns, table.body(), findings).plan()
                        : Optional.empty();
        describe(columns, table);
        if (plan.isEmpty() || dates.isEmpty()) {
            return Optional.empty();
        }
        String money = moneyName(plan.get(), columns);
        RuleStudy rules =
                new RuleStudy(
                        columns,
                        plan.get(),
                        money,
                        kinds,
                        Subject.of(full, columns, file, words),
                        findings);
        rules.study();
        RoundStudy round = new RoundStudy(table, columns, numbers, words, rules, findings);
        round.study();
        Optional<Layout.Balance> balance =
                BalanceStudy.balance(columns, table.body(), rules, findings);
        List<OtherRow> others = new ArrayList<>(round.others());
        states.ifPresent(s -> others.add(state(s)));
        Optional<Layout.Tax> tax = tax(plan.get());
        return Optional.of(
                new Layout(
                        name,
                        shape(table, columns, numbers),
                        dates.get(),
                        numbers.numbers(),
                        rules.signs(),
                        numbers.currency(),
                        fields(columns),
                        Map.of(),
                        workedOut(plan.get(), money),
                        merged(rules.rules()),
                        tax,
                        checks(plan.get()),
                        amounts(plan.get(), money, columns),
                        Optional.empty(),
                        outgoing(plan.get()),
                        mark,
                        others,
                        balance,
                        RepeatsReader.usual(rules.signs()),
                        Set.of(),
                        Optional.empty(),
                        Map.of(),
                        List.of()));
    }

    private List<Column> columns(TableFinder.Found table) {
        List<Column> columns = RoleFinder.columns(table);
        new RoleFinder(words, text).find(columns);
        for (Column column : columns) {
            findings.answer("column/" + column.reference())
                    .ifPresent(a -> column.setRole(Role.of(a)));
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
        return new TableFinder.Found(
                table.grid(),
                table.header(),
                table.preamble(),
                body,
                table.others(),
                table.record(),
                table.second(),
                table.score());
    }

    private TableFinder.Found without(Map<String, List<String>> states, List<Column> columns) {
        return without(full, states, columns);
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
        for (Column column : wrong) {
            findings.unsound(
                    "'%s' stands above cells such as '%s'; expected %s; have the columns slipped?"
                            .formatted(
                                    column.reference(),
                                    column.stated().stream().findFirst().orElse(""),
                                    column.meant().orElse(Role.NONE) == Role.DATE
                                            ? "dates"
                                            : column.meant().orElse(Role.NONE).isNumber()
                                                    ? "amounts"
                                                    : "what its name says"));
        }
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

    private void describe(List<Column> columns, TableFinder.Found table) {
        found.add(
                table.header()
                        .map(
                                h ->
                                        "Column names in row %d; %,d rows below."
                                                .formatted(h.number(), table.body().size()))
                        .orElse("No column names; %,d rows.".formatted(table.body().size())));
        for (Column column : columns) {
            String role =
                    column.role() == Role.NONE
                                    || column.role() == Role.IGNORED
                                    || !isAccepted(column)
                            ? "kept as a note"
                            : column.role().name().toLowerCase(Locale.ROOT).replace('_', ' ');
            found.add(
                    "Column %s: %s (such as %s)"
                            .formatted(
                                    column.reference(),
                                    role,
                                    Problem.quoted(
                                            column.stated().stream().findFirst().orElse(""))));
        }
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

    private Layout.Shape shape(TableFinder.Found table, List<Column> columns, NumberStudy numbers) {
        Layout.Shape shape = table.grid().shape();
        return new Layout.Shape(
                shape.delimiter(),
                shape.quote(),
                shape.encoding(),
                shape.twice(),
                table.header().map(h -> (int) h.number()).orElse(0),
                table.header().isPresent() ? 0 : columns.size(),
                numbers.blanks());
    }

    /** Whether every cell is of the field's vocabulary, where the column fills one. */
    private static boolean isAccepted(Column column) {
        return column.role()
                .field()
                .filter(f -> !column.stated().stream().allMatch(f::accepts))
                .isEmpty();
    }

    private static Map<Field, String> fields(List<Column> columns) {
        Map<Field, String> fields = new EnumMap<>(Field.class);
        for (Column column : columns) {
            column.role()
                    .field()
                    .filter(f -> isAccepted(column))
                    .ifPresent(f -> fields.putIfAbsent(f, column.reference()));
        }
        return fields;
    }

    private static Map<String, WorkedOut> workedOut(MoneyPlan plan, String money) {
        List<String> parts = plan.parts().stream().map(p -> p.column().reference()).toList();
        return switch (plan.shape()) {
            case PAIR -> Map.of(money, new WorkedOut(false, parts));
            case PRODUCT -> Map.of(money, new WorkedOut(true, parts));
            default -> Map.of();
        };
    }

    /** Rules that enter the same, told apart by one text of one column, as one. */
    private static List<Layout.Rule> merged(List<Layout.Rule> rules) {
        List<Layout.Rule> merged = new ArrayList<>();
        Map<List<Object>, Integer> at = new LinkedHashMap<>();
        for (Layout.Rule rule : rules) {
            List<String> columns = List.copyOf(rule.when().keySet());
            String last = columns.isEmpty() ? "" : columns.get(columns.size() - 1);
            Map<String, List<String>> others = new LinkedHashMap<>(rule.when());
            others.remove(last);
            List<Object> key = List.of(others, last, rule.enter(), rule.setAside(), rule.ask());
            Integer earlier = rule.ask().isEmpty() && !last.isEmpty() ? at.get(key) : null;
            if (earlier == null) {
                at.put(key, merged.size());
                merged.add(rule);
                continue;
            }
            Layout.Rule with = merged.get(earlier);
            Map<String, List<String>> when = new LinkedHashMap<>(with.when());
            List<String> texts = new ArrayList<>(when.getOrDefault(last, List.of()));
            texts.addAll(rule.when().getOrDefault(last, List.of()));
            when.put(last, texts);
            merged.set(
                    earlier, new Layout.Rule(when, with.enter(), with.setAside(), with.ask(), 0));
        }
        return merged;
    }

    private static Optional<Layout.Tax> tax(MoneyPlan plan) {
        if (plan.shape() != MoneyPlan.Shape.WIDE) {
            return Optional.empty();
        }
        return plan.part(Role.TAX)
                .map(
                        t ->
                                new Layout.Tax(
                                        t.column().reference(),
                                        plan.part(Role.WITHHELD).map(w -> w.column().reference())));
    }

    private static List<Layout.Check> checks(MoneyPlan plan) {
        boolean sums =
                plan.shape() == MoneyPlan.Shape.WIDE || plan.shape() == MoneyPlan.Shape.DOCUMENT;
        return sums
                ? List.of(
                        new Layout.Check(
                                plan.parts().stream().map(p -> p.column().reference()).toList(),
                                plan.root().orElseThrow().reference()))
                : List.of();
    }

    /** Columns of money that is nought in this file count too: another file may have some. */
    private static List<String> amounts(MoneyPlan plan, String money, List<Column> columns) {
        List<String> amounts = new ArrayList<>();
        if (plan.shape() == MoneyPlan.Shape.WIDE) {
            plan.parts().forEach(p -> amounts.add(p.column().reference()));
        } else {
            amounts.add(money);
        }
        for (Column column : columns) {
            boolean unused = !column.hasValues() || column.isZero();
            boolean within = plan.shape() == MoneyPlan.Shape.DOCUMENT && column.role() == Role.TAX;
            if (column.role().isPart() && unused && !within) {
                amounts.add(column.reference());
            }
        }
        return amounts.stream().distinct().toList();
    }

    private static Set<String> outgoing(MoneyPlan plan) {
        boolean signed =
                plan.shape() == MoneyPlan.Shape.WIDE || plan.shape() == MoneyPlan.Shape.PAIR;
        return signed
                ? plan.parts().stream()
                        .filter(p -> p.sign() < 0)
                        .map(p -> p.column().reference())
                        .collect(Collectors.toSet())
                : Set.of();
    }
}
