package quarterfold.period;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import quarterfold.ledger.ClosedEntry;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Ledger;
import quarterfold.treatment.Cause;
import quarterfold.treatment.Context;
import quarterfold.treatment.Occasion;
import quarterfold.treatment.Timing;
import quarterfold.treatment.Treated;
import quarterfold.treatment.TreatmentRun;

/**
 * Shows entries over all periods: what closes froze of each, what the open period takes up of what
 * is wrong in closed ones, and what an open period treats.
 */
final class EntryStories {

    private static final YearMonth NO_PERIOD = YearMonth.of(1, 1);

    private final Ledger ledger;
    private final Returns returns;
    private final EarlierPeriods earlier;
    private final Context context;
    private final AsClosed closes;

    EntryStories(Ledger ledger, Returns returns, EarlierPeriods earlier, Context context) {
        this.ledger = ledger;
        this.returns = returns;
        this.earlier = earlier;
        this.context = context;
        closes = new AsClosed(ledger);
    }

    static boolean isOf(ClosedEntry closed, Occasion occasion) {
        return closed.day().equals(occasion.day())
                && closed.cause().equals(occasion.cause().code());
    }

    /**
     * Every entry of the ledger in the order of its number: as its close froze it, or as its own
     * period would treat it now. What is in no return adds to no box.
     */
    void forEach(Consumer<Treated> each) {
        Map<Long, List<Treated>> pending = pending();
        Map<YearMonth, TreatmentRun> runs = new HashMap<>();
        Map<YearMonth, ClosedPack> packs = packs();
        Timing timing = new Timing(context);
        TrueUps trueUps = TrueUps.of(ledger, context);
        ledger.forEachWithClosed(
                (entry, frozen) -> {
                    frozen(entry, frozen, packs).forEach(each);
                    List<Treated> waiting = pending.getOrDefault(entry.number(), List.of());
                    waiting.forEach(each);
                    for (Occasion occasion : timing.of(entry)) {
                        if (frozen.stream().noneMatch(c -> isOf(c, occasion))
                                && waiting.stream()
                                        .noneMatch(t -> isSame(t.occasion(), occasion))) {
                            each.accept(now(occasion, packs.keySet(), runs, trueUps));
                        }
                    }
                });
    }

    private Map<YearMonth, ClosedPack> packs() {
        Map<YearMonth, ClosedPack> packs = new HashMap<>();
        ledger.closes().forEach(c -> packs.put(c.period(), new ClosedPack(ledger, c)));
        return packs;
    }

    /** What closes froze of an entry. */
    private List<Treated> frozen(
            Entry entry, List<ClosedEntry> frozen, Map<YearMonth, ClosedPack> packs) {
        return frozen.stream()
                .flatMap(
                        closed ->
                                Optional.ofNullable(packs.get(closed.closedIn())).stream()
                                        .map(
                                                pack ->
                                                        pack.treated(
                                                                closes.entry(
                                                                        entry, closed.closedIn()),
                                                                closed)))
                .toList();
    }

    /** What is wrong in closed returns as the draft takes it up, by the number of the entry. */
    private Map<Long, List<Treated>> pending() {
        Map<Long, List<Treated>> pending = new HashMap<>();
        if (earlier.hasAny(context)) {
            earlier.takesUp()
                    .ifPresent(
                            period ->
                                    returns.draft(
                                            period,
                                            t -> {
                                                if (!period.contains(t.occasion().day())
                                                        || t.occasion().cause()
                                                                == Cause.CORRECTED) {
                                                    pending.computeIfAbsent(
                                                                    t.entry().number(),
                                                                    n -> new ArrayList<>())
                                                            .add(t);
                                                }
                                            }));
        }
        return pending;
    }

    /** The occasion as its own period would treat it now. */
    private Treated now(
            Occasion occasion,
            Set<YearMonth> closed,
            Map<YearMonth, TreatmentRun> runs,
            TrueUps trueUps) {
        Optional<Period> period = returns.calendar().of(occasion.day());
        YearMonth name = period.map(Period::name).orElse(NO_PERIOD);
        TreatmentRun run = runs.computeIfAbsent(name, p -> new TreatmentRun(context));
        Treated treated = trueUps.apply(run.treat(occasion), run);
        return period.filter(p -> !closed.contains(p.name()))
                .map(p -> earlier.classed(treated, p))
                .orElseGet(treated::inNoBox);
    }

    /** One entry's occasions as {@link #forEach} shows them; none where there is no such. */
    List<Treated> of(long number) {
        Optional<Entry> entry = ledger.entry(number);
        if (entry.isEmpty()) {
            return List.of();
        }
        List<ClosedEntry> closed = ledger.closedEntry(number);
        List<Treated> found = new ArrayList<>(frozen(entry.get(), closed, packs()));
        List<Treated> waiting = pending().getOrDefault(number, List.of());
        found.addAll(waiting);
        for (Occasion occasion : new Timing(context).of(entry.get())) {
            if (closed.stream().noneMatch(c -> isOf(c, occasion))
                    && waiting.stream().noneMatch(t -> isSame(t.occasion(), occasion))) {
                find(occasion, found);
            }
        }
        return found;
    }

    private static boolean isSame(Occasion one, Occasion other) {
        return one.day().equals(other.day()) && one.cause() == other.cause();
    }

    private void find(Occasion occasion, List<Treated> found) {
        Optional<Period> period =
                returns.calendar().of(occasion.day()).filter(p -> !returns.isClosed(p.name()));
        if (period.isEmpty()) {
            found.add(new TreatmentRun(context).treat(occasion).inNoBox());
            return;
        }
        returns.treat(
                period.get(),
                ledger::forEach,
                context,
                treated -> {
                    if (treated.entry().number() == occasion.entry().number()
                            && isSame(treated.occasion(), occasion)) {
                        found.add(treated);
                    }
                });
    }
}
