package quarterfold.period;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import quarterfold.ledger.Close;

/** The closes of a book, by day and by period. */
record Closes(List<Close> all) {

    Closes {
        all = List.copyOf(all);
    }

    static boolean contains(Close close, LocalDate day) {
        return !day.isBefore(close.start()) && !day.isAfter(close.end());
    }

    /** The close of the period the day is in. */
    Optional<Close> of(LocalDate day) {
        return all.stream().filter(c -> contains(c, day)).findFirst();
    }

    /** The close of a period that is closed. */
    Close of(YearMonth period) {
        return all.stream().filter(c -> c.period().equals(period)).findFirst().orElseThrow();
    }

    /** The close of the latest period. */
    Optional<Close> latest() {
        return all.stream().max(Comparator.comparing(Close::end));
    }
}
