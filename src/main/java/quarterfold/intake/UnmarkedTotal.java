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
        List<Column> stated =
                columns.stream()
                        .filter(c -> c.hasValues() && c.role().isNumber() && !c.isZero())
                        .toList();
        if (last < FEWEST || stated.isEmpty() || !stated.stream().allMatch(c -> sums(c, last))) {
            return;
        }
        Grid.Line line = body.get(last);
        findings.fault(
                "row %d ('%s') states %s, the sum of the %,d rows above: is it their total? Then save the file without it"
                        .formatted(
                                line.number(),
                                line.first(),
                                new Amount(stated.get(0).values()[last]),
                                last));
    }

    private static boolean sums(Column column, int last) {
        long value = column.values()[last];
        return Math.subtractExact(column.sum(), value) == value;
    }
}
