package quarterfold.intake;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import quarterfold.intake.Layout.WorkedOut;

/** The parts of a layout that follow from its columns and from the plan of its money. */
final class LayoutParts {
    /** A column of more texts than these says more than a state. */
    private static final int STATES = 12;

    private LayoutParts() {}

    /** Whether every cell is of the field's vocabulary, where the column fills one. */
    static boolean isAccepted(Column column) {
        return column.role()
                .field()
                .filter(f -> !column.stated().stream().allMatch(t -> InCodes.accepts(f, t)))
                .isEmpty();
    }

    /** What a column of countries or of rates says that is neither is asked, not left out. */
    static void askCodes(List<Column> columns, Findings findings) {
        for (Column column : columns) {
            Role role = column.role();
            boolean coded = role == Role.FROM || role == Role.TO || role == Role.RATE;
            Field field = role.field().orElse(Field.DESCRIPTION);
            List<String> not =
                    column.stated().stream()
                            .filter(t -> coded && !InCodes.accepts(field, t))
                            .distinct()
                            .toList();
            if (!not.isEmpty()) {
                findings.ask(
                        new Question(
                                "column/" + column.reference(),
                                "'%s' says %s; expected %s; correct it in the file, or is the column of no account?"
                                        .formatted(
                                                column.reference(),
                                                not.stream()
                                                        .limit(3)
                                                        .map(Problem::quoted)
                                                        .collect(Collectors.joining(", ")),
                                                field.expected()),
                                List.of("ignored"),
                                true));
            }
        }
    }

    static Map<Field, String> fields(List<Column> columns) {
        Map<Field, String> fields = new EnumMap<>(Field.class);
        for (Column column : columns) {
            column.role()
                    .field()
                    .filter(f -> isAccepted(column))
                    .ifPresent(f -> fields.putIfAbsent(f, column.reference()));
        }
        return fields;
    }

    /** The channel that the report is of, where a person names it. */
    static Map<Field, String> constants(Findings findings) {
        return findings.answer("channel")
                .map(channel -> Map.of(Field.CHANNEL, channel))
                .orElse(Map.of());
    }

    static Map<String, WorkedOut> workedOut(MoneyPlan plan, String money) {
        List<String> parts = plan.parts().stream().map(p -> p.column().reference()).toList();
        return switch (plan.shape()) {
            case PAIR -> Map.of(money, new WorkedOut(false, parts));
            case PRODUCT -> Map.of(money, new WorkedOut(true, parts));
            default -> workedOut(plan);
        };
    }

    /** Units times price, and prices with their own tax. */
    private static Map<String, WorkedOut> workedOut(MoneyPlan plan) {
        Map<String, WorkedOut> worked = new LinkedHashMap<>();
        for (MoneyPlan.Part part : plan.parts()) {
            Column column = part.column();
            if (!column.factors().isEmpty()) {
                List<String> factors = column.factors().stream().map(Column::reference).toList();
                worked.put(column.reference(), new WorkedOut(true, factors));
            }
            Optional.ofNullable(plan.taxes().get(column))
                    .ifPresent(
                            tax ->
                                    worked.put(
                                            MoneyPlan.gross(column, tax),
                                            new WorkedOut(
                                                    false,
                                                    List.of(column.reference(), tax.reference()))));
        }
        return worked;
    }

