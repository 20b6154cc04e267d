package quarterfold.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import quarterfold.intake.Layout.Enter;
import quarterfold.intake.Layout.Rule;
import quarterfold.intake.Layout.Signs;
import quarterfold.ledger.Kind;

/**
 * A rule about rows of which a layout asks, or asked, what they are.
 *
 * @param shape the shape of rows that has it
 * @param index which of the layout's shapes that is
 */
record KindRule(Layout shape, int index, Rule rule) {

    /** The rules about just such rows in the text of a layout: of each shape the one that holds. */
    static List<KindRule> all(String name, String yaml, String about, Problems problems) {
        Layout layout = LayoutReader.read(name + ".yaml", yaml, problems);
        List<KindRule> found = new ArrayList<>();
        for (int i = 0; problems.none() && i < layout.all().size(); i++) {
            Layout shape = layout.all().get(i);
            int index = i;
            shape.rules().stream()
                    .filter(rule -> Asked.about(rule.when()).equals(about))
                    .findFirst()
                    .ifPresent(rule -> found.add(new KindRule(shape, index, rule)));
        }
        return found;
    }

    /** Which of its entries are asked about. */
    private List<Integer> asked() {
        return IntStream.range(0, rule.enter().size())
                .filter(
                        i ->
                                Asked.kind(rule)
                                        .filter(rule.enter().get(i).kind()::equals)
                                        .isPresent())
                .boxed()
                .toList();
    }

    /**
     * The text of the layout as it is now, where what this rule asked about is of the kind that was
     * decided and not asked any more; else as this rule has it. Nothing where the text cannot be
     * changed to say just that.
     */
    Optional<String> changed(String name, String yaml, Optional<Kind> decided) {
        String about = Asked.about(rule.when());
        return all(name, yaml, about, new Problems()).stream()
                .filter(now -> now.index == index)
                .filter(now -> now.rule.enter().size() == rule.enter().size())
                .findFirst()
                .flatMap(now -> now.changedTo(name, yaml, wanted(now, decided)));
    }

    private Rule wanted(KindRule now, Optional<Kind> decided) {
        List<Enter> enter = new ArrayList<>(now.rule.enter());
        Optional<Signs> signs = now.rule.own();
        for (int i : asked()) {
            Enter is = enter.get(i);
            Kind kind = decided.orElse(rule.enter().get(i).kind());
            enter.set(i, new Enter(kind, amounts(is, kind), is.set()));
            if (now.turns(is.kind(), kind)) {
                signs = Optional.of(Signs.OWNER);
            }
        }
        String ask = decided.isPresent() ? "" : rule.ask();
        Rule as = now.rule;
        return new Rule(as.when(), enter, as.setAside(), ask, as.line(), signs);
    }

    /** As printed, an amount's sign goes by the kind: where that turns, it is the owner's. */
    private boolean turns(Kind is, Kind wanted) {
        return rule.signs(shape) == Signs.DOCUMENT && wanted.direction() != is.direction();
    }

    /** The amounts of an entry: the one amount of a customs entry is its VAT. */
    private static Map<Field, String> amounts(Enter enter, Kind wanted) {
        boolean customs = wanted == Kind.IMPORT_VAT_PAID;
        Field from = customs ? Field.GROSS : Field.VAT;
        boolean alone = enter.amounts().keySet().equals(Set.of(from));
        return alone && customs != (enter.kind() == Kind.IMPORT_VAT_PAID)
                ? Map.of(
                        customs ? Field.VAT : Field.GROSS,
                        enter.amounts().values().iterator().next())
                : enter.amounts();
    }

    private Optional<String> changedTo(String name, String yaml, Rule wanted) {
        RuleText text = new RuleText(yaml, rule.line());
        for (int i = 0; i < rule.enter().size(); i++) {
            if (rule.enter().get(i).kind() != wanted.enter().get(i).kind()) {
                text.kind(i, wanted.enter().get(i).kind());
            }
            Map<Field, String> amounts = wanted.enter().get(i).amounts();
            if (!amounts.equals(rule.enter().get(i).amounts())) {
                text.amount(amounts.keySet().iterator().next());
            }
        }
        if (!rule.ask().equals(wanted.ask())) {
            text.askNoMore();
            if (!wanted.ask().isEmpty()) {
                text.ask(wanted.ask());
            }
        }
        wanted.own().filter(s -> !wanted.own().equals(rule.own())).ifPresent(text::signs);
        Problems problems = new Problems();
        Layout before = LayoutReader.read(name + ".yaml", yaml, problems);
        Layout now = LayoutReader.read(name + ".yaml", text.yaml(), problems);
        List<Rule> expected = rules(before).stream().map(r -> r.equals(rule) ? wanted : r).toList();
        return problems.none() && bare(rules(now)).equals(bare(expected))
                ? Optional.of(text.yaml())
                : Optional.empty();
    }

    private static List<Rule> rules(Layout layout) {
        return layout.all().stream().flatMap(shape -> shape.rules().stream()).toList();
    }

    /** Without where they stand in their file. */
    private static List<Rule> bare(List<Rule> rules) {
        return rules.stream()
                .map(r -> new Rule(r.when(), r.enter(), r.setAside(), r.ask(), 0, r.own()))
                .toList();
    }
}
