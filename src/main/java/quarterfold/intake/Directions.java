package quarterfold.intake;

import java.util.List;
import quarterfold.money.Amount;

/**
 * Whether the money of columns goes the ways their names say; if not, names stand over the wrong
 * cells.
 */
final class Directions {
    private Directions() {}

    /**
     * What a sale brings comes in and what it costs goes out, on most rows; else the plan is
     * unsound.
     *
     * @param way 1 where the rows are sales, -1 where they are refunds
     */
    static void check(MoneyPlan plan, List<Integer> rows, int way, Findings findings) {
        for (MoneyPlan.Part part : plan.parts()) {
            long sum = 0;
            int in = 0;
            for (int row : rows) {
                long value = part.sign() * part.column().values()[row];
                sum += value;
                in += Long.signum(value) * way * way(plan, row, part, way);
            }
            int expected =
                    switch (part.column().role()) {
                        case GOODS, TOTAL, AMOUNT, DELIVERY -> way;
                        case FEE, ADVERT, DISCOUNT -> way > 0 ? -1 : 0;
                        default -> 0;
                    };
            if (expected * in < 0) {
                findings.unsound(
                        "'%s' comes to %s %s; a column of that name should not; do the names stand over other columns' cells?%s"
                                .formatted(
                                        part.column().reference(),
                                        new Amount(Math.abs(sum)),
                                        sum > 0 ? "in" : "out",
                                        other(part.column())));
            }
        }
    }

    /** What else the column may be. */
    private static String other(Column column) {
        String role =
                column.role() == Role.FEE
                        ? "delivery"
                        : column.role() == Role.DELIVERY ? "fee" : "";
        return role.isEmpty()
                ? ""
                : " If they do not, say what it is, such as --answer \"column/%s=%s\""
                        .formatted(column.reference(), role);
    }

    /** Which way the row goes: where its price is not the part looked at, as the price goes. */
    private static int way(MoneyPlan plan, int row, MoneyPlan.Part looked, int otherwise) {
        for (MoneyPlan.Part part : plan.parts()) {
            Role role = part.column().role();
            boolean price = role == Role.GOODS || role == Role.TOTAL || role == Role.AMOUNT;
            long value = part.sign() * part.column().values()[row];
            if (price && part.column() != looked.column() && value != 0) {
                return Long.signum(value);
            }
        }
        return otherwise;
    }
}
