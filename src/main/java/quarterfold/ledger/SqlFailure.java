package quarterfold.ledger;

import java.nio.file.Path;
import org.sqlite.NativeLibraryNotFoundException;
import org.sqlite.SQLiteException;

/** A failure of the database, told as what a person can do about it. */
final class SqlFailure {
    private SqlFailure() {}

    /** A {@link LedgerException} for a failing file or a lock; anything else is a fault of ours. */
    static RuntimeException translate(Path file, Exception failure) {
        for (Throwable t = failure; t != null; t = t.getCause()) {
            if (t instanceof SQLiteException e) {
                return sqlite(file, e);
            }
            if (t instanceof NativeLibraryNotFoundException e) {
                return unreadable(
                        file,
                        "the ledger could not be opened: SQLite is unpacked into the folder for temporary files, %s, and has to run from there; name a folder where it can with java -Djava.io.tmpdir=DIR"
                                .formatted(System.getProperty("java.io.tmpdir")),
                        e);
            }
        }
        return failure instanceof RuntimeException r ? r : new IllegalStateException(failure);
    }

    private static RuntimeException sqlite(Path file, SQLiteException e) {
        int primary = e.getResultCode().code & 0xff;
        return switch (primary) {
            case 5, 6 -> // SQLITE_BUSY, SQLITE_LOCKED
                    new LedgerException(
                            LedgerException.Fault.IN_USE,
                            ("%s: the book is in use by another quarterfold process; nothing was"
                                            + " changed, try again when it has finished")
                                    .formatted(file),
                            e);
            case 8 -> unreadable(file, "the ledger may not be written to", e);
            case 10, 14 -> unreadable(file, "the ledger could not be read or written", e);
            case 11 -> unreadable(file, "the ledger is damaged; use a copy of the book", e);
            case 13 -> unreadable(file, "the disk is full; nothing was changed", e);
            case 26 -> unreadable(file, "this is not a ledger; use a copy of the book", e);
            default -> new IllegalStateException(file + ": " + e.getMessage(), e);
        };
    }

    private static LedgerException unreadable(Path file, String what, Exception e) {
        return new LedgerException(
                LedgerException.Fault.UNREADABLE,
                "%s: %s (%s)".formatted(file, what, e.getMessage()),
                e);
    }
}
