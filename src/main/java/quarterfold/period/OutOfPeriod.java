package quarterfold.period;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Ledger;
import quarterfold.treatment.Query;
import quarterfold.treatment.Questions;

/**
 * Finds the entries that are in no return: those dated before the registration. They are asked
 * about in the earliest period that is open.
 */
final class OutOfPeriod {

    private final Ledger ledger;
    private final Calendar calendar;
    private final Questions questions;

    OutOfPeriod(Ledger ledger, Calendar calendar, Questions questions) {
        this.ledger = ledger;
        this.calendar = calendar;
        this.questions = questions;
    }

    List<Query> queries(Period period) {
        List<Query> queries = new ArrayList<>();
        if (!isEarliestOpen(period)) {
            return queries;
        }
        LocalDate registered = calendar.registeredFrom();
        collect(
                LocalDate.of(1, 1, 1),
                registered.minusDays(1),
                e -> true,
                "before-registration",
                queries);
        return queries;
    }

    private void collect(
            LocalDate first,
            LocalDate last,
            Predicate<Entry> which,
            String code,
            List<Query> queries) {
        ledger.forEach(
                first,
                last,
                entry -> {
                    if (which.test(entry)) {
                        queries.add(questions.ask(code, entry));
                    }
                });
    }

    /** Whether no open period before this one has an entry. */
    private boolean isEarliestOpen(Period period) {
        return earliestOpenBefore(ledger, calendar, period).isEmpty();
    }

    /** The first open period before this one that holds an entry, if there is one. */
    static Optional<Period> earliestOpenBefore(Ledger ledger, Calendar calendar, Period period) {
        return ledger.sources().stream()
                .flatMap(s -> s.dates().stream())
                .flatMap(d -> calendar.from(d.first(), d.last()).stream())
                .filter(p -> p.end().isBefore(period.start()))
                .filter(p -> ledger.close(p.name()).isEmpty())
                .filter(p -> ledger.hasEntries(p.start(), p.end()))
                .min(Comparator.comparing(Period::start));
    }
}
