package quarterfold.intake;

import java.util.List;
import quarterfold.money.Amount;

/** The columns of money that a plan does not enter: each must be explained, or is asked about. */
final class LeftOver {
    private final List<Equation> equations;
    private final Findings findings;

    LeftOver(List<Equation> equations, Findings findings) {
        this.equations = equations;
        this.findings = findings;
    }

    /** Every column of money must be entered, be a sum, or be said to be of no account. */
    void tell(List<Column> money, MoneyPlan plan) {
        for (Column column : money) {
            boolean used =
                    plan.parts().stream().anyMatch(p -> p.column() == column)
                            || plan.root().filter(r -> r == column).isPresent();
            boolean worked = !column.factors().isEmpty();
            if (used || worked || column.isZero() || isExplained(column, plan)) {
                continue;
            }
            findings.ask(
                    new Question(
                            "column/" + column.reference(),
                            (column.role().isPart()
                                            ? "'%s' holds %s that no sum of the row explains; money beside the other columns needs a layout written by hand: do they have it already?"
                                            : "'%s' holds %s that no sum of the row explains; is it of no account?")
                                    .formatted(column.reference(), new Amount(column.sum())),
                            List.of("ignored"),
                            true));
        }
    }

    private boolean isExplained(Column column, MoneyPlan plan) {
        if (TaxWithin.isOf(plan, column)) {
            return true; // entered with its price
        }
        for (Equation equation : equations) {
            if (equation.sign(column) != 0 && equation.broken().isEmpty()) {
                boolean known =
                        equation.columns().stream()
                                .allMatch(
                                        c ->
                                                c == column
                                                        || plan.root()
                                                                .filter(r -> r == c)
                                                                .isPresent()
                                                        || plan.parts().stream()
                                                                .anyMatch(p -> p.column() == c));
                if (known) {
                    findings.note(
                            "'%s' is not entered: %s"
                                    .formatted(
                                            column.reference(),
                                            MoneyPlanner.said(equation, column)));
                    return true;
                }
            }
        }
        if (column.role() == Role.TAX && isWithin(column, plan)) {
            findings.note(
                    "'%s' is not entered: it is tax within the amounts, and kept as a note"
                            .formatted(column.reference()));
            return true;
        }
        return false;
    }

    /** Whether the tax is never more than a quarter of the row's money, and of its sign. */
    static boolean isWithin(Column tax, MoneyPlan plan) {
        for (int row = 0; row < tax.values().length; row++) {
            long largest = 0;
            for (MoneyPlan.Part part : plan.parts()) {
                largest = Math.max(largest, Math.abs(part.column().values()[row]));
            }
            if (Math.abs(tax.values()[row]) * 4 > largest) {
                return false;
            }
        }
        return true;
    }
}
