package quarterfold.intake;

import quarterfold.money.Amount;

/** The balance a report prints after each row, held against the money of the rows. */
final class RunningBalance {
    private final int balance;
    private final boolean newestFirst;
    private final int[] counted;
    private boolean begun;
    private long last;
    private long lastMoney;

    /** {@code counted}: the amounts that move the balance. */
    RunningBalance(Layout.Balance of, int[] counted, MoneyCells money) {
        balance = money.index(of.column());
        newestFirst = of.newestFirst();
        this.counted = counted;
    }

    /** Adds a problem where the balance is not that of the row before, moved by the money. */
    void check(Row row, MoneyCells money) {
        if (!money.isStated(balance)) {
            return;
        }
        long moved = 0;
        for (int index : counted) {
            moved += money.value(index);
        }
        long expected = newestFirst ? last - lastMoney : last + moved;
        if (begun && money.value(balance) != expected) {
            row.wrong(
                    money.column(balance),
                    "the balance of the row above moved by %s, %s; is a row missing?"
                            .formatted(
                                    new Amount(newestFirst ? -lastMoney : moved),
                                    new Amount(expected)));
        }
        begun = true;
        last = money.value(balance);
        lastMoney = moved;
    }
}
