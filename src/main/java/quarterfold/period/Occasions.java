package quarterfold.period;

import java.time.LocalDate;
import java.util.function.Consumer;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Ledger;
import quarterfold.treatment.Occasion;
import quarterfold.treatment.Timing;

/**
 * Finds what happens in a period: the occasions whose day is in it, of entries dated in it and of
 * those that reach into it from another.
 */
final class Occasions {

    private final Ledger ledger;
    private final Timing timing;
    private final LocalDate registeredFrom;

    Occasions(Ledger ledger, Timing timing, LocalDate registeredFrom) {
        this.ledger = ledger;
        this.timing = timing;
        this.registeredFrom = registeredFrom;
    }

    /** A way through the entries with a tax point between two days. */
    interface Scan {
        void forEach(LocalDate first, LocalDate last, Consumer<Entry> each);
    }

    void forEach(Period period, Scan scan, Consumer<Occasion> each) {
        LocalDate first = FirstReturn.scanFrom(period, registeredFrom);
        scan.forEach(first, period.end(), entry -> of(entry, period, each));
        ledger.forEachWithParticulars(
                entry -> {
                    if (entry.taxPoint().isBefore(first)
                            || entry.taxPoint().isAfter(period.end())) {
                        of(entry, period, each);
                    }
                });
    }

    private void of(Entry entry, Period period, Consumer<Occasion> each) {
        for (Occasion occasion : timing.of(entry)) {
            if (period.contains(occasion.day())) {
                each.accept(occasion);
            }
        }
    }
}
