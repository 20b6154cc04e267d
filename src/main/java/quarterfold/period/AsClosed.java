package quarterfold.period;

import java.time.YearMonth;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Ledger;

/** Entries as closes had them: what kind they are may have been decided since. */
final class AsClosed {
    private final Ledger ledger;
    private final Map<YearMonth, Optional<Ledger>> then = new HashMap<>();

    AsClosed(Ledger ledger) {
        this.ledger = ledger;
    }

    /** The entry as the close of a period had it; as it is now where the period is not closed. */
    Entry entry(Entry now, YearMonth period) {
        return ledger.kinds().isAny() ? closed(now, period) : now;
    }

    private Entry closed(Entry now, YearMonth period) {
        return then.computeIfAbsent(period, p -> ledger.close(p).map(ledger::asOf))
                .filter(l -> !l.kinds().of(now.number()).equals(ledger.kinds().of(now.number())))
                .flatMap(l -> l.entry(now.number()))
                .orElse(now);
    }
}
