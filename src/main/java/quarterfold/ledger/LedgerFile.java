package quarterfold.ledger;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
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
    static final int SCHEMA = 5;

    private static final int CACHE_KIB = 16 * 1024;

    private LedgerFile() {}

    /** Opens an existing ledger, or with {@code create} a new one; migrates where it is behind. */
    static Connection open(Path file, Duration wait, boolean create) {
        if (!create && !Files.isRegularFile(file)) {
            throw new LedgerException(
                    LedgerException.Fault.UNREADABLE,
                    "%s: the ledger is missing; put it back from a copy of the book"
                            .formatted(file));
        }
        try {
            Connection connection = connect(file, wait);
            try {
                if (!create && schema(connection) == 0) {
                    throw new LedgerException(
                            LedgerException.Fault.UNREADABLE,
                            "%s: the ledger is empty, without even its tables; put it back from a copy of the book"
                                    .formatted(file));
                }
                migrate(connection, file);
                return connection;
            } catch (RuntimeException | SQLException e) {
                connection.close();
                throw e;
            }
        } catch (SQLException e) {
            throw SqlFailure.translate(file, e);
        }
    }

    private static void migrate(Connection connection, Path file) throws SQLException {
        long found = schema(connection);
        if (found < SCHEMA) {
            Migrations.run(file);
            found = schema(connection);
        }
        if (found != SCHEMA) {
            throw new LedgerException(
                    LedgerException.Fault.UNREADABLE,
                    ("%s: found schema %d; this program knows schemas up to %d: the book was last"
                                    + " used by a newer version, use that one")
                            .formatted(file, found, SCHEMA));
        }
    }

    private static long schema(Connection connection) throws SQLException {
        return Sql.number(connection, "pragma user_version");
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
