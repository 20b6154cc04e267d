package quarterfold.independent;

import java.math.BigDecimal;

/**
 * The rows that sell and the rows that undo it: a refund to a customer is a negative in boxes 1 and
 * 6, never a positive in box 4 (VAT Regulations 1995 reg 38(3)(b) and reg 39).
 */
record SaleKind(String word, int sign) {

    static SaleKind any(Dice dice) {
        return dice.oneIn(3)
                ? new SaleKind(dice.of("sale-refund", "delivery-refund", "discount"), -1)
                : new SaleKind(dice.of("sale", "sale", "sale", "delivery", "discount-reversed"), 1);
    }

    boolean undoes() {
        return sign < 0 || word.equals("discount-reversed");
    }

    BigDecimal of(BigDecimal amount) {
        return sign < 0 ? amount.negate() : amount;
    }
}
