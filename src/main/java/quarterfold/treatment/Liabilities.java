package quarterfold.treatment;

import java.util.List;
import java.util.Optional;
import quarterfold.law.Law;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.StatedRate;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/**
 * Finds the rate category of an entry: the rate its document states; else its product's; else, for
 * delivery, discounts and refunds, that of the order's goods; else, for sales, the standard rate.
 */
public final class Liabilities {

    private final Law law;
    private final Context.Products products;

    public Liabilities(Law law, Context.Products products) {
        this.law = law;
        this.products = products;
    }

    /** The liability of a sale of goods by what it says of itself. */
    Liability ofGoods(Entry entry) {
        return ownOf(entry).orElse(Liability.STANDARD);
    }

    /** The shares an entry falls into; one, but for a charge on an order of mixed goods. */
    List<Liability.Share> of(Entry entry, Baskets baskets) {
        Amount money = entry.amounts().money();
        Optional<Liability> own = ownOf(entry);
        if (own.isPresent()) {
            return List.of(new Liability.Share(own.get(), money));
        }
        if (entry.kind().side() != Kind.Side.SALES) {
            return List.of(new Liability.Share(Liability.UNSTATED, money));
        }
        List<Liability.Share> goods = baskets.of(entry);
        return goods.isEmpty() ? List.of(new Liability.Share(Liability.STANDARD, money)) : goods;
    }

    private Optional<Liability> ownOf(Entry entry) {
        StatedRate rate = entry.profile().rate();
        if (rate.isStated()) {
            return Optional.of(stated(entry, rate));
        }
        String product = entry.line().item().product();
        return product.isEmpty() || entry.kind().side() != Kind.Side.SALES
                ? Optional.empty()
                : Optional.of(
                        products.liability(product, entry.taxPoint())
                                .map(Liability::of)
                                .orElse(Liability.STANDARD));
    }

    private Liability stated(Entry entry, StatedRate rate) {
        Optional<Percent> percent = rate.percent();
        if (percent.isEmpty()) {
            return Liability.of(rate.code());
        }
        boolean mayBeEarlier = isAfterTheSale(entry.kind());
        Optional<String> category =
                mayBeEarlier
                        ? law.rates().categoryUpTo(percent.get(), entry.taxPoint())
                        : law.rates().category(percent.get(), entry.taxPoint());
        return new Liability(category.orElse("not-a-rate"), percent);
    }

    /** Whether the entry undoes an earlier supply, so that its rate may be an earlier one. */
    private static boolean isAfterTheSale(Kind kind) {
        return switch (kind) {
            case SALE_REFUND,
                            DELIVERY_REFUND,
                            DISCOUNT,
                            DISCOUNT_REVERSED,
                            FEE_REFUND,
                            PURCHASE_CREDIT,
                            EXPENSE_CREDIT,
                            OTHER_MONEY ->
                    true;
            default -> false;
        };
    }
}
