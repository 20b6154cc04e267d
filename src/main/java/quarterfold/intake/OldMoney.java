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
import quarterfold.intake.Layout.Check;
import quarterfold.intake.Layout.Enter;
import quarterfold.intake.Layout.OtherRow;
import quarterfold.intake.Layout.Rule;
import quarterfold.ledger.Kind;

/**
 * The money of columns that one of two reports of a layout has and the other has not: whether both
 * can be read alike, and the layout that reads both.
 */
final class OldMoney {
    private final Layout old;
    private final Layout made;
    private final Header file;
    private final Set<String> gone;
    private final Set<String> fresh;
    private final boolean ties;

    /**
     * What the two reports have to themselves.
     *
     * @param gone columns of the layout before that the report lacks
     * @param fresh columns of the layout learned that the one before does not know
     * @param ties whether the report reads with what the layout before says of the columns it lacks
     */
    OldMoney(
            Layout old,
            Layout made,
            Header file,
            Set<String> gone,
            Set<String> fresh,
            boolean ties) {
        this.old = old;
        this.made = made;
        this.file = file;
        this.gone = gone;
        this.fresh = fresh;
        this.ties = ties;
    }

    /**
     * Why files with the column and without it cannot be read alike; nothing where they can.
     *
     * @param before whether it is of the layout before
     */
    Optional<String> why(String column, boolean before) {
        Layout of = before ? old : made;
        Layout without = with(of, of.fields(), before ? gone : fresh);
        boolean sums = of.workedOut().values().stream().anyMatch(w -> w.columns().contains(column));
        boolean tax =
                of.tax()
                        .filter(
                                t ->
                                        t.column().equals(column)
                                                || t.withheld().filter(column::equals).isPresent())
                        .isPresent();
        String why = "";
        if (column.equals(of.fields().get(Field.DATE))) {
            why = "it is the date";
        } else if (of.rules().stream().anyMatch(r -> r.when().containsKey(column))) {
            why = "rows are told apart by it";
        } else if (of.mark().filter(m -> m.column().equals(column)).isPresent()) {
            why = "it says which way money goes";
        } else if (tax) {
            why = "tax is read from it";
        } else if (sums) {
            why = "what a row comes to is worked out with it";
        } else if (isMoney(column, of) && !isBeside()) {
            why = "it is what a row comes to";
        } else if (LayoutColumns.fixed(without).contains(column)) {
            why = "other amounts or rows are read with it";
        } else if (isMoney(column, of) && old.signs() != made.signs()) {
            why = "amounts have other signs than before";
        } else if (isMoney(column, of) && mayBeRenamed(column, before)) {
            why =
                    "money of its kind came or went with another, which may be the same under another name";
        } else if (before && of.needed().contains(column) && !ties) {
            why = "rows of this report do not tie with what the layout before says of it";
        } else if (before && isMoney(column, of) && rules(money(gone)).isEmpty()) {
            why = "rows of one kind were entered in several ways with it";
        }
        return Optional.of(why).filter(w -> !w.isEmpty());
    }

    private static boolean isMoney(String column, Layout of) {
        return of.amounts().contains(column)
                || of.rules().stream()
                        .flatMap(r -> r.enter().stream())
                        .anyMatch(e -> e.amounts().containsValue(column));
    }

    private Set<String> money(Set<String> columns) {
        Set<String> money = new LinkedHashSet<>(columns);
        money.removeIf(c -> !isMoney(c, old));
        return money;
    }

    /** Whether an amount of both reports stays. */
    private boolean isBeside() {
        Header before = new Header(old.amounts());
        return made.amounts().stream().anyMatch(a -> !fresh.contains(a) && before.has(a));
    }

    /** Whether money of a kind went with one and came with another, and no sum holds both. */
    private boolean mayBeRenamed(String column, boolean before) {
        Set<Kind> kinds = kinds(column, before ? old : made);
        Layout other = before ? made : old;
        boolean both =
                (before ? fresh : gone)
                        .stream().anyMatch(c -> kinds(c, other).stream().anyMatch(kinds::contains));
        return both
                && made.checks().stream()
                        .noneMatch(
                                now ->
                                        old.checks().stream()
                                                .anyMatch(earlier -> holdAll(earlier, now)));
    }

    /** What its money is entered as. */
    private static Set<Kind> kinds(String column, Layout of) {
        return of.rules().stream()
                .flatMap(r -> r.enter().stream())
                .filter(e -> e.amounts().containsValue(column))
                .map(Enter::kind)
                .collect(Collectors.toSet());
    }

    private boolean holdAll(Check before, Check now) {
        return file.has(before.equals())
                && file.column(before.equals()) == file.column(now.equals())
                && gone.stream().allMatch(c -> !isMoney(c, old) || before.sum().contains(c))
                && fresh.stream().allMatch(c -> !isMoney(c, made) || now.sum().contains(c));
    }

