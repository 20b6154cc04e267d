package quarterfold.intake;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import quarterfold.ledger.PublishedRate;

/**
 * A file of exchange rates being read. The tax authority's has a row for each country, so that a
 * currency comes more than once: rows that repeat a rate are set aside, rows that say otherwise of
 * the same days are problems. For one thread.
 */
final class RateReading implements Reading {

    /** The most rates a file may have; every currency's every day of 60 years is fewer. */
    private static final int MOST = 1_000_000;

    private final String layout;
    private final String name;
    private final RateRows rows;
    private final Problems problems;
    private final Map<String, NavigableMap<LocalDate, PublishedRate>> seen = new HashMap<>();
    private long count;

    RateReading(String layout, Brought file, RateRows rows) {
        this.layout = layout;
        this.name = file.name();
        this.rows = rows;
        this.problems = file.problems();
    }

    @Override
    public String layout() {
        return layout;
    }

    @Override
    public String kind() {
        return "rates";
    }

    @Override
    public boolean next() throws BadFile {
        if (count > MOST) {
            throw new BadFile(
                    name,
                    "found more than %,d exchange rates; expected fewer, such as the file of one month"
                            .formatted(MOST));
        }
        return rows.next();
    }

    @Override
    public long read(RowReader.Output output) {
        List<String> repeats = new ArrayList<>();
        boolean entered = false;
        for (PublishedRate rate : rows.rates(problems)) {
            Optional<PublishedRate> earlier = earlier(rate);
            if (earlier.isEmpty()) {
                seen.computeIfAbsent(rate.currency(), c -> new TreeMap<>()).put(rate.first(), rate);
                output.rate(rate);
                entered = true;
                count++;
            } else if (isRepeated(earlier.get(), rate)) {
                repeats.add(rate.currency() + " as in row " + earlier.get().row());
            } else {
                problems.add(
                        new Problem(
                                rows.place(),
                                rate.currency(),
                                "found %s; expected what it says of those days before, %s; ask the publisher which is right"
                                        .formatted(rate, earlier.get())));
            }
        }
        if (!entered && !repeats.isEmpty()) {
            output.setAside(rows.number(), "the same rate again: " + String.join(", ", repeats));
        }
        return 0;
    }

    /** What the file has said before of one of the rate's days. */
    private Optional<PublishedRate> earlier(PublishedRate rate) {
        NavigableMap<LocalDate, PublishedRate> days = seen.get(rate.currency());
        return Optional.ofNullable(days)
                .map(d -> d.floorEntry(rate.last()))
                .map(Map.Entry::getValue)
                .filter(rate::overlaps);
    }

    private static boolean isRepeated(PublishedRate earlier, PublishedRate rate) {
        return earlier.agrees(rate)
                && earlier.first().equals(rate.first())
                && earlier.last().equals(rate.last());
    }

    @Override
    public void fault(String fault) {
        problems.add(new Problem(rows.place(), "", fault));
    }

    @Override
    public void finish() throws BadFile {
        if (count == 0) {
            throw new BadFile(
                    name, "found no exchange rate; expected at least one, such as 1.1719 for EUR");
        }
    }

    @Override
    public void raise(Payouts.Raise raise) {}

    @Override
    public void close() throws IOException {
        rows.close();
    }
}
