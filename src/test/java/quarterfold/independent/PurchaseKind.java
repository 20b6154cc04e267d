package quarterfold.independent;

import java.math.BigDecimal;

/**
 * The rows that buy and a supplier's credit, which is a negative in boxes 4 and 7, never a positive
 * in box 1 (VAT Regulations 1995 reg 38(4)(b)).
 */
record PurchaseKind(String word, int sign) {

    static PurchaseKind any(Dice dice) {
        return dice.oneIn(5)
                ? new PurchaseKind(dice.of("purchase-credit", "expense-credit", "fee-refund"), -1)
                : new PurchaseKind(dice.of("purchase", "expense", "fee"), 1);
    }

    static PurchaseKind service(Dice dice) {
        return dice.oneIn(5)
                ? new PurchaseKind(dice.of("expense-credit", "fee-refund"), -1)
                : new PurchaseKind(dice.of("expense", "fee"), 1);
    }

    BigDecimal of(BigDecimal amount) {
        return sign < 0 ? amount.negate() : amount;
    }
}
