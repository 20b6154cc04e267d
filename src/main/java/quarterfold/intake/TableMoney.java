package quarterfold.intake;

import java.util.List;
import java.util.Optional;
import quarterfold.money.Amount;

/**
 * What the rows of a table come to, in ten-thousandths, positive where it comes to the business.
 *
 * @param rows how many there are
 * @param all what they come to
 * @param paid the part of it that is paid out
 * @param columns of the table
 */
record TableMoney(long rows, long all, long paid, List<Column> columns) {

    static TableMoney of(List<Grid.Line> body, List<Column> columns, RuleStudy rules) {
        long all = 0;
        long paid = 0;
        for (int row = 0; row < body.size(); row++) {
            all = Math.addExact(all, rules.money(row));
            paid += rules.isPayout(row) ? rules.money(row) : 0;
        }
        return new TableMoney(body.size(), all, paid, columns);
    }

    TableMoney and(TableMoney other) {
        return new TableMoney(
                rows + other.rows,
                Math.addExact(all, other.all),
                Math.addExact(paid, other.paid),
                List.of());
    }

    /** What of the table comes to the amount. */
    Optional<String> known(long amount) {
        if (amount == 0) {
            return Optional.empty();
        }
        if (Math.abs(amount) == Math.abs(all)) {
            return Optional.of("the rows come to " + new Amount(all));
        }
        if (Math.abs(amount) == Math.abs(all - paid)) {
            return Optional.of("the rows but payouts come to " + new Amount(all - paid));
        }
        return columns.stream()
                .filter(c -> c.hasValues() && Math.abs(c.sum()) == Math.abs(amount))
                .findFirst()
                .map(c -> "'%s' comes to %s".formatted(c.reference(), new Amount(c.sum())));
    }
}
