package quarterfold.intake;

import java.util.Optional;
import java.util.Set;
import quarterfold.ledger.FileEntry;
import quarterfold.ledger.Line;
import quarterfold.ledger.PublishedRate;

/** Where the rows of a file go that is being entered. For one thread. */
final class Into implements RowReader.Output {
    private static final int TOLD = 4_096;

    private final FileEntry entry;
    private final HeldRates held;
    private final Attaching attaching;
    private final Watch watch;
    private final Stop stop;
    private final Contents contents = new Contents();
    private Optional<Ask> ask = Optional.empty();
    private long lines;
    private long rates;

    Into(FileEntry entry, HeldRates held, Attaching attaching, Watch watch, Stop stop) {
        this.entry = entry;
        this.held = held;
        this.attaching = attaching;
        this.watch = watch;
        this.stop = stop;
    }

    @Override
    public void line(Line line) {
        entry.add(line);
        ask.filter(a -> a.isOf(line)).ifPresent(a -> entry.asked(a.about()));
        contents.add(line);
        if (++lines % TOLD == 0) {
            stop.check();
            watch.rows(lines);
        }
    }

    @Override
    public void asked(Ask next) {
        ask = Optional.of(next);
    }

    @Override
    public void rate(PublishedRate rate) {
        if (held.agrees(rate)) {
            entry.add(rate);
            rates++;
        }
    }

    @Override
    public void setAside(long row, String reason) {
        entry.setAside(row, reason);
    }

    @Override
    public void attach(Named document) {
        attaching.add(document);
    }

    /** How many exchange rates were entered. */
    long rates() {
        return rates;
    }

    /** The currencies of the entries. */
    Set<String> currencies() {
        return contents.currencies();
    }

    /** One word for what the file holds; empty where there are no lines. */
    String contents() {
        return contents.word();
    }

    /** Adds what is wrong with what came. */
    void tell(Problems problems) {
        problems.addAll(held.problems());
    }
}
