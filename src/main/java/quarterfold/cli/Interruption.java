package quarterfold.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import quarterfold.intake.Stop;

/**
 * Ctrl-C, or another signal that ends a process, while files are brought in: the work is stopped
 * and given a moment to put away what it has begun. What is left after that, the next import
 * clears.
 */
final class Interruption implements AutoCloseable {
    private static final long SECONDS = 3;

    private final Stop stop;
    private final Consumer<String> tell;
    private final CountDownLatch ended = new CountDownLatch(1);
    private final AtomicBoolean told = new AtomicBoolean();
    private final Thread hook = new Thread(this::interrupted, "interruption");

    private Interruption(Stop stop, Consumer<String> tell) {
        this.stop = stop;
        this.tell = tell;
    }

    /**
     * Stops the work when a signal comes, until it is closed; {@code tell} says what became of it.
     */
    static Interruption of(Stop stop, Consumer<String> tell) {
        Interruption interruption = new Interruption(stop, tell);
        try {
            Runtime.getRuntime().addShutdownHook(interruption.hook);
        } catch (IllegalStateException shuttingDown) {
            stop.wish();
        }
        return interruption;
    }

    /** Says, once, what became of the work. */
    void tell(String outcome) {
        if (told.compareAndSet(false, true)) {
            tell.accept(outcome);
        }
    }

    /** On a thread of its own, after which the process ends. */
    private void interrupted() {
        stop.wish();
        try {
            if (!ended.await(SECONDS, TimeUnit.SECONDS)) {
                tell(stop.outcome());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** The work has ended, and all that is to be said of it is said. */
    @Override
    public void close() {
        ended.countDown();
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException shuttingDown) {
            // The hook is at work, and waits for no more than this.
        }
    }
}
