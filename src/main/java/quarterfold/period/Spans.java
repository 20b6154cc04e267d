package quarterfold.period;

import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import quarterfold.ledger.NotifiedPeriod;
import quarterfold.ledger.Periods;

/**
 * The days of a book from its registration on, cut into return periods without a gap: those the tax
 * authority notified, years under annual accounting, and otherwise up to each period-end month. For
 * one thread.
 */
final class Spans {

    /** First and last day of a period. */
    record Span(LocalDate start, LocalDate end) {
        YearMonth name() {
            return YearMonth.from(end);
        }

        boolean contains(LocalDate day) {
            return !day.isBefore(start) && !day.isAfter(end);
        }
    }

    private final Periods periods;
    private final NavigableMap<LocalDate, Span> known = new TreeMap<>();

    Spans(Periods periods) {
        this.periods = periods;
    }

    /** The period a day falls in; empty outside the registration. */
    Optional<Span> of(LocalDate day) {
        while (lastKnown().isBefore(day) && addNext()) {
            // until the day is reached or the registration has ended
        }
        return Optional.ofNullable(known.floorEntry(day))
                .map(Map.Entry::getValue)
                .filter(s -> s.contains(day));
    }

    /** The periods that end in a month: one, or none; more only where {@link #twice} has some. */
    Optional<Span> named(YearMonth name) {
        LocalDate last = name.atEndOfMonth();
        return of(last).filter(s -> s.name().equals(name))
                .or(
                        () ->
                                Optional.ofNullable(known.floorEntry(last))
                                        .map(Map.Entry::getValue)
                                        .filter(s -> s.name().equals(name))
                                        .or(() -> before(last, name)));
    }

    /** Where the period of a month's last day began in that month, the one before it. */
    private Optional<Span> before(LocalDate last, YearMonth name) {
        return Optional.ofNullable(known.floorEntry(last))
                .map(e -> known.lowerEntry(e.getKey()))
                .map(Map.Entry::getValue)
                .filter(s -> s.name().equals(name));
    }

    /** Months in which two periods end, up to the day. */
    List<YearMonth> twice(LocalDate until) {
        of(until);
        List<YearMonth> twice = new ArrayList<>();
        Optional<YearMonth> before = Optional.empty();
        for (Span span : known.values()) {
            if (before.filter(span.name()::equals).isPresent()) {
                twice.add(span.name());
            }
            before = Optional.of(span.name());
        }
        return twice;
    }

    private LocalDate lastKnown() {
        return known.isEmpty()
                ? periods.registeredFrom().minusDays(1)
                : known.lastEntry().getValue().end();
    }

    /** Cuts one more period; nothing once the registration has ended. */
    private boolean addNext() {
        LocalDate start = lastKnown().plusDays(1);
        if (periods.registeredTo().filter(start::isAfter).isPresent()) {
            return false;
        }
        LocalDate end =
                periods.notified().stream()
                        .filter(n -> n.from().equals(start))
                        .map(NotifiedPeriod::to)
                        .findFirst()
                        .orElseGet(() -> regularEnd(start));
        known.put(start, new Span(start, end));
        return true;
    }

    private LocalDate regularEnd(LocalDate start) {
        List<Month> ends = ends(start);
        YearMonth name = YearMonth.from(start);
        if (!known.isEmpty() && known.lastEntry().getValue().name().equals(name)) {
            name = name.plusMonths(1); // the period before took the name of this month
        }
        while (!ends.contains(name.getMonth())) {
            name = name.plusMonths(1);
        }
        LocalDate end = name.atEndOfMonth();
        Optional<LocalDate> next =
                periods.notified().stream()
                        .map(NotifiedPeriod::from)
                        .filter(start::isBefore)
                        .findFirst()
                        .map(from -> from.minusDays(1));
        return earlier(earlier(end, next), periods.registeredTo());
    }

    private static LocalDate earlier(LocalDate end, Optional<LocalDate> limit) {
        return limit.filter(end::isAfter).orElse(end);
    }

    /** Under annual accounting the year ends as it began, unless the settings name one month. */
    private List<Month> ends(LocalDate start) {
        return periods.annual()
                .filter(a -> !start.isBefore(a.from()) && periods.ends().size() > 1)
                .map(a -> List.of(a.from().minusDays(1).getMonth()))
                .orElse(periods.ends());
    }
}
