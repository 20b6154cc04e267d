package quarterfold.intake;

import java.util.function.Supplier;

/**
 * Stops the bringing in of files from another thread, as when a person interrupts it. From the wish
 * on nothing more is entered; the file at work is given up at its next rows.
 */
public final class Stop {
    private String file = "";
    private int entered;
    private boolean wished;

    /** What the work ends with that was stopped. */
    public static final class Stopped extends RuntimeException {
        private static final long serialVersionUID = 1;

        Stopped(String outcome) {
            super(outcome);
        }
    }

    /** Nothing more is entered from now on; a file about to be is waited for. */
    public synchronized void wish() {
        wished = true;
    }

    /** What a person must know once it is stopped. */
    public synchronized String outcome() {
        if (entered == 0) {
            return "Interrupted: nothing was entered.";
        }
        String files = entered == 1 ? "file" : "%d files".formatted(entered);
        String are = entered == 1 ? "is" : "are";
        return file.isEmpty()
                ? "Interrupted: the %s entered %s in the book whole; nothing else was entered."
                        .formatted(files, are)
                : "Interrupted: nothing of %s was entered; the %s entered before it %s in the book whole."
                        .formatted(file, files, are);
    }

    /** A file is begun. */
    synchronized void begin(String name) throws Stopped {
        file = name;
        check();
    }

    synchronized void check() throws Stopped {
        if (wished) {
            throw new Stopped(outcome());
        }
    }

    /** Enters the file for good, unless it is to be stopped. */
    synchronized <T> T entering(Supplier<T> commit) throws Stopped {
        check();
        T done = commit.get();
        entered++;
        file = ""; // it is at work no more, so that nothing false is said of it
        return done;
    }
}