    /** Rules that enter the same, told apart by one text of one column, as one. */
    static List<Layout.Rule> merged(List<Layout.Rule> rules) {
        List<Layout.Rule> merged = new ArrayList<>();
        Map<List<Object>, Integer> at = new LinkedHashMap<>();
        for (Layout.Rule rule : rules) {
            List<String> columns = List.copyOf(rule.when().keySet());
            String last = columns.isEmpty() ? "" : columns.get(columns.size() - 1);
            Map<String, List<String>> others = new LinkedHashMap<>(rule.when());
            others.remove(last);
            List<Object> key =
                    List.of(others, last, rule.enter(), rule.setAside(), rule.ask(), rule.own());
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
                    earlier,
                    new Layout.Rule(
                            when, with.enter(), with.setAside(), with.ask(), 0, with.own()));
        }
        return merged;
    }

    static Optional<Layout.Tax> tax(MoneyPlan plan) {
        if (plan.shape() != MoneyPlan.Shape.WIDE || !plan.taxes().isEmpty()) {
            return Optional.empty();
        }
        return plan.part(Role.TAX)
                .map(
                        t ->
                                new Layout.Tax(
                                        t.column().reference(),
                                        plan.part(Role.WITHHELD).map(w -> w.column().reference())));
    }

    static List<Layout.Check> checks(MoneyPlan plan) {
        boolean sums =
                plan.shape() == MoneyPlan.Shape.WIDE || plan.shape() == MoneyPlan.Shape.DOCUMENT;
        return sums && plan.root().isPresent()
                ? List.of(
                        new Layout.Check(
                                plan.parts().stream().map(p -> p.column().reference()).toList(),
                                plan.root().orElseThrow().reference()))
                : List.of();
    }

    /** Columns of money that is nought in this file count too: another file may have some. */
    static List<String> amounts(MoneyPlan plan, String money, List<Column> columns) {
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

    /**
     * What a later report must not say in silence: amounts in columns that have none here, and
     * states of a sale that none has here.
     *
     * @param read the columns the layout reads
     */
    static Expected expected(
            List<Column> columns, List<Grid.Line> rows, Set<String> read, Layout.Numbers numbers) {
        Map<String, List<String>> texts = new LinkedHashMap<>();
        for (Column column : columns) {
            List<String> stated = List.copyOf(column.distinct().keySet());
            if (column.role() == Role.STATUS
                    && !read.contains(column.reference())
                    && stated.size() <= STATES
                    && !stated.equals(List.of(""))) {
                texts.put(column.reference(), stated);
            }
        }
        return new Expected(Optional.of(UnreadMoney.unread(columns, rows, read, numbers)), texts);
    }

    /**
     * The same, with the signs and the code of its currency before or behind amounts: a later
     * report may show them. No column may say another currency.
     *
     * @param usual the currency of a layout that says none
     * @param signs of currencies, and the code each stands for
     */
    static Layout withUnits(Layout layout, String usual, Map<String, String> signs) {
        Set<String> codes = new LinkedHashSet<>();
        layout.all().forEach(shape -> codes.add(shape.currency().orElse(usual)));
        boolean said =
                layout.all().stream().anyMatch(shape -> shape.fields().containsKey(Field.CURRENCY));
        Layout.Numbers as = layout.numbers();
        boolean others =
                as.units().stream().anyMatch(u -> !codes.contains(signs.getOrDefault(u, u)));
        if (said || others || codes.size() > 1) {
            return layout;
        }
        Set<String> units = new LinkedHashSet<>(as.units());
        signs.forEach(
                (sign, code) -> {
                    if (codes.contains(code)) {
                        units.add(sign);
                    }
                });
        units.addAll(codes);
        return layout.with(
                new Layout.Numbers(
                        as.decimal(),
                        as.thousands(),
                        as.trailingMinus(),
                        as.brackets(),
                        as.plus(),
                        as.letters(),
                        as.minor(),
                        List.copyOf(units)));
    }

    /** How rows that an earlier report has meet: without columns that number each one's rows. */
    static RepeatRule repeats(Layout.Signs signs, List<Column> columns) {
        RepeatRule usual = RepeatsReader.usual(signs);
        Set<String> numbering =
                columns.stream()
                        .filter(c -> c.role() == Role.IGNORED && isCount(c.texts()))
                        .map(Column::reference)
                        .collect(Collectors.toSet());
        return new RepeatRule(usual.meeting(), numbering, usual.looks());
    }

    private static boolean isCount(List<String> texts) {
        for (int row = 0; row < texts.size(); row++) {
            if (!texts.get(row).equals(Integer.toString(row + 1))) {
                return false;
            }
        }
        return texts.size() > 1;
    }

    static Set<String> outgoing(MoneyPlan plan) {
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
