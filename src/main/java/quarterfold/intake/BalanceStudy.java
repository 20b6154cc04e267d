package quarterfold.intake;

import java.util.List;
import java.util.Optional;
import quarterfold.money.Amount;

/** Holds a column of balances, or of payouts, against the money of the rows. */
final class BalanceStudy {
    private static final int TOLD = 20;

    private BalanceStudy() {}

    /** The balance of a layout, where a column is one; what does not tie is told. */
    static Optional<Layout.Balance> balance(
            List<Column> columns, List<Grid.Line> rows, RuleStudy rules, Findings findings) {
        Optional<Column> column =
                columns.stream().filter(c -> c.role() == Role.BALANCE && c.hasValues()).findFirst();
        if (column.isEmpty()
                || rules.signs() != Layout.Signs.OWNER
                || rules.hasOwnSigns()
                || rows.size() < 2) {
            return Optional.empty();
        }
        long[] values = column.get().values();
        int down = 0;
        int up = 0;
        for (int row = 1; row < values.length; row++) {
            down += values[row] == values[row - 1] + rules.money(row) ? 1 : 0;
            up += values[row - 1] == values[row] + rules.money(row - 1) ? 1 : 0;
        }
        int steps = values.length - 1;
        boolean newestFirst = up > down;
        int held = Math.max(up, down);
        String name = column.get().reference();
        if (held * 10 < steps * 8) {
            findings.fault(
                    "'%s' is no running balance of the rows: it moves by their money in %,d of %,d"
                            .formatted(name, held, steps));
            return Optional.empty();
        }
        String said =
                "'%s' moves by the money of each row in %,d of %,d".formatted(name, held, steps);
        if (findings.open().stream().anyMatch(q -> q.id().startsWith("kind/"))) {
            findings.note(
                    "'%s' moves by the rows: if this is the statement of a bank account, answer rows=bank-line"
                            .formatted(name));
        }
        if (held == steps) {
            findings.prove(said);
            return Optional.of(new Layout.Balance(name, Optional.empty()));
        }
        findings.fault(said);
        int told = 0;
        for (int row = 1; row < values.length && told < TOLD; row++) {
            long expected =
                    newestFirst
                            ? values[row - 1] - rules.money(row - 1)
                            : values[row - 1] + rules.money(row);
            if (values[row] != expected) {
                told++;
                findings.fault(
                        "row %d: found a balance of %s; expected %s"
                                .formatted(
                                        rows.get(row).number(),
                                        new Amount(values[row]),
                                        new Amount(expected)));
            }
        }
        return Optional.of(new Layout.Balance(name, Optional.empty()));
    }

    /** Without a column that has no name, but moves by what another says on every row. */
    static List<Column> without(List<Column> money) {
        for (Column balance : money) {
            for (Column moves : money) {
                if (balance != moves
                        && balance.role() == Role.NONE
                        && (isBalance(balance.values(), moves.values(), 1)
                                || isBalance(balance.values(), moves.values(), 0))) {
                    balance.setRole(Role.BALANCE);
                    return money.stream().filter(c -> c != balance).toList();
                }
            }
        }
        return money;
    }

    /** {@code newer}: 1 where the newer of two rows is the lower, 0 where it is the upper. */
    private static boolean isBalance(long[] balance, long[] moves, int newer) {
        for (int row = 1; row < balance.length; row++) {
            long moved = balance[row - 1 + newer] - balance[row - newer];
            if (moved != moves[row - 1 + newer]) {
                return false;
            }
        }
        return balance.length >= 4;
    }
}
