package quarterfold.intake;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import quarterfold.intake.Layout.OtherRow;
import quarterfold.money.Amount;

/**
 * Knows the rows of a file that are no rows of its table, sets them aside, and holds the totals and
 * counts they state against the rows above. For one thread.
 */
final class OtherRows {
    /** One kind of such rows, and what the rows above came to since the last of the kind. */
    private static final class Known {
        private final OtherRow row;
        private final String starts;
        private final int[] blank;
        private final int[] whenColumns;
        private final List<List<String>> whenTexts;
        private final int[] stateColumns;
        private final List<FileTotal> stated;
        private final int[] sums;
        private final long[] sum;
        private long rows;

        Known(OtherRow row, Header header, MoneyCells money) {
            this.row = row;
            starts = row.starts().toLowerCase(Locale.ROOT);
            blank = row.blank().stream().mapToInt(header::column).toArray();
            whenColumns = row.when().keySet().stream().mapToInt(header::column).toArray();
            whenTexts = List.copyOf(row.when().values());
            stateColumns = row.states().keySet().stream().mapToInt(header::place).toArray();
            stated = List.copyOf(row.states().values());
            sums = row.sums().stream().mapToInt(money::index).toArray();
            sum = new long[sums.length];
        }

        boolean fits(Row at, String first) {
            if ((!row.is().isEmpty() && !row.is().equals(first))
                    || (!starts.isEmpty() && !first.toLowerCase(Locale.ROOT).startsWith(starts))) {
                return false;
            }
            for (int column : blank) {
                if (!at.text(column).isEmpty()) {
                    return false;
                }
            }
            for (int i = 0; i < whenColumns.length; i++) {
                if (!whenTexts.get(i).contains(at.text(whenColumns[i]))) {
                    return false;
                }
            }
            return true;
        }
    }

    private final List<Known> known = new ArrayList<>();
    private final MoneyCells money;
    private final FileTotals totals;
    private final AmountReader amounts;
    private long rows;
    private String rest = "";
    private boolean spoilt;

    /** {@code totals}: of the whole file. */
    OtherRows(Layout layout, Header header, MoneyCells money, FileTotals totals) {
        this.money = money;
        this.totals = totals;
        amounts = new AmountReader(layout.numbers());
        layout.otherRows().forEach(row -> known.add(new Known(row, header, money)));
    }

    /** Whether the row is none of the table; it is then set aside. */
    boolean take(Row row, RowReader.Output output) {
        if (known.isEmpty()) {
            return false;
        }
        if (!rest.isEmpty()) {
            output.setAside(row.number(), rest);
            return true;
        }
        String first = first(row);
        for (Known each : known) {
            if (each.fits(row, first)) {
                check(each, row);
                output.setAside(row.number(), each.row.why());
                rest = each.row.rest() ? each.row.why() : "";
                return true;
            }
        }
        return false;
    }

    private static String first(Row row) {
        for (int i = 0; i < row.width(); i++) {
            String text = row.text(i);
            if (!text.isEmpty()) {
                return text;
            }
        }
        return "";
    }

    /** Counts a row of the table, whose amounts have been read. */
    void add() {
        rows++;
        for (Known each : known) {
            each.rows++;
            for (int i = 0; i < each.sums.length; i++) {
                each.sum[i] = Math.addExact(each.sum[i], money.value(each.sums[i]));
            }
        }
    }

    /** The rows of the table so far. */
    long rows() {
        return rows;
    }

    /** A row of the table could not be read, so that no total can be held against the rows. */
    void spoil() {
        spoilt = true;
        totals.spoil();
    }

    private void check(Known each, Row row) {
        for (int i = 0; i < each.sums.length && !spoilt; i++) {
            int index = each.sums[i];
            if (money.read(row, index, false)
                    && money.isStated(index)
                    && money.value(index) != each.sum[i]) {
                row.wrong(
                        money.column(index),
                        "the sum of the %d rows above, %s; are rows missing, or is one there twice?"
                                .formatted(each.rows, printed(each.sum[i], index)));
            }
        }
        for (int i = 0; i < each.stateColumns.length; i++) {
            totals.check(row, each.stateColumns[i], each.stated.get(i), amounts);
        }
        if (each.row.count() && !spoilt) {
            FileTotals.checkCount(row, texts(row), each.rows);
        }
        each.rows = 0;
        Arrays.fill(each.sum, 0);
    }

    private Amount printed(long sum, int index) {
        return new Amount(money.isNegated(index) ? -sum : sum);
    }

    private static String texts(Row row) {
        StringBuilder texts = new StringBuilder();
        for (int i = 0; i < row.width(); i++) {
            texts.append(i == 0 ? "" : " ").append(row.text(i));
        }
        return texts.toString().strip();
    }
}
