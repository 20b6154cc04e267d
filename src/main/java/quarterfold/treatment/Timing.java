package quarterfold.treatment;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Particular;

/**
 * Says on which days an entry does something to a return.
 *
 * <p>A purchase whose document is held only later is reclaimed when it is held: VAT Regulations
 * 1995 reg 29(1) as amended by SI 2009/586 reg 3.
 */
public final class Timing {

    private final BeforeRegistration beforeRegistration;

    public Timing(BeforeRegistration beforeRegistration) {
        this.beforeRegistration = beforeRegistration;
    }

    /** The occasions of an entry, in the order of their days. */
    public List<Occasion> of(Entry entry) {
        if (beforeRegistration.isClaimOf(entry)) {
            return List.of(beforeRegistration.occasion(entry));
        }
        return List.of(held(entry).map(day -> Occasion.on(day, entry)).orElse(Occasion.of(entry)));
    }

    private static Optional<LocalDate> held(Entry entry) {
        return entry.kind().side() == Kind.Side.PURCHASES
                ? entry.line()
                        .particulars()
                        .day(Particular.HELD)
                        .filter(day -> day.isAfter(entry.taxPoint()))
                : Optional.empty();
    }
}
