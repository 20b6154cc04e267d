package quarterfold.cli;

import java.io.Console;
import java.io.PrintWriter;
import java.util.function.LongSupplier;
import quarterfold.intake.Watch;

/**
 * A bar on a terminal while files are brought in, drawn over itself in plain characters: no colour,
 * no mark but the carriage return. Work that is soon done shows none.
 */
final class ProgressBar implements Watch {
    private static final long FIRST = 700_000_000;
    private static final long AGAIN = 100_000_000;
    private static final int CELLS = 24;
    private static final int WIDTH = 78;

    private final PrintWriter err;
    private final LongSupplier nanoseconds;
    private final long begun;
    private long drawn;
    private boolean shown;
    private String name = "";
    private long done;
    private long all;
    private long rows;

    /** {@code nanoseconds}: a clock that only its own differences mean something of. */
    ProgressBar(PrintWriter err, LongSupplier nanoseconds) {
        this.err = err;
        this.nanoseconds = nanoseconds;
        begun = nanoseconds.getAsLong();
        drawn = begun;
    }

    /** A bar where a person sees it: on a terminal, and one that moves its cursor. */
    static Watch on(PrintWriter err) {
        return isTerminal() ? new ProgressBar(err, System::nanoTime) : Watch.NOBODY;
    }

    // From JDK 22 there is a console without a terminal too; it knows.
    @SuppressWarnings("SystemConsoleNull")
    private static boolean isTerminal() {
        Console console = System.console();
        if (console == null || "dumb".equals(System.getenv("TERM"))) {
            return false;
        }
        try {
            return Boolean.TRUE.equals(Console.class.getMethod("isTerminal").invoke(console));
        } catch (NoSuchMethodException before22) {
            return true;
        } catch (ReflectiveOperationException e) {
            return false;
        }
    }

    @Override
    public void file(String begunFile, long doneBytes, long allBytes) {
        name = begunFile;
        done = doneBytes;
        all = allBytes;
        rows = 0;
        draw();
    }

    @Override
    public void rows(long entered) {
        rows = entered;
        draw();
    }

    private void draw() {
        long now = nanoseconds.getAsLong();
        if (now - begun < FIRST || (shown && now - drawn < AGAIN)) {
            return;
        }
        drawn = now;
        shown = true;
        long parts = all == 0 ? 0 : Math.min(CELLS, CELLS * done / all);
        String bar = "#".repeat((int) parts) + ".".repeat(CELLS - (int) parts);
        String count = rows == 0 ? "" : "  " + Texts.grouped(Long.toString(rows)) + " entries";
        String text =
                "[%s] %3d%%  %s%s"
                        .formatted(
                                bar,
                                all == 0 ? 0 : 100 * done / all,
                                Texts.middle(name, 26),
                                count);
        err.print("\r" + padded(text));
        err.flush();
    }

    private static String padded(String text) {
        return text.length() >= WIDTH
                ? text.substring(0, WIDTH)
                : text + " ".repeat(WIDTH - text.length());
    }

    /** Wipes the bar away, so that what is printed next has the line to itself. */
    @Override
    public void wipe() {
        if (shown) {
            err.print("\r" + " ".repeat(WIDTH) + "\r");
            err.flush();
            shown = false;
        }
    }

    @Override
    public void end() {
        if (shown) {
            err.println();
            err.flush();
            shown = false;
        }
    }
}
