package quarterfold.intake;

import java.util.Arrays;
import java.util.stream.Collectors;
import quarterfold.money.Amount;

/** An identity that every row must keep: columns that add up to another. */
final class Identity {
    private final int[] sum;
    private final int equals;

    Identity(Layout.Check check, MoneyCells money) {
        sum = check.sum().stream().mapToInt(money::index).toArray();
        equals = money.index(check.equals());
    }

    /**
     * Adds a problem with every figure where the row breaks it. A row that states nothing to add
     * up, such as a receipt with its total alone, keeps it, and so does one of a file without the
     * column of what it adds up to.
     */
    void check(Row row, MoneyCells money) {
        if (money.isLacking(equals) || Arrays.stream(sum).noneMatch(money::isStated)) {
            return;
        }
        long total = 0;
        for (int index : sum) {
            total += money.value(index);
        }
        if (total != money.value(equals)) {
            row.fault(
                    money.name(equals),
                    "found '%s'; expected %s = %s"
                            .formatted(
                                    money.amount(equals),
                                    Arrays.stream(sum)
                                            .mapToObj(i -> money.name(i) + " " + money.amount(i))
                                            .collect(Collectors.joining(" + ")),
                                    new Amount(total)));
        }
    }
}
