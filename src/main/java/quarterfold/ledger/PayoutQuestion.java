package quarterfold.ledger;

import java.math.BigDecimal;
import quarterfold.money.Amount;

/** What is asked about a settlement whose payout is not what its other rows come to. */
public final class PayoutQuestion {
    private PayoutQuestion() {}

    /**
     * The question.
     *
     * @param stated the payout, in the currency
     * @param rows how many others there are
     * @param summed what they come to
     */
    public static String words(
            String settlement, String currency, Amount stated, long rows, Amount summed) {
        return "settlement %s states a payout of %s %s; its other rows, %d of them, sum to %s; the difference is %s: which rows are missing, or which are not of this settlement?"
                .formatted(settlement, currency, stated, rows, summed, difference(stated, summed));
    }

    /** As an amount is printed, beyond the range of amounts too. */
    public static String difference(Amount stated, Amount summed) {
        BigDecimal plain = stated.decimal().subtract(summed.decimal()).stripTrailingZeros();
        return plain.setScale(Math.max(2, plain.scale())).toPlainString();
    }
}
