package quarterfold.ledger;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;

/**
 * One all-or-nothing change of the ledger, under the lock that keeps every other writer out from
 * its first moment. Rolled back unless committed.
 */
final class Transaction implements AutoCloseable {

    /** Work on the database whose failures are told in words. */
    interface Work<T> {
        T run() throws SQLException;
    }

    private final Path file;
    private final Connection connection;
    private boolean open;

    /** Waits for another process's transaction; then gives up with a message that says so. */
    Transaction(Path file, Connection connection) {
        this.file = file;
        this.connection = connection;
        execute("begin immediate");
        open = true;
    }

    void commit() {
        execute("commit");
        open = false;
    }

    /** A change of the database that gives nothing back. */
    interface Step {
        void run() throws SQLException;
    }

    void step(Step step) {
        run(
                file,
                () -> {
                    step.run();
                    return file;
                });
    }

    /** The failure in words. */
    RuntimeException failure(SQLException e) {
        return SqlFailure.translate(file, e);
    }

    <T> T run(Work<T> work) {
        return run(file, work);
    }

    static <T> T run(Path file, Work<T> work) {
        try {
            return work.run();
        } catch (SQLException e) {
            throw SqlFailure.translate(file, e);
        }
    }

    private void execute(String sql) {
        step(
                () -> {
                    try (Statement statement = connection.createStatement()) {
                        statement.execute(sql);
                    }
                });
    }

    @Override
    public void close() {
        if (open) {
            open = false;
            execute("rollback");
        }
    }
}
