package quarterfold.ledger;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteConfig.SynchronousMode;
import org.sqlite.SQLiteOpenMode;

/**
 * The SQLite file of a ledger: how it is opened and brought to the present schema.
 *
 * <p>Write-ahead log, foreign keys on, every commit on the disk before it is reported. Another
 * process's lock is waited for, up to {@code wait}.
 */
final class LedgerFile {

    /** The schema this program writes: the number of its last migration. */
    static final int SCHEMA = 1;

    private static final int CACHE_KIB = 16 * 1024;

    private LedgerFile() {}

    /** Opens an existing ledger, or with {@code create} a new one; migrates where it is behind. */
    static Handle open(Path file, Duration wait, boolean create) {
        if (!create && !Files.isRegularFile(file)) {
            throw new LedgerException(
                    LedgerException.Fault.UNREADABLE,
                    "%s: the ledger is missing; put it back from a copy of the book"
                            .formatted(file));
        }
        try {
            Handle handle = Jdbi.create(() -> connect(file, wait)).open();
            try {
                if (!create && schema(handle) == 0) {
                    throw new LedgerException(
                            LedgerException.Fault.UNREADABLE,
                            "%s: the ledger is empty, without even its tables; put it back from a copy of the book"
                                    .formatted(file));
                }
                migrate(handle, file);
                return handle;
            } catch (RuntimeException e) {
                handle.close();
                throw e;
            }
        } catch (JdbiException e) {
            throw SqlFailure.translate(file, e);
        }
    }

    private static void migrate(Handle handle, Path file) {
        int found = schema(handle);
        if (found < SCHEMA) {
            Migrations.run(file);
            found = schema(handle);
        }
        if (found != SCHEMA) {
            throw new LedgerException(
                    LedgerException.Fault.UNREADABLE,
                    ("%s: found schema %d; this program knows schemas up to %d: the book was last"
                                    + " used by a newer version, use that one")
                            .formatted(file, found, SCHEMA));
        }
    }

    private static int schema(Handle handle) {
        return handle.createQuery("pragma user_version").mapTo(Integer.class).one();
    }

    private static Connection connect(Path file, Duration wait) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setBusyTimeout(Math.toIntExact(wait.toMillis()));
        config.setJournalMode(JournalMode.WAL);
        config.setSynchronous(SynchronousMode.FULL);
        config.enforceForeignKeys(true);
        config.enableRecursiveTriggers(true); // or INSERT OR REPLACE would delete past the triggers
        config.setCacheSize(-CACHE_KIB);
        config.setOpenMode(SQLiteOpenMode.NOMUTEX); // the driver locks already
        return config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
    }
}
