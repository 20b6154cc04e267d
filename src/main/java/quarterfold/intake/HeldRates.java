package quarterfold.intake;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import quarterfold.ledger.HeldRate;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.PublishedRate;
import quarterfold.ledger.Publisher;
import quarterfold.ledger.Source;

/**
 * The rates a ledger holds, against which those of a new file are held before they are entered: one
 * publisher has one rate of a currency on a day, whatever file states it. For one thread.
 */
final class HeldRates {

    /** No published rate holds longer. */
    static final int LONGEST = 366;

    private final Ledger ledger;
    private final String name;
    private final Problems problems = new Problems();
    private final Map<Of, NavigableMap<LocalDate, List<HeldRate>>> held = new HashMap<>();

    private record Of(Publisher publisher, String currency) {}

    /**
     * @param name of the new file
     */
    HeldRates(Ledger ledger, String name) {
        this.ledger = ledger;
        this.name = name;
    }

    /** Whether no rate held says otherwise of some day; a problem if one does. */
    boolean agrees(PublishedRate rate) {
        Optional<HeldRate> other = other(rate);
        if (other.isEmpty()) {
            return true;
        }
        problems.add(
                new Problem(
                        name + " row " + rate.row(),
                        rate.currency(),
                        "found %s; expected %s, as %s has it: a publisher has one rate of a day, so find out which file is right"
                                .formatted(rate, other.get().rate(), file(other.get()))));
        return false;
    }

    Problems problems() {
        return problems;
    }

    private String file(HeldRate rate) {
        return ledger.sources().stream()
                .filter(s -> s.id() == rate.source())
                .findFirst()
                .map(Source::name)
                .orElse("source " + rate.source());
    }

    private Optional<HeldRate> other(PublishedRate rate) {
        return held
                .computeIfAbsent(new Of(rate.publisher(), rate.currency()), this::byFirstDay)
                .subMap(rate.first().minusDays(LONGEST), true, rate.last(), true)
                .values()
                .stream()
                .flatMap(List::stream)
                .filter(h -> h.rate().overlaps(rate) && !h.rate().agrees(rate))
                .findFirst();
    }

    private NavigableMap<LocalDate, List<HeldRate>> byFirstDay(Of of) {
        NavigableMap<LocalDate, List<HeldRate>> days = new TreeMap<>();
        for (HeldRate rate : ledger.rates().of(of.publisher(), of.currency())) {
            days.computeIfAbsent(rate.rate().first(), d -> new ArrayList<>()).add(rate);
        }
        return days;
    }
}
