package quarterfold.intake;

import quarterfold.money.Amount;

/**
 * The balance a report prints after a row, held against the money of the rows since the last one it
 * printed. Rows stand oldest first or newest first: where the layout does not say, the way that
 * holds is found, and must hold to the end.
 */
final class RunningBalance {
    private final int balance;
    private final int[] counted;
    private boolean mayBeOldestFirst;
    private boolean mayBeNewestFirst;
    private boolean begun;
    private long last;
    private long sinceOldest;
    private long sinceNewest;

    /** {@code counted}: the amounts that move the balance. */
    RunningBalance(Layout.Balance of, int[] counted, MoneyCells money) {
        balance = money.index(of.column());
        this.counted = counted;
        mayBeOldestFirst = !of.newestFirst().orElse(false);
        mayBeNewestFirst = of.newestFirst().orElse(true);
    }

    /** Adds a problem where the balance is not that of a row above, moved by the money between. */
    void check(Row row, MoneyCells money) {
        long moved = 0;
        for (int index : counted) {
            moved += money.value(index);
        }
        sinceOldest = Math.addExact(sinceOldest, moved);
        if (money.isStated(balance)) {
            if (begun) {
                compare(row, money);
            }
            begun = true;
            last = money.value(balance);
            sinceOldest = 0;
            sinceNewest = 0;
        }
        sinceNewest = Math.addExact(sinceNewest, moved);
    }

    /** Forgets the balance: a row that could not be read is between it and the next. */
    void spoil() {
        begun = false;
        sinceOldest = 0;
        sinceNewest = 0;
    }

    private void compare(Row row, MoneyCells money) {
        long found = money.value(balance);
        boolean oldest = mayBeOldestFirst && found == last + sinceOldest;
        boolean newest = mayBeNewestFirst && found == last - sinceNewest;
        if (oldest || newest) {
            mayBeOldestFirst = oldest;
            mayBeNewestFirst = newest;
            return;
        }
        long by = mayBeOldestFirst ? sinceOldest : -sinceNewest;
        row.wrong(
                money.column(balance),
                "the balance of the row above moved by %s, %s; is a row missing?"
                        .formatted(new Amount(by), new Amount(last + by)));
    }
}
