package quarterfold.ledger;

import java.io.IOException;
import java.util.Objects;

/**
 * Something about a book that a person must put right. The message is written for that person: the
 * place, what was found, what was expected, and what to do.
 */
public final class LedgerException extends RuntimeException {
    private static final long serialVersionUID = 1;

    /** What kind of trouble it is. */
    public enum Fault {
        /** What was asked is refused by the book's own rules, such as a second close. */
        REFUSED(1),
        /** The command names a place where the book is not, or already is. */
        USAGE(2),
        /** A file of the book, or a file brought to it, says something it may not. */
        BAD_INPUT(65),
        /** A file or the ledger cannot be read or written. */
        UNREADABLE(74),
        /** Another process is writing to the book. */
        IN_USE(74);

        private final int exitCode;

        Fault(int exitCode) {
            this.exitCode = exitCode;
        }

        /** The exit code of a command that meets it. */
        public int exitCode() {
            return exitCode;
        }
    }

    private final Fault fault;

    public LedgerException(Fault fault, String message) {
        super(message);
        this.fault = fault;
    }

    LedgerException(Fault fault, String message, Throwable cause) {
        super(message, cause);
        this.fault = fault;
    }

    /** A file that cannot be read or written; {@code doing} such as {@code "copy it"}. */
    static LedgerException file(Object file, String doing, IOException cause) {
        return new LedgerException(
                Fault.UNREADABLE,
                "%s: could not %s: %s".formatted(file, doing, IoText.of(cause)),
                cause);
    }

    @Override
    public String getMessage() {
        return Objects.requireNonNullElse(super.getMessage(), "");
    }

    public Fault fault() {
        return fault;
    }
}
