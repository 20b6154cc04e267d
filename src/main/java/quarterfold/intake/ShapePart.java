package quarterfold.intake;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.ledger.Kind;

/**
 * The rows of one shape in a file to be learned.
 *
 * @param table where they stand, and the rows round them
 * @param letters the texts of the first cell that mark them; none where they are a table
 * @param names of their columns, where rows known by a text have such a row among them
 * @param scope before the ids of questions about them; empty for the first shape of a file
 * @param label what is said of them is said under this; empty for the one shape of a file
 * @param title what the words above them say that they are
 */
record ShapePart(
        TableFinder.Found table,
        List<String> letters,
        Optional<Grid.Line> names,
        String scope,
        String label,
        Optional<Kind> title) {

    /** The one shape of a file. */
    static ShapePart only(TableFinder.Found table) {
        return new ShapePart(table, List.of(), Optional.empty(), "", "", Optional.empty());
    }

    boolean isTable() {
        return letters.isEmpty();
    }

    /** How a layout knows the rows. */
    Map<String, List<String>> when() {
        return isTable() ? Map.of() : Map.of("#1", letters);
    }

    /** The columns of {@code rows}, which are these rows or some of them. */
    List<Column> columns(TableFinder.Found rows) {
        return isTable() ? RoleFinder.columns(rows) : RoleFinder.columns(rows.body(), names, true);
    }

    /** The text that marks rows says what they are, beside what else does. */
    void findRoles(List<Column> columns, RoleFinder finder) {
        if (isTable()) {
            finder.find(columns);
            return;
        }
        finder.find(columns.subList(1, columns.size()));
        finder.findType(columns.subList(1, columns.size()));
        columns.get(0).setRole(Role.RECORD);
    }

    /** What its rows are where they do not say it: by the title, or by the name of their amount. */
    Optional<Kind> titled(MoneyPlan plan) {
        if (plan.shape() == MoneyPlan.Shape.WIDE || scope.isEmpty()) {
            return Optional.empty();
        }
        boolean fees =
                plan.shape() == MoneyPlan.Shape.SINGLE
                        && plan.parts().get(0).column().role() == Role.FEE;
        return title.or(() -> fees ? Optional.of(Kind.FEE) : Optional.empty());
    }
}
