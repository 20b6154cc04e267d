package quarterfold.treatment;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.law.Law;
import quarterfold.ledger.Bundles;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.StatedRate;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/**
 * Finds the rate category of an entry: the rate its document states; else its product's, or those
 * of a bundle's products; else, for delivery, discounts and refunds, that of the order's goods;
 * else, for sales, the standard rate.
 */
public final class Liabilities {

    private final Law law;
    private final Context.Products products;

    public Liabilities(Law law, Context.Products products) {
        this.law = law;
        this.products = products;
    }

    /** The shares of goods by what their entry says of itself: several for a bundle. */
    List<Liability.Share> ofGoods(Entry entry) {
        List<Liability.Share> own = ownOf(entry);
        return own.isEmpty() ? whole(Liability.STANDARD, entry) : own;
    }

    /**
     * The shares an entry falls into; one, but for a bundle of mixed goods and for a charge on an
     * order of them.
     */
    List<Liability.Share> of(Entry entry, Baskets baskets) {
        List<Liability.Share> own = ownOf(entry);
        if (!own.isEmpty()) {
            return own;
        }
        if (!isOfOwnGoods(entry.kind())) {
            return whole(Liability.UNSTATED, entry);
        }
        List<Liability.Share> goods = baskets.of(entry);
        return goods.isEmpty() ? whole(Liability.STANDARD, entry) : goods;
    }

    private static List<Liability.Share> whole(Liability liability, Entry entry) {
        return List.of(new Liability.Share(liability, entry.amounts().money()));
    }

    /** Whether what moves are the seller's own goods or services, of its own list of products. */
    private static boolean isOfOwnGoods(Kind kind) {
        return kind.side() == Kind.Side.SALES || kind == Kind.STOCK_MOVED;
    }

    private List<Liability.Share> ownOf(Entry entry) {
        StatedRate rate = entry.profile().rate();
        if (rate.isStated()) {
            return whole(stated(entry, rate), entry);
        }
        String product = entry.line().item().product();
        if (product.isEmpty() || !isOfOwnGoods(entry.kind())) {
            return List.of();
        }
        List<Bundles.Part> parts = products.parts(product, entry.taxPoint());
        return parts.isEmpty()
                ? whole(ofProduct(product, entry.taxPoint()), entry)
                : ofBundle(parts, entry.taxPoint());
    }

    private Liability ofProduct(String product, LocalDate day) {
        return products.liability(product, day).map(Liability::of).orElse(Liability.STANDARD);
    }

    /**
     * One price for several supplies is apportioned fairly, here by what each costs alone: VAT
     * Notice 700 section 31; HMRC manuals VATVAL03700 to 03900.
     */
    private List<Liability.Share> ofBundle(List<Bundles.Part> parts, LocalDate day) {
        Map<Liability, Amount> prices = new LinkedHashMap<>();
        for (Bundles.Part part : parts) {
            prices.merge(ofProduct(part.product(), day), part.shelfPrice(), Amount::plus);
        }
        return prices.entrySet().stream()
                .map(p -> new Liability.Share(p.getKey(), p.getValue()))
                .toList();
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
