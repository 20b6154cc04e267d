package quarterfold.period;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Function;
import java.util.stream.Stream;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Ledger;
import quarterfold.treatment.BeforeRegistration;
import quarterfold.treatment.Query;

/**
 * Finds the entries that are in no return: those dated after the registration. They are asked about
 * in the earliest period that is open.
 */
final class OutOfPeriod {

    private final Ledger ledger;
    private final Calendar calendar;
    private final Function<Entry, List<Query>> asks;

    /**
     * @param asks what the table asks about an entry
     */
    OutOfPeriod(Ledger ledger, Calendar calendar, Function<Entry, List<Query>> asks) {
        this.ledger = ledger;
        this.calendar = calendar;
        this.asks = asks;
    }

    List<Query> queries(Period period) {
        List<Query> queries = new ArrayList<>();
        if (!isEarliestOpen(period)) {
            return queries;
        }
        calendar.registeredTo()
                .ifPresent(
                        last ->
                                ledger.forEach(
                                        last.plusDays(1),
                                        LocalDate.of(9999, 12, 31),
                                        entry -> {
                                            if (calendar.of(entry.taxPoint()).isEmpty()) {
                                                queries.addAll(asks.apply(entry));
                                            }
                                        }));
        return queries;
    }

    /** Whether no open period before this one has an entry. */
    private boolean isEarliestOpen(Period period) {
        return earliestOpenBefore(ledger, calendar, period).isEmpty();
    }

    /** The first open period before this one that holds an entry, if there is one. */
    static Optional<Period> earliestOpenBefore(Ledger ledger, Calendar calendar, Period period) {
        LocalDate registered = calendar.registeredFrom();
        return Stream.concat(
                        calendar.of(registered).stream(),
                        ledger.sources().stream()
                                .flatMap(s -> s.dates().stream())
                                .flatMap(d -> calendar.from(d.first(), d.last()).stream()))
                .filter(p -> p.end().isBefore(period.start()))
                .filter(p -> ledger.close(p.name()).isEmpty())
                .filter(
                        p ->
                                ledger.hasEntries(p.start(), p.end())
                                        || (FirstReturn.is(p, registered)
                                                && hasPurchasesBefore(ledger, registered)))
                .min(Comparator.comparing(Period::start));
    }

    private static boolean hasPurchasesBefore(Ledger ledger, LocalDate registered) {
        LocalDate last = registered.minusDays(1);
        AtomicBoolean found = new AtomicBoolean();
        if (ledger.hasEntries(FirstReturn.EARLIEST, last)) {
            ledger.forEach(
                    FirstReturn.EARLIEST,
                    last,
                    entry -> found.compareAndSet(false, BeforeRegistration.isBought(entry)));
        }
        return found.get();
    }
}
