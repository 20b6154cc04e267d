package quarterfold.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import quarterfold.ledger.FileEntry;
import quarterfold.ledger.Line;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;

/**
 * Carries the rows of one file to where they go: one thread reads and makes lines, the caller's
 * gives them, with a short queue of batches between them. Adds up the control totals, money in from
 * the cells on the reading side and money entered from the lines on the other.
 */
final class Transfer {
    private static final int BATCH = 1_024;
    private static final int WAITING = 8;

    private record Aside(long row, String reason) {}

    private record Batch(List<Line> lines, List<Aside> asides, boolean isLast) {
        static Batch empty() {
            return new Batch(new ArrayList<>(BATCH), new ArrayList<>(), false);
        }
    }

    private final Reading reading;
    private final Problems problems;
    private final BlockingQueue<Batch> queue = new ArrayBlockingQueue<>(WAITING);
    private volatile boolean stopped;
    private Batch batch = Batch.empty();
    private long rowsRead;
    private long moneyIn;
    private Optional<Throwable> failure = Optional.empty();
    private long rowsEntered;
    private long lastRow;
    private Amount moneyEntered = Amount.ZERO;

    Transfer(Reading reading, Problems problems) {
        this.reading = reading;
        this.problems = problems;
    }

    long rowsRead() {
        return rowsRead;
    }

    Problems problems() {
        return problems;
    }

    /** Reads to the end of the file; lines are given until the first problem is found. */
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
    }

    Source commit(FileEntry entry) {
        return entry.commit(rowsRead, rowsEntered, new Amount(moneyIn), moneyEntered);
    }

    private void give(RowReader.Output to) throws InterruptedException {
        boolean last = false;
        while (!last) {
            Batch next = queue.take();
            last = next.isLast();
            for (Line line : next.lines()) {
                to.line(line);
                moneyEntered = moneyEntered.plus(line.signedMoney());
                if (line.row() != lastRow) {
                    lastRow = line.row();
                    rowsEntered++;
                }
            }
            for (Aside aside : next.asides()) {
                to.setAside(aside.row(), aside.reason());
            }
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
                if (batch.lines().size() >= BATCH || batch.asides().size() >= BATCH) {
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
        try {
            moneyIn = Math.addExact(moneyIn, reading.read(output));
        } catch (ArithmeticException tooMuch) {
            reading.fault(
                    "found amounts that add up to more than 922 million million; expected less, such as the file in parts");
        }
    }

    private void send(boolean last) {
        Batch full = new Batch(batch.lines(), batch.asides(), last);
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
        public void setAside(long number, String reason) {
            if (problems.none()) {
                batch.asides().add(new Aside(number, reason));
            }
        }
    }
}
