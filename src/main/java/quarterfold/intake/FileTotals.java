package quarterfold.intake;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import quarterfold.money.Amount;

/** What the rows of all shapes of a file come to so far. For one thread. */
final class FileTotals {
    private static final Pattern DIGITS = Pattern.compile("\\d+");

    private long records;
    private long rows;
    private long money;
    private long paid;
    private boolean spoilt;

    /** A row of any kind. */
    void record() {
        records++;
    }

    /**
     * What reading a row gave, in ten-thousandths.
     *
     * @param counted 1 for a row of a table, 0 for another
     * @param payouts the part of the money that is paid out, negative
     */
    void add(long counted, long in, long payouts) {
        rows += counted;
        money = Math.addExact(money, in);
        paid = Math.addExact(paid, payouts);
    }

    /** A row could not be read, so that nothing can be held against the rows. */
    void spoil() {
        spoilt = true;
    }

    /** Adds a problem where the cell does not state this total. */
    void check(Row row, int column, FileTotal total, AmountReader reader) {
        if (spoilt) {
            return;
        }
        String cell = row.text(column);
        if (total.isMoney()) {
            long expected = total == FileTotal.MONEY ? money : Math.subtractExact(money, paid);
            long found = row.isNumber(column) ? reader.readNumber(cell) : reader.read(cell);
            if (found != expected) {
                row.wrong(
                        column,
                        "what the %d rows of the file come to%s, %s; are rows missing, or is one there twice?"
                                .formatted(
                                        rows,
                                        total == FileTotal.PAYOUT ? " without payouts" : "",
                                        new Amount(expected)));
            }
            return;
        }
        long expected = total == FileTotal.ROWS ? rows : records;
        if (!states(cell, expected)) {
            row.wrong(
                    column,
                    "the number of %s, %d; are rows missing, or is one there twice?"
                            .formatted(
                                    total == FileTotal.ROWS
                                            ? "the rows of the file"
                                            : "all rows of the file up to this one",
                                    expected));
        }
    }

    /** Adds a problem unless the row, whose texts these are, states how many rows are above. */
    static void checkCount(Row row, String texts, long count) {
        if (!states(texts, count)) {
            row.fault(
                    "",
                    "found %s; expected the number of the rows above, %d; are rows missing, or is one there twice?"
                            .formatted(Problem.quoted(texts), count));
        }
    }

    /** Whether the text has this number in it, zeros in front or not. */
    static boolean states(String text, long count) {
        Matcher digits = DIGITS.matcher(text);
        while (digits.find()) {
            if (digits.group().replaceFirst("^0+(?=.)", "").equals(Long.toString(count))) {
                return true;
            }
        }
        return false;
    }
}
