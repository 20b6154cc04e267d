package quarterfold.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;

/** Adds rows set aside, a batch at a time: of a file that repeats another they are many. */
final class SetAsideWriter implements AutoCloseable {
    private static final int BATCH = 1_000;

    private final PreparedStatement insert;
    private final long source;
    private int waiting;

    SetAsideWriter(Connection connection, long source) throws SQLException {
        insert =
                connection.prepareStatement(
                        "insert into set_aside (source, row, reason) values (?, ?, ?)");
        this.source = source;
    }

    void add(long row, String reason) throws SQLException {
        insert.setLong(1, source);
        insert.setLong(2, row);
        insert.setString(3, reason);
        insert.addBatch();
        if (++waiting == BATCH) {
            flush();
        }
    }

    void flush() throws SQLException {
        insert.executeBatch();
        waiting = 0;
    }

    @Override
    public void close() throws SQLException {
        insert.close();
    }
}
