package quarterfold.period;

import static java.util.Comparator.naturalOrder;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import quarterfold.ledger.Close;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Ledger;
import quarterfold.treatment.Occasion;
import quarterfold.treatment.Timing;

/** Finds the occasions whose day is in a closed period and that no close froze. */
final class LateEntries {

    private final Ledger ledger;
    private final Occasions occasions;
    private final Timing timing;

    LateEntries(Ledger ledger, Occasions occasions, Timing timing) {
        this.ledger = ledger;
        this.occasions = occasions;
        this.timing = timing;
    }

    /** The occasions, by the number of their entry. */
    List<Occasion> of(List<Close> closes) {
        NavigableMap<Long, Entry> candidates = new TreeMap<>();
        for (Close close : closes) {
            ledger.forEachAfter(
                    close.lastEntry(),
                    close.start(),
                    close.end(),
                    e -> candidates.put(e.number(), e));
        }
        Optional<LocalDate> first = closes.stream().map(Close::start).min(naturalOrder());
        Optional<LocalDate> last = closes.stream().map(Close::end).max(naturalOrder());
        if (first.isPresent() && last.isPresent()) {
            occasions.forEachReaching(
                    first.get(),
                    last.get(),
                    last.get(),
                    e -> candidates.putIfAbsent(e.number(), e));
        }
        long newest = closes.stream().mapToLong(Close::lastEntry).max().orElse(0);
        List<Occasion> late = new ArrayList<>();
        for (Entry entry : candidates.values()) {
            for (Occasion occasion : timing.of(entry)) {
                boolean inClosed =
                        closes.stream().anyMatch(c -> Closes.contains(c, occasion.day()));
                if (inClosed && (entry.number() > newest || !isFrozen(occasion))) {
                    late.add(occasion);
                }
            }
        }
        return late;
    }

    private boolean isFrozen(Occasion occasion) {
        return ledger.isClosed(occasion.entry().number(), occasion.day(), occasion.cause().code());
    }
}
