package quarterfold.period;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import quarterfold.law.Law;
import quarterfold.ledger.Attachment;
import quarterfold.ledger.SetAside;
import quarterfold.ledger.Settings;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;
import quarterfold.treatment.Treated;

/**
 * Everything the working papers of one period show. The entries are not held: they are read again
 * each time they are asked for, so a period of millions needs no more memory than a small one.
 */
public interface Pack {

    /** The book's; of a closed period, as they were at its close. */
    Settings settings();

    VatReturn vatReturn();

    /** The tables the figures were worked out with. */
    Law law();

    /** The sources that have an entry in the period. */
    List<Source> sources();

    /** The name and digest of any source, such as a file of exchange rates. */
    default Optional<Source> source(long id) {
        return sources().stream().filter(s -> s.id() == id).findFirst();
    }

    /** The rows of those sources that made no entry, and why. */
    List<SetAside> setAside();

    /** The documents kept with rows of those sources. */
    List<Attachment> attachments();

    /** What each box would be, by id, under the rounding the book did not choose. */
    Map<String, Amount> otherRounding();

    /** Every entry of the period, in the order of its number. */
    void forEachTreated(Consumer<Treated> each);
}
