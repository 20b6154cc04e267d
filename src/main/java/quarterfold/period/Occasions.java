package quarterfold.period;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.Set;
import java.util.function.Consumer;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Ledger;
import quarterfold.treatment.Occasion;
import quarterfold.treatment.Timing;

/**
 * Finds what happens in a period: the occasions whose day is in it, of entries dated in it and of
 * those that reach into it from another.
 */
final class Occasions {

    private static final Set<Decision.Action> STATES =
            EnumSet.of(Decision.Action.STATE, Decision.Action.EVIDENCE_SEEN);

    private final Ledger ledger;
    private final Timing timing;

    Occasions(Ledger ledger, Timing timing) {
        this.ledger = ledger;
        this.timing = timing;
    }

    /** A way through the entries with a tax point between two days. */
    interface Scan {
        void forEach(LocalDate first, LocalDate last, Consumer<Entry> each);
    }

    void forEach(Period period, Scan scan, Consumer<Occasion> each) {
        scan.forEach(period.start(), period.end(), entry -> of(entry, period, each));
        forEachReaching(
                entry -> {
                    if (!period.contains(entry.taxPoint())) {
                        of(entry, period, each);
                    }
                });
    }

    /**
     * The entries that may have an occasion on another day than their tax point: those that state a
     * particular, and those of which a decision ever stated a fact.
     */
    void forEachReaching(Consumer<Entry> each) {
        ledger.forEachWithParticulars(each);
        ledger.decisions().stream()
                .filter(d -> d.target() == Decision.Target.ENTRY)
                .filter(d -> STATES.contains(d.action()))
                .map(Decision::about)
                .distinct()
                .flatMap(number -> ledger.entry(Long.parseLong(number)).stream())
                .filter(entry -> entry.line().particulars().isEmpty())
                .forEach(each);
    }

    private void of(Entry entry, Period period, Consumer<Occasion> each) {
        for (Occasion occasion : timing.of(entry)) {
            if (period.contains(occasion.day())) {
                each.accept(occasion);
            }
        }
    }
}
