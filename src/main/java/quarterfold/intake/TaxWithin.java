package quarterfold.intake;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The column of VAT that lies within the one price of a row beside fees: what the report states is
 * entered, not worked out again.
 */
final class TaxWithin {
    private static final Set<Role> PRICES = EnumSet.of(Role.GOODS, Role.TOTAL, Role.AMOUNT);
    private static final Set<Role> OTHERS =
            EnumSet.of(Role.DELIVERY, Role.DISCOUNT, Role.REFUND, Role.TAX, Role.DELIVERY_TAX);

    private TaxWithin() {}

    /** The amounts of a price's entry: with its VAT where a column states it. */
    static Map<Field, String> amounts(MoneyPlan plan, List<Column> columns, Column price) {
        Optional<Column> tax = columns.stream().filter(c -> isOf(plan, c)).findFirst();
        if (tax.isEmpty() || !PRICES.contains(price.role())) {
            return Map.of(Field.GROSS, price.reference());
        }
        Map<Field, String> amounts = new EnumMap<>(Field.class);
        amounts.put(Field.VAT, tax.get().reference());
        amounts.put(Field.GROSS, price.reference());
        return amounts;
    }

    /** Whether the column states the VAT within the one price of each row. */
    static boolean isOf(MoneyPlan plan, Column tax) {
        if (plan.shape() != MoneyPlan.Shape.WIDE
                || tax.role() != Role.TAX
                || !tax.hasValues()
                || tax.isZero()
                || !isOne(plan)) {
            return false;
        }
        for (MoneyPlan.Part part : plan.parts()) {
            if (part.column() == tax) {
                return false;
            }
            if (PRICES.contains(part.column().role())) {
                return isWithin(tax.values(), part.column().values());
            }
        }
        return false;
    }

    private static boolean isOne(MoneyPlan plan) {
        List<Role> roles = plan.parts().stream().map(p -> p.column().role()).toList();
        return roles.stream().filter(PRICES::contains).count() == 1
                && roles.stream().noneMatch(OTHERS::contains);
    }

    /** Never more than a quarter of the price, and of its sign. */
    private static boolean isWithin(long[] tax, long[] price) {
        for (int row = 0; row < tax.length; row++) {
            boolean turned = Long.signum(tax[row]) * Long.signum(price[row]) < 0;
            if (turned || Math.abs(tax[row]) * 4 > Math.abs(price[row])) {
                return false;
            }
        }
        return true;
    }
}