    /**
     * The layout learned with what the one before says of columns that stay.
     *
     * @param stay columns that the report lacks
     */
    Layout both(
            Set<String> stay, Map<Field, String> fields, Expected expected, Set<String> optional) {
        Set<String> money = money(stay);
        List<String> amounts = new ArrayList<>(made.amounts());
        old.amounts().stream().filter(money::contains).forEach(amounts::add);
        List<OtherRow> others = new ArrayList<>(made.otherRows());
        others.addAll(OldOthers.staying(old, stay, file));
        Set<String> outgoing = new LinkedHashSet<>(made.outgoing());
        old.outgoing().stream().filter(money::contains).forEach(outgoing::add);
        return new Layout(
                made.name(),
                made.shape(),
                made.dates(),
                made.numbers(),
                made.signs(),
                made.currency(),
                fields,
                made.constants(),
                made.workedOut(),
                rules(money).orElse(made.rules()),
                made.tax(),
                checks(stay),
                amounts,
                made.payoutColumn().or(() -> old.payoutColumn().filter(stay::contains)),
                Set.copyOf(outgoing),
                made.mark(),
                others,
                made.balance().or(() -> old.balance().filter(b -> stay.contains(b.column()))),
                made.repeats(),
                Set.copyOf(optional),
                made.print(),
                made.when(),
                made.shapes(),
                made.above(),
                made.tablesNeeded(),
                expected);
    }

    /** The same with other fields, and other columns that may be missing. */
    static Layout with(Layout of, Map<Field, String> fields, Set<String> optional) {
        return with(of, fields, optional, of.otherRows());
    }

    /** The same with more kinds of other rows. */
    static Layout with(Layout of, List<OtherRow> others) {
        return with(of, of.fields(), of.optional(), others);
    }

    private static Layout with(
            Layout of, Map<Field, String> fields, Set<String> optional, List<OtherRow> others) {
        return new Layout(
                of.name(),
                of.shape(),
                of.dates(),
                of.numbers(),
                of.signs(),
                of.currency(),
                fields,
                of.constants(),
                of.workedOut(),
                of.rules(),
                of.tax(),
                of.checks(),
                of.amounts(),
                of.payoutColumn(),
                of.outgoing(),
                of.mark(),
                others,
                of.balance(),
                of.repeats(),
                Set.copyOf(optional),
                of.print(),
                of.when(),
                of.shapes(),
                of.above(),
                of.tablesNeeded(),
                of.expected());
    }

    /** As the report names a column that it has. */
    private String now(String column) {
        boolean worked = old.workedOut().containsKey(column) || !file.has(column);
        return worked ? column : file.reference(file.column(column));
    }

    private List<Check> checks(Set<String> stay) {
        List<Check> checks = new ArrayList<>(made.checks());
        for (Check before : old.checks()) {
            List<String> added = before.sum().stream().filter(stay::contains).toList();
            boolean there =
                    before.sum().stream().allMatch(c -> stay.contains(c) || file.has(c))
                            && (stay.contains(before.equals()) || file.has(before.equals()));
            if (!there || (added.isEmpty() && !stay.contains(before.equals()))) {
                continue;
            }
            Set<String> sum = new LinkedHashSet<>();
            before.sum().forEach(c -> sum.add(now(c)));
            String equals = now(before.equals());
            made.checks().stream()
                    .filter(c -> c.equals().equals(equals))
                    .forEach(c -> sum.addAll(c.sum()));
            checks.removeIf(c -> c.equals().equals(equals));
            checks.add(new Check(List.copyOf(sum), equals));
        }
        return checks;
    }

    /** The rules learned, with what the rules before enter of columns that stay. */
    private Optional<List<Rule>> rules(Set<String> money) {
        List<Rule> rules = new ArrayList<>();
        for (Rule rule : made.rules()) {
            Optional<Rule> with =
                    money.isEmpty() || !rule.ask().isEmpty() || !rule.setAside().isEmpty()
                            ? Optional.of(rule)
                            : with(rule, money);
            if (with.isEmpty()) {
                return Optional.empty();
            }
            rules.add(with.get());
        }
        return Optional.of(rules);
    }

    private Optional<Rule> with(Rule rule, Set<String> money) {
        Set<List<Enter>> ways = new LinkedHashSet<>();
        for (Map<String, String> row : OldRules.rows(rule)) {
            Optional<Rule> before =
                    old.rules().stream().filter(r -> OldRules.fits(r, row)).findFirst();
            List<Enter> enters =
                    before.map(Rule::enter).orElse(List.of()).stream()
                            .filter(e -> e.amounts().values().stream().anyMatch(money::contains))
                            .toList();
            boolean turned = before.filter(b -> !b.own().equals(rule.own())).isPresent();
            if (!enters.isEmpty() && turned) {
                return Optional.empty();
            }
            if (!enters.isEmpty()) {
                ways.add(enters);
            }
        }
        if (ways.size() > 1) {
            return Optional.empty();
        }
        List<Enter> entered = new ArrayList<>(rule.enter());
        for (Enter enter : ways.stream().findFirst().orElse(List.of())) {
            Map<Field, String> shared = new EnumMap<>(Field.class);
            Map<Field, String> named = new LinkedHashMap<>();
            enter.amounts().forEach((f, c) -> named.put(f, now(c)));
            named.forEach((f, c) -> shared.put(f, c));
            shared.values().removeIf(money::contains);
            int at = shared.isEmpty() ? entered.size() : at(entered, enter, shared);
            if (at < 0) {
                return Optional.empty();
            }
            Enter whole = new Enter(enter.kind(), Map.copyOf(named), enter.set());
            if (at < entered.size()) {
                entered.set(at, whole);
            } else {
                entered.add(whole);
            }
        }
        return Optional.of(
                new Rule(
                        rule.when(),
                        entered,
                        rule.setAside(),
                        rule.ask(),
                        rule.line(),
                        rule.own()));
    }

    private static int at(List<Enter> entered, Enter enter, Map<Field, String> shared) {
        for (int i = 0; i < entered.size(); i++) {
            Enter now = entered.get(i);
            if (now.kind() == enter.kind() && now.amounts().equals(shared)) {
                return i;
            }
        }
        return -1;
    }
}
