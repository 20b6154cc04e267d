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
 * 1995 reg 29(1) as amended by SI 2009/586 reg 3. For import VAT paid the document is the import
 * VAT certificate.
 */
public final class Timing {

    private final Answers answers;

    /** By what the entries say and what people stated of them since. */
    public Timing(Answers answers) {
        this.answers = answers;
    }

    /** The occasions of an entry, in the order of their days. */
    public List<Occasion> of(Entry entry) {
        return List.of(
                held(answers.stated(entry))
                        .map(day -> Occasion.on(day, entry))
                        .orElse(Occasion.of(entry)));
    }

    private static Optional<LocalDate> held(Entry entry) {
        return entry.kind().side() == Kind.Side.PURCHASES || entry.kind() == Kind.IMPORT_VAT_PAID
                ? entry.line()
                        .particulars()
                        .day(Particular.HELD)
                        .filter(day -> day.isAfter(entry.taxPoint()))
                : Optional.empty();
    }
}
