package quarterfold.period;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.function.Consumer;
import quarterfold.law.Box;
import quarterfold.money.Amount;
import quarterfold.treatment.Treated;

/**
 * A return beside another, each as it was closed or else as a draft, and what explains the change
 * of each box: treatment by treatment, then the largest single entries of either. Sterling, exact
 * to four decimals.
 *
 * @param boxes the boxes both forms have, in the form's order
 */
public record Comparison(VatReturn now, VatReturn then, List<BoxChange> boxes) {

    private static final int LARGEST = 3;

    /**
     * How one box changed.
     *
     * @param difference of the figures; what is to be repaid counts as less than nothing
     * @param treatments what made the change, the largest first; empty for a box that is worked out
     *     from others
     * @param largest the largest single entries of either period, the largest first
     */
    public record BoxChange(
            BoxFigure now,
            BoxFigure then,
            Amount difference,
            List<TreatmentChange> treatments,
            List<Large> largest) {}

    /**
     * What one treatment adds to a box in each of the two periods.
     *
     * @param entriesNow occasions of entries and adjustments
     */
    public record TreatmentChange(
            String treatment, Amount now, Amount then, long entriesNow, long entriesThen) {

        public Amount difference() {
            return now.minus(then);
        }
    }

    /** A single entry and what it adds to the box in the period it is of. */
    public record Large(VatReturn of, Treated treated, Amount adds) {}

    /** The period before, where the book has it and anything is in it. */
    public static Optional<Comparison> withPeriodBefore(Returns returns, Period period) {
        return returns.calendar()
                .of(period.start().minusDays(1))
                .flatMap(then -> between(returns, period, then));
    }

    /** The period of the same days last year, where the book has it and anything is in it. */
    public static Optional<Comparison> withLastYear(Returns returns, Period period) {
        return returns.calendar()
                .of(period.end().minusYears(1))
                .filter(then -> !then.name().equals(period.name()))
                .flatMap(then -> between(returns, period, then));
    }

    private static Optional<Comparison> between(Returns returns, Period now, Period then) {
        return returns.isClosed(then.name()) || returns.hasEntries(then)
                ? Optional.of(of(returns.pack(now), returns.pack(then)))
                : Optional.empty();
    }

    static Comparison of(Pack now, Pack then) {
        Side nowSide = new Side(now);
        Side thenSide = new Side(then);
        List<BoxChange> boxes = new ArrayList<>();
        for (BoxFigure box : nowSide.vatReturn.boxes()) {
            String id = box.box().id();
            thenSide.vatReturn.boxes().stream()
                    .filter(b -> b.box().id().equals(id))
                    .findFirst()
                    .ifPresent(
                            b ->
                                    boxes.add(
                                            new BoxChange(
                                                    box,
                                                    b,
                                                    signed(box, nowSide.vatReturn)
                                                            .minus(signed(b, thenSide.vatReturn)),
                                                    treatments(id, nowSide, thenSide),
                                                    largest(id, nowSide, thenSide))));
        }
        return new Comparison(nowSide.vatReturn, thenSide.vatReturn, boxes);
    }

    private static Amount signed(BoxFigure box, VatReturn vatReturn) {
        return box.box().formula().operation() == Box.Operation.GAP
                        && vatReturn.direction() == Direction.RECLAIM
                ? box.figure().negated()
                : box.figure();
    }

    private static List<TreatmentChange> treatments(String box, Side now, Side then) {
        Set<Key> keys = new HashSet<>(now.sums.keySet());
        keys.addAll(then.sums.keySet());
        return keys.stream()
                .filter(k -> k.box().equals(box))
                .map(
                        k ->
                                new TreatmentChange(
                                        k.treatment(),
                                        now.sum(k).amount,
                                        then.sum(k).amount,
                                        now.sum(k).count,
                                        then.sum(k).count))
                .filter(c -> !c.difference().isZero())
                .sorted(
                        Comparator.comparing((TreatmentChange c) -> c.difference().abs())
                                .reversed()
                                .thenComparing(TreatmentChange::treatment))
                .toList();
    }

    private static List<Large> largest(String box, Side now, Side then) {
        List<Large> both = new ArrayList<>(now.largest(box));
        both.addAll(then.largest(box));
        return both.stream().sorted(BY_SIZE.reversed()).limit(LARGEST).toList();
    }

    /** The smaller first; of two alike the one that came later. */
    private static final Comparator<Large> BY_SIZE =
            Comparator.comparing((Large l) -> l.adds().abs())
                    .thenComparing(
                            Comparator.comparing((Large l) -> l.treated().entry().number())
                                    .reversed());

    private record Key(String treatment, String box) {}

    private static final class Sum {
        private Amount amount = Amount.ZERO;
        private long count;
    }

    /** One of the two returns, added up. */
    private static final class Side {
        private static final Sum NONE = new Sum();
        private final VatReturn vatReturn;
        private final Map<Key, Sum> sums = new HashMap<>();
        private final Map<String, PriorityQueue<Large>> largest = new HashMap<>();

        Side(Pack pack) {
            vatReturn = pack.vatReturn();
            Consumer<Treated> each =
                    treated ->
                            treated.boxes()
                                    .forEach(
                                            (box, adds) -> {
                                                add(treated.treatment(), box, adds);
                                                see(box, new Large(vatReturn, treated, adds));
                                            });
            pack.forEachTreated(each);
            vatReturn
                    .adjustments()
                    .forEach(a -> a.boxes().forEach((box, adds) -> add(a.treatment(), box, adds)));
        }

        private void add(String treatment, String box, Amount adds) {
            Sum sum = sums.computeIfAbsent(new Key(treatment, box), k -> new Sum());
            sum.amount = sum.amount.plus(adds);
            sum.count++;
        }

        private void see(String box, Large large) {
            PriorityQueue<Large> queue =
                    largest.computeIfAbsent(box, b -> new PriorityQueue<>(BY_SIZE));
            queue.add(large);
            if (queue.size() > LARGEST) {
                queue.remove();
            }
        }

        private Sum sum(Key key) {
            return sums.getOrDefault(key, NONE);
        }

        private List<Large> largest(String box) {
            return List.copyOf(largest.getOrDefault(box, new PriorityQueue<>(BY_SIZE)));
        }
    }
}
