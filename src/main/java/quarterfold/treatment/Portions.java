package quarterfold.treatment;

import java.util.List;
import java.util.Optional;
import quarterfold.law.Dated;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.money.Percent;

/** Divides entries into their portions, and measures what a table measures. For one thread. */
final class Portions {

    private final Context context;
    private final Liabilities liabilities;

    Portions(Context context) {
        this.context = context;
        liabilities = new Liabilities(context.law(), context.products());
    }

    /** The portions of an entry, one or more. */
    List<Portion> of(Entry entry) {
        if (entry.kind() == Kind.GIFT) {
            List<Portion> gifts = context.related().gifts().taxedWith(entry);
            if (!gifts.isEmpty()) {
                return gifts;
            }
        }
        if (entry.kind() == Kind.FUEL_SCALE) {
            return Portion.split(
                    Amounts.ofGross(charge(entry).gross()), liabilities.ofGoods(entry));
        }
        List<Portion> portions = Portion.of(entry, liabilities, context.baskets());
        return portions.size() == 1 && !isMargin(entry, portions.get(0).liability())
                ? portions
                : portions.stream().map(portion -> atTheRateOfItsSale(entry, portion)).toList();
    }

    /** Margin-scheme goods are taxed at the standard rate, what comes later at that of the sale. */
    private Portion atTheRateOfItsSale(Entry entry, Portion portion) {
        if (!isMargin(entry, portion.liability())) {
            return portion;
        }
        Optional<Percent> rate =
                context.related()
                        .stock()
                        .position(entry)
                        .flatMap(p -> context.law().rates().on("standard", p.sold()))
                        .map(Dated::value);
        return new Portion(portion.amounts(), new Liability(StockBook.MARGIN, rate));
    }

    private static boolean isMargin(Entry entry, Liability liability) {
        return entry.kind().side() == Kind.Side.SALES
                && liability.category().equals(StockBook.MARGIN);
    }

    /**
     * What an entry comes to against what it is measured by, a word of {@link
     * quarterfold.law.Fact#MEASURED}; empty where that is the limit of a consignment.
     */
    Optional<String> measured(Entry entry, Liability liability) {
        return switch (entry.kind()) {
            case GIFT -> Optional.of(context.related().gifts().measured(entry));
            case FUEL_SCALE -> Optional.of(charge(entry).measured());
            default ->
                    isMargin(entry, liability)
                            ? Optional.of(
                                    context.related()
                                            .stock()
                                            .position(entry)
                                            .map(StockBook.Position::measured)
                                            .orElse("unstated"))
                            : Optional.empty();
        };
    }

    private FuelCharge charge(Entry entry) {
        return FuelCharge.of(entry, context.law(), context.related().periods());
    }
}
