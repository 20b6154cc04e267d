package quarterfold.intake;

import java.util.List;
import quarterfold.money.Amount;

/**
 * Where rows have no dates of their own, a total below them looks like one of them, unless a word
 * says that it is none.
 */
final class UnmarkedTotal {
    /** A row that equals the one or two above it may well be a row. */
    private static final int FEWEST = 3;

    private UnmarkedTotal() {}

    /** Tells a last row of which every amount is the sum of those above. */
    static void tell(List<Column> columns, List<Grid.Line> body, Findings findings) {
        int last = body.size() - 1;
        if (last < FEWEST) {
            return;
        }
        boolean any = false;
        for (Column column : columns) {
            if (!column.hasValues() || !column.role().isNumber() || column.isZero()) {
                continue;
            }
            long value = column.values()[last];
            if (Math.subtractExact(column.sum(), value) != value) {
                return;
            }
            any = true;
        }
        if (any) {
            Grid.Line line = body.get(last);
            Column column = columns.stream().filter(c -> sums(c, last)).findFirst().orElseThrow();
            findings.fault(
                    "row %d ('%s') states %s, the sum of the %,d rows above: is it their total? Then save the file without it"
                            .formatted(
                                    line.number(),
                                    line.first(),
                                    new Amount(column.values()[last]),
                                    last));
        }
    }

    private static boolean sums(Column column, int last) {
        return column.hasValues()
                && column.role().isNumber()
                && !column.isZero()
                && column.sum() - column.values()[last] == column.values()[last];
    }
}
