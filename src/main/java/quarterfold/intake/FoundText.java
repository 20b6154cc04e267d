package quarterfold.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Says in words what a table was found to be, and what each of its columns is for. */
final class FoundText {
    private FoundText() {}

    /** {@code states}: columns of states by which rows are left out. */
    static List<String> of(
            TableFinder.Found table,
            List<Column> columns,
            Set<String> states,
            Optional<MoneyPlan> plan) {
        List<String> found = new ArrayList<>();
        found.add(
                table.header()
                        .map(
                                h ->
                                        "Column names in row %d; %,d rows below."
                                                .formatted(h.number(), table.body().size()))
                        .orElse("No column names; %,d rows.".formatted(table.body().size())));
        for (Column column : columns) {
            found.add(
                    "Column %s: %s (such as %s)"
                            .formatted(
                                    column.reference(),
                                    role(column, states, plan),
                                    Problem.quoted(
                                            column.stated().stream().findFirst().orElse(""))));
        }
        return found;
    }

    private static String role(Column column, Set<String> states, Optional<MoneyPlan> plan) {
        Role role = column.role();
        boolean money =
                plan.stream().flatMap(p -> p.parts().stream()).anyMatch(p -> p.column() == column);
        boolean passedOver = role == Role.STATUS && !states.contains(column.reference());
        if (role == Role.NONE && money) {
            return "money";
        }
        return role == Role.NONE
                        || role == Role.IGNORED
                        || passedOver
                        || !LayoutParts.isAccepted(column)
                ? "kept as a note"
                : role.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
