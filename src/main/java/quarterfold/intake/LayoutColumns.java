package quarterfold.intake;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The columns that a layout cannot do without. */
final class LayoutColumns {
    private LayoutColumns() {}

    /**
     * Those no file may be without: without them rows would be read as something else, and not as
     * less. Of the amounts of a row one must stay.
     */
    static Set<String> fixed(Layout layout) {
        Set<String> fixed = new LinkedHashSet<>(layout.when().keySet());
        Optional.ofNullable(layout.fields().get(Field.DATE)).ifPresent(fixed::add);
        for (Layout.Rule rule : layout.rules()) {
            fixed.addAll(rule.when().keySet());
            rule.enter().forEach(enter -> fixed.addAll(fixed(enter.amounts(), layout)));
        }
        layout.mark().ifPresent(m -> fixed.add(m.column()));
        layout.tax()
                .ifPresent(
                        t -> {
                            fixed.add(t.column());
                            t.withheld().ifPresent(fixed::add);
                        });
        layout.workedOut().values().forEach(worked -> fixed.addAll(worked.columns()));
        for (Layout.OtherRow other : layout.otherRows()) {
            fixed.addAll(other.blank());
            fixed.addAll(other.states().keySet());
            other.when().forEach((column, texts) -> fixed.addAll(blank(column, texts)));
        }
        if (layout.optional().containsAll(layout.amounts())) {
            fixed.addAll(layout.amounts());
        }
        layout.optional().stream().filter(Header::isNumber).forEach(fixed::add);
        if (layout.print().isPresent()) {
            fixed.addAll(needed(layout));
        }
        return fixed;
    }

    /** Beside a gross amount that is always there, net and VAT may be missing. */
    private static Set<String> fixed(Map<Field, String> amounts, Layout layout) {
        Set<String> fixed = new LinkedHashSet<>(amounts.values());
        Optional<String> gross = Optional.ofNullable(amounts.get(Field.GROSS));
        if (gross.isPresent()
                && (amounts.size() == 1 || !layout.optional().contains(gross.get()))) {
            fixed.clear();
        }
        return fixed;
    }

    private static Set<String> blank(String column, List<String> texts) {
        return texts.contains("") ? Set.of(column) : Set.of();
    }

    /** Those that something beside a field is read from. */
    static Set<String> needed(Layout layout) {
        Set<String> columns = new LinkedHashSet<>();
        for (Layout.Rule rule : layout.rules()) {
            columns.addAll(rule.when().keySet());
            rule.enter().forEach(enter -> columns.addAll(enter.amounts().values()));
        }
        columns.addAll(layout.amounts());
        layout.tax()
                .ifPresent(
                        t -> {
                            columns.add(t.column());
                            t.withheld().ifPresent(columns::add);
                        });
        layout.checks()
                .forEach(
                        check -> {
                            columns.addAll(check.sum());
                            columns.add(check.equals());
                        });
        layout.payoutColumn().ifPresent(columns::add);
        columns.addAll(layout.outgoing());
        layout.mark().ifPresent(m -> columns.add(m.column()));
        layout.balance().ifPresent(b -> columns.add(b.column()));
        for (Layout.OtherRow other : layout.otherRows()) {
            columns.addAll(other.blank());
            columns.addAll(other.when().keySet());
            columns.addAll(other.sums());
            columns.addAll(other.states().keySet());
        }
        layout.workedOut().values().forEach(worked -> columns.addAll(worked.columns()));
        columns.removeAll(layout.workedOut().keySet());
        return columns;
    }
}
