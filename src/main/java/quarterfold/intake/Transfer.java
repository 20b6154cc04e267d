package quarterfold.intake;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import quarterfold.ledger.FileEntry;
import quarterfold.ledger.Line;
import quarterfold.ledger.PublishedRate;
import quarterfold.ledger.RaisedQuery;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;

/**
 * Carries the rows of one file to where they go: one thread reads and makes lines, the caller's
 * gives them, with a short queue of batches between them. Adds up the control totals, money in from
 * the cells on the reading side and money entered from the lines on the other. Settlements are tied
 * on the reading side, by all rows, also those that repeat an earlier file's.
 */
final class Transfer {
    private static final int BATCH = 1_024;
    private static final int WAITING = 8;

    private record Aside(long row, String reason) {}

    /** {@code marks} are of the rows among them that may repeat an earlier file's. */
    private record Batch(
            List<Line> lines,
            List<Aside> asides,
            List<PublishedRate> rates,
            List<Named> documents,
            List<RowMark> marks,
            List<Ask> asks,
            boolean isLast) {
        static Batch empty() {
            return new Batch(
                    new ArrayList<>(BATCH),
                    new ArrayList<>(),
                    new ArrayList<>(),
                    new ArrayList<>(),
                    new ArrayList<>(),
                    new ArrayList<>(),
                    false);
        }

        boolean isFull() {
            return lines.size() >= BATCH || asides.size() >= BATCH || rates.size() >= BATCH;
        }

        Batch last() {
            return new Batch(lines, asides, rates, documents, marks, asks, true);
        }
    }

    private final Reading reading;
    private final Repeats repeats;
    private final Problems problems;
    private final BlockingQueue<Batch> queue = new ArrayBlockingQueue<>(WAITING);
    private volatile boolean stopped;
    private Batch batch = Batch.empty();
    private long rowsRead;
    private long moneyIn;
    private Optional<Throwable> failure = Optional.empty();
    private OptionalLong tooMuch = OptionalLong.empty();
    private long row;
    private long rowsEntered;
    private long lastRow;
    private Amount moneyEntered = Amount.ZERO;
    private Iterator<Ask> asks = Collections.emptyIterator();
    private Optional<Ask> ask = Optional.empty();
    private final Set<String> asked = new HashSet<>();

    Transfer(Reading reading, Repeats repeats, Problems problems) {
        this.reading = reading;
        this.repeats = repeats;
        this.problems = problems;
    }

    long rowsRead() {
        return rowsRead;
    }

    Problems problems() {
        return problems;
    }

    /**
     * Reads to the end of the file; lines are given until the first problem is found. A row that
     * repeats an earlier file's is set aside in their place.
     */
    void run(RowReader.Output to) {
        Thread thread = new Thread(this::read, "intake");
        thread.setDaemon(true);
        thread.start();
        try {
            give(to);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while entering a file", e);
        } finally {
            stop(thread);
        }
        failure.ifPresent(
                thrown -> {
                    if (thrown instanceof Error error) {
                        throw error;
                    }
                    throw (RuntimeException) thrown;
                });
        if (problems.none() && tooMuch.isPresent()) {
            problems.add(
                    new Problem(
                            repeats.file(),
                            "",
                            "found entries up to row %d that add up to more than 922 million million; expected less, such as the file in parts"
                                    .formatted(tooMuch.getAsLong())));
        }
        if (problems.none()) {
            repeats.judge(problems);
        }
    }

    /** Rows that an earlier file has too, and that were set aside. */
    Repeated repeated() {
        return repeats.repeated();
    }

    /**
     * Raises the questions that the file as a whole asks; what rows are is asked of those entered,
     * not of such as all repeat an earlier file's, which asked it.
     */
    void raise(Payouts.Raise raise) {
        reading.raise(
                (code, about, question) -> {
                    if (!code.equals(RaisedQuery.KIND_UNKNOWN) || asked.contains(about)) {
                        raise.query(code, about, question);
                    }
                });
        repeats.raise(raise);
    }

    Source commit(FileEntry entry) {
        return entry.commit(
                rowsRead, rowsEntered, new Amount(moneyIn), moneyEntered, repeated().money());
    }

