package quarterfold.treatment;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Particular;
import quarterfold.money.Amount;

/**
 * What goods of the margin scheme cost and were sold for, item by item: the individual scheme, in
 * which a loss on one item is not set against another (VAT Notice 718). The cost is what the sale
 * states, or the one purchase of the same product under the scheme; where that leaves it open it is
 * not known. Global accounting, which pools a period's items, is not kept here.
 */
public final class StockBook {

    /** No goods are on the margin scheme. */
    public static final StockBook NONE = new StockBook();

    static final String MARGIN = "margin";

    private final Map<Long, Position> positions = new HashMap<>();

    private StockBook() {}

    /** One thing sold: a product of an order, or where no order is stated the product, or a row. */
    private record Thing(String channel, String order, String product, long number) {

        static Thing of(Entry entry) {
            String product = entry.line().item().product();
            String order = entry.line().order();
            return new Thing(
                    entry.profile().channel(),
                    order,
                    product,
                    product.isEmpty() && order.isEmpty() ? entry.number() : 0);
        }

        boolean isOfTheSameOrder(Thing other) {
            return !order.isEmpty() && order.equals(other.order) && channel.equals(other.channel);
        }
    }

    private record Move(Entry entry, Amount money) {}

    /**
     * Where an entry takes the price of one thing.
     *
     * @param before what the customer had paid for it, less what was given back
     * @param after the same with this entry
     * @param sold the day of the first sale, whose rate holds for what comes after
     */
    record Position(Amount before, Amount after, Amount cost, LocalDate sold) {

        /** The margin, never below nothing. */
        private static Amount margin(Amount price, Amount cost) {
            return price.isAbove(cost) ? price.minus(cost) : Amount.ZERO;
        }

        /** What the entry adds to the margin; negative where it takes from it. */
        Amount added() {
            return margin(after, cost).minus(margin(before, cost));
        }

        String measured() {
            return after.isAbove(cost) ? "above" : "within";
        }
    }

    /** The stock book of a ledger. */
    public static StockBook of(
            Baskets.Scan ledger,
            Liabilities liabilities,
            Baskets baskets,
            Answers answers,
            Exchange exchange) {
        Writer writer = new Writer(liabilities, baskets);
        ledger.forEach(
                stored -> {
                    Answered answered = Answered.of(stored, answers);
                    Entry entry = exchange.home(answered.entry());
                    if (answered.decided().equals("none") && exchange.isHome(entry)) {
                        writer.see(entry);
                    }
                });
        return writer.book();
    }

    /** Where the entry takes the price of its goods; empty where the cost is not known. */
    Optional<Position> position(Entry entry) {
        return Optional.ofNullable(positions.get(entry.number()));
    }

    /** Collects purchases and sales, then sets them beside each other. */
    private static final class Writer {
        private final Liabilities liabilities;
        private final Baskets baskets;
        private final Map<String, List<Entry>> bought = new HashMap<>();
        private final Map<Thing, List<Move>> things = new HashMap<>();
        private final List<Move> ofOrders = new ArrayList<>();
        private final Map<String, Integer> sold = new HashMap<>();

        Writer(Liabilities liabilities, Baskets baskets) {
            this.liabilities = liabilities;
            this.baskets = baskets;
        }

        void see(Entry entry) {
            String product = entry.line().item().product();
            if (entry.kind() == Kind.PURCHASE || entry.kind() == Kind.PURCHASE_CREDIT) {
                if (entry.profile().rate().code().equals(MARGIN) && !product.isEmpty()) {
                    bought.computeIfAbsent(product, p -> new ArrayList<>()).add(entry);
                }
                return;
            }
            if (entry.kind().side() != Kind.Side.SALES || entry.kind().direction() == 0) {
                return;
            }
            Amount price =
                    Portion.of(entry, liabilities, baskets).stream()
                            .filter(p -> p.liability().category().equals(MARGIN))
                            .map(p -> p.amounts().money())
                            .reduce(Amount.ZERO, Amount::plus);
            if (price.isZero()) {
                return;
            }
            Move move = new Move(entry, price.times(entry.kind().direction()));
            if (product.isEmpty() && !entry.line().order().isEmpty()) {
                ofOrders.add(move);
                return;
            }
            things.computeIfAbsent(Thing.of(entry), t -> new ArrayList<>()).add(move);
            if (entry.kind() == Kind.SALE || entry.kind() == Kind.SALE_REFUND) {
                sold.merge(product, entry.kind().direction(), Integer::sum);
            }
        }

        StockBook book() {
            for (Move move : ofOrders) {
                Thing order = Thing.of(move.entry());
                List<Thing> goods =
                        things.keySet().stream().filter(order::isOfTheSameOrder).toList();
                if (goods.size() == 1) {
                    things.getOrDefault(goods.get(0), new ArrayList<>()).add(move);
                }
            }
            StockBook book = new StockBook();
            things.forEach((thing, moves) -> write(thing, moves, book));
            return book;
        }

        private void write(Thing thing, List<Move> moves, StockBook book) {
            moves.sort(
                    Comparator.comparing((Move m) -> m.entry().taxPoint())
                            .thenComparing(m -> m.entry().number()));
            Optional<Amount> cost = stated(moves).or(() -> cost(thing.product()));
            if (cost.isEmpty()) {
                return;
            }
            LocalDate day =
                    moves.stream()
                            .filter(m -> m.entry().kind() == Kind.SALE)
                            .findFirst()
                            .orElse(moves.get(0))
                            .entry()
                            .taxPoint();
            Amount before = Amount.ZERO;
            for (Move move : moves) {
                Amount after = before.plus(move.money());
                book.positions.put(
                        move.entry().number(), new Position(before, after, cost.get(), day));
                before = after;
            }
        }

        private static Optional<Amount> stated(List<Move> moves) {
            return moves.stream()
                    .flatMap(m -> m.entry().line().particulars().amount(Particular.COST).stream())
                    .findFirst();
        }

        /** The price of the one purchase, if there is one and no more than one is sold. */
        private Optional<Amount> cost(String product) {
            List<Entry> purchases = bought.getOrDefault(product, List.of());
            boolean one =
                    purchases.stream().filter(e -> e.kind() == Kind.PURCHASE).count() == 1
                            && sold.getOrDefault(product, 0) <= 1;
            return one
                    ? purchases.stream()
                            .map(e -> e.amounts().money().times(-e.kind().direction()))
                            .reduce(Amount::plus)
                    : Optional.empty();
        }
    }
}
