package quarterfold.treatment;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.law.Dated;
import quarterfold.law.Law;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Particular;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/**
 * Business gifts by the person who got them. A gift is no supply while all gifts to one person in
 * any twelve months cost no more than the limit {@code gifts}; the gift that passes it brings VAT
 * on the cost of all of them, and each later one on its own (VATA 1994 Sch 4 para 5(2)(a) and (2ZA)
 * as amended by Finance Act 2003 s.21; HMRC manual VATVAL11240).
 */
public final class Gifts {

    /** Nothing is given away. */
    public static final Gifts NONE = new Gifts();

    /** The category of a gift that is no supply whatever it cost: para 5(2)(b). */
    static final String SAMPLE = "sample";

    private final Map<Long, List<Gift>> taxedWith = new HashMap<>();

    private Gifts() {}

    private record Gift(Entry entry, Amount cost, List<Portion> portions) {
        LocalDate day() {
            return entry.taxPoint();
        }

        /** Whether it and a later day are in one year. */
        boolean isWithinAYearOf(LocalDate day) {
            return day().plusYears(1).isAfter(day);
        }
    }

    /** The gifts of a ledger. */
    public static Gifts of(
            Baskets.Scan ledger,
            Law law,
            Liabilities liabilities,
            Answers answers,
            Exchange exchange) {
        Map<String, List<Gift>> byPerson = new HashMap<>();
        ledger.forEach(
                stored -> {
                    if (stored.kind() != Kind.GIFT) {
                        return;
                    }
                    Answered answered = Answered.of(stored, answers);
                    Entry entry = exchange.home(answered.entry());
                    if (answered.decided().equals("none")
                            && !entry.profile().category().equals(SAMPLE)
                            && !entry.profile().party().isEmpty()
                            && exchange.isHome(entry)) {
                        byPerson.computeIfAbsent(entry.profile().party(), p -> new ArrayList<>())
                                .add(gift(entry, law, liabilities));
                    }
                });
        Gifts gifts = new Gifts();
        byPerson.values().forEach(all -> gifts.add(all, law));
        return gifts;
    }

    private static Gift gift(Entry entry, Law law, Liabilities liabilities) {
        List<Portion> priced = Portion.of(entry, liabilities, Baskets.NONE);
        Amount cost =
                entry.line()
                        .particulars()
                        .amount(Particular.COST)
                        .orElseGet(
                                () ->
                                        priced.stream()
                                                .map(p -> net(p, entry.taxPoint(), law))
                                                .reduce(Amount.ZERO, Amount::plus));
        return new Gift(
                entry, cost, Portion.split(Amounts.ofNet(cost), liabilities.ofGoods(entry)));
    }

    private static Amount net(Portion portion, LocalDate day, Law law) {
        Percent rate =
                portion.liability()
                        .percent()
                        .or(
                                () ->
                                        law.rates()
                                                .on(portion.liability().category(), day)
                                                .map(Dated::value))
                        .orElse(Percent.ZERO);
        return Figures.inside(portion.amounts(), rate, Optional.empty()).net();
    }

    /** Goes through one person's gifts day by day. */
    private void add(List<Gift> all, Law law) {
        all.sort(Comparator.comparing(Gift::day).thenComparing(g -> g.entry().number()));
        List<Gift> untaxed = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            Gift gift = all.get(i);
            untaxed.add(gift);
            Amount year = Amount.ZERO;
            for (Gift earlier : all.subList(0, i + 1)) {
                year = earlier.isWithinAYearOf(gift.day()) ? year.plus(earlier.cost()) : year;
            }
            Optional<Amount> limit = law.limit("gifts", gift.day()).map(l -> l.value().amount());
            if (limit.filter(year::isAbove).isPresent()) {
                untaxed.removeIf(g -> !g.isWithinAYearOf(gift.day()));
                taxedWith.put(gift.entry().number(), List.copyOf(untaxed));
                untaxed.clear();
            }
        }
    }

    /** How a gift stands to the limit: a word of {@link quarterfold.law.Fact#MEASURED}. */
    String measured(Entry entry) {
        return entry.profile().party().isEmpty()
                ? "unstated"
                : taxedWith.containsKey(entry.number()) ? "above" : "within";
    }

    /** What VAT falls due on with a gift, itself among it; empty where none does. */
    List<Portion> taxedWith(Entry entry) {
        return taxedWith.getOrDefault(entry.number(), List.of()).stream()
                .flatMap(g -> g.portions().stream())
                .toList();
    }
}
