package quarterfold.treatment;

import java.util.function.Consumer;
import java.util.function.Predicate;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Profile;

/** A way through the entries of the ledger whose profile is such. */
public interface Search {
    void forEach(Predicate<Profile> which, Consumer<Entry> each);
}
