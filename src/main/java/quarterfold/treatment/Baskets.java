package quarterfold.treatment;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.money.Amount;

/**
 * The goods of the orders that are not wholly at the standard rate, by liability and price, so that
 * a delivery charge or a discount that names no product can follow the goods: one price for several
 * supplies is apportioned fairly, here by selling price (VAT Notice 700 section 31; HMRC manuals
 * VATVAL03700 to 03900). Orders wholly at the standard rate are not held: most sellers have no
 * other.
 */
public final class Baskets {

    /** No order holds anything but standard-rated goods. */
    public static final Baskets NONE = new Baskets();

    private final Map<Order, List<Liability.Share>> shares = new HashMap<>();

    private record Order(String channel, String order) {
        static Order of(Entry entry) {
            return new Order(entry.profile().channel(), entry.line().order());
        }
    }

    /** A way through every entry of the ledger; taken twice. */
    public interface Scan {
        void forEach(Consumer<Entry> each);
    }

    private Baskets() {}

    /** The baskets of a ledger in which some goods are not at the standard rate. */
    public static Baskets of(Scan ledger, Liabilities liabilities) {
        Baskets baskets = new Baskets();
        ledger.forEach(
                entry -> {
                    if (isGoods(entry)
                            && liabilities.ofGoods(entry).stream()
                                    .anyMatch(s -> !s.liability().category().equals("standard"))) {
                        baskets.shares.put(Order.of(entry), new ArrayList<>());
                    }
                });
        if (!baskets.shares.isEmpty()) {
            ledger.forEach(
                    entry -> {
                        if (isGoods(entry)) {
                            Portion.split(entry.amounts(), liabilities.ofGoods(entry))
                                    .forEach(p -> baskets.add(entry, p));
                        }
                    });
        }
        return baskets;
    }

    private static boolean isGoods(Entry entry) {
        return entry.kind() == Kind.SALE && !entry.line().order().isEmpty();
    }

    private void add(Entry entry, Portion portion) {
        List<Liability.Share> order = shares.get(Order.of(entry));
        if (order == null) {
            return;
        }
        Liability liability = portion.liability();
        Amount price = portion.amounts().money();
        for (int i = 0; i < order.size(); i++) {
            if (order.get(i).liability().equals(liability)) {
                order.set(i, new Liability.Share(liability, order.get(i).price().plus(price)));
                return;
            }
        }
        order.add(new Liability.Share(liability, price));
    }

    /**
     * The goods of the entry's order by liability, or nothing where all are at the standard rate.
     */
    List<Liability.Share> of(Entry entry) {
        return shares.isEmpty() || entry.line().order().isEmpty()
                ? List.of()
                : shares.getOrDefault(Order.of(entry), List.of()).stream()
                        .filter(s -> s.price().signum() > 0)
                        .toList();
    }
}