    private void give(RowReader.Output to) throws InterruptedException {
        boolean last = false;
        while (!last) {
            Batch next = queue.take();
            last = next.isLast();
            if (tooMuch.isEmpty()) {
                enter(next, to);
            }
            for (PublishedRate rate : next.rates()) {
                to.rate(rate);
                entered(rate.row());
            }
            for (Aside aside : next.asides()) {
                to.setAside(aside.row(), aside.reason());
            }
            next.documents().forEach(to::attach);
        }
    }

    private void entered(long row) {
        if (row != lastRow) {
            lastRow = row;
            rowsEntered++;
        }
    }

    /** Enters a batch, as far as its money can be added up: the file is refused where not. */
    private void enter(Batch next, RowReader.Output to) {
        asks = next.asks().iterator();
        ask = next(asks);
        try {
            if (next.marks().isEmpty()) {
                enter(next.lines(), to);
            } else {
                meet(next.lines(), next.marks().iterator(), to);
            }
        } catch (ArithmeticException beyond) {
            tooMuch = OptionalLong.of(row);
        }
    }

    private void enter(List<Line> lines, RowReader.Output to) {
        for (Line line : lines) {
            row = line.row();
            askOf(row, to);
            to.line(line);
            moneyEntered = moneyEntered.plus(line.signedMoney());
            entered(line.row());
        }
    }

    /** Gives the question about a row before its lines; that of a row set aside is passed over. */
    private void askOf(long number, RowReader.Output to) {
        while (ask.isPresent() && ask.get().row() <= number) {
            if (ask.get().row() == number) {
                asked.add(ask.get().about());
                to.asked(ask.get());
            }
            ask = next(asks);
        }
    }

    private static Optional<Ask> next(Iterator<Ask> asks) {
        return asks.hasNext() ? Optional.of(asks.next()) : Optional.empty();
    }

    /** Enters the rows that do not repeat an earlier file's, and sets the others aside. */
    private void meet(List<Line> lines, Iterator<RowMark> marks, RowReader.Output to) {
        RowMark mark = marks.next();
        int start = 0;
        while (start < lines.size()) {
            row = lines.get(start).row();
            int end = start + 1;
            while (end < lines.size() && lines.get(end).row() == row) {
                end++;
            }
            List<Line> ofRow = lines.subList(start, end);
            Optional<String> aside = Optional.empty();
            if (mark.row() == row) {
                aside = repeats.meet(mark, ofRow);
                mark = marks.hasNext() ? marks.next() : mark;
            }
            if (aside.isPresent()) {
                to.setAside(row, aside.get());
            } else {
                enter(ofRow, to);
            }
            start = end;
        }
    }

    private void stop(Thread thread) {
        stopped = true;
        boolean interrupted = false;
        while (thread.isAlive()) {
            queue.clear();
            try {
                thread.join(10);
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    private void read() {
        try {
            RowReader.Output output = new Sender();
            while (!stopped && reading.next()) {
                rowsRead++;
                readRow(output);
                if (batch.isFull()) {
                    send(false);
                }
            }
        } catch (BadFile e) {
            problems.add(e.problem());
        } catch (RuntimeException | Error e) {
            failure = Optional.of(e);
        } finally {
            send(true);
        }
    }

    private void readRow(RowReader.Output output) {
        int before = batch.lines().size();
        try {
            moneyIn = Math.addExact(moneyIn, reading.read(output));
            if (batch.lines().size() > before
                    && repeats.concern(batch.lines().get(before).taxPoint())) {
                batch.marks().add(reading.mark());
            }
        } catch (ArithmeticException tooMuch) {
            reading.fault(
                    "found amounts that add up to more than 922 million million; expected less, such as the file in parts");
        }
    }

    private void send(boolean last) {
        Batch full = last ? batch.last() : batch;
        batch = Batch.empty();
        try {
            queue.put(full);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Once there is a problem nothing will be entered, so nothing more is sent. */
    private final class Sender implements RowReader.Output {
        @Override
        public void line(Line line) {
            if (problems.none()) {
                batch.lines().add(line);
            }
        }

        @Override
        public void asked(Ask next) {
            batch.asks().add(next);
        }

        @Override
        public void rate(PublishedRate rate) {
            if (problems.none()) {
                batch.rates().add(rate);
            }
        }

        @Override
        public void setAside(long number, String reason) {
            if (problems.none()) {
                batch.asides().add(new Aside(number, reason));
            }
        }

        @Override
        public void attach(Named document) {
            batch.documents().add(document);
        }
    }
}
