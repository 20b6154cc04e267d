package quarterfold.intake;

import java.util.LinkedHashSet;
import java.util.Set;

/** The columns that a layout cannot do without. */
final class LayoutColumns {
    private LayoutColumns() {}

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
