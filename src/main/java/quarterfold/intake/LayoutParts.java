package quarterfold.intake;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import quarterfold.intake.Layout.WorkedOut;

/** The parts of a layout that follow from its columns and from the plan of its money. */
final class LayoutParts {
    private LayoutParts() {}

    /** Whether every cell is of the field's vocabulary, where the column fills one. */
    static boolean isAccepted(Column column) {
        return column.role()
                .field()
                .filter(f -> !column.stated().stream().allMatch(f::accepts))
                .isEmpty();
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
            default -> Map.of();
        };
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

    static Optional<Layout.Tax> tax(MoneyPlan plan) {
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

    static List<Layout.Check> checks(MoneyPlan plan) {
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
