package quarterfold.intake;

import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import quarterfold.ledger.AskedEntries;

/**
 * Compares the entries that a file asks about, read again, with those that the ledger has noted.
 */
final class AskedAgain {
    private final Iterator<AskedEntries> runs;
    private Optional<AskedEntries> run;
    private long next;
    private OptionalLong first = OptionalLong.empty();

    /** {@code noted}: in the order of their numbers. */
    AskedAgain(List<AskedEntries> noted) {
        runs = noted.iterator();
        run = nextRun();
    }

    private Optional<AskedEntries> nextRun() {
        Optional<AskedEntries> found = runs.hasNext() ? Optional.of(runs.next()) : Optional.empty();
        next = found.map(AskedEntries::first).orElse(0L);
        return found;
    }

    /** An entry of the file is asked about; they come in the order of their numbers. */
    void see(String about, long number) {
        if (first.isPresent()) {
            return;
        }
        if (run.filter(r -> r.about().equals(about) && next == number).isEmpty()) {
            first = OptionalLong.of(number);
            return;
        }
        if (number == run.orElseThrow().last()) {
            run = nextRun();
        } else {
            next++;
        }
    }

    /** What differs, once all are seen. */
    Optional<String> difference() {
        long number = first.orElse(next);
        return first.isPresent() || run.isPresent()
                ? Optional.of(
                        "found otherwise in the ledger whether a question is about entry %d"
                                .formatted(number))
                : Optional.empty();
    }
}
