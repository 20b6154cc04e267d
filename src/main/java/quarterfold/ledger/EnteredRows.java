package quarterfold.ledger;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;

/** The rows of one source that made entries, each once, in the order they were entered. */
public final class EnteredRows implements AutoCloseable {

    private final Path file;
    private final PreparedStatement statement;
    private final ResultSet result;
    private long row = Long.MIN_VALUE;
    private long number;

    EnteredRows(Path file, Connection connection, Source source) throws SQLException {
        this.file = file;
        statement =
                connection.prepareStatement(
                        "select row, number from entry where number between ? and ? order by number");
        statement.setLong(1, source.firstEntry());
        statement.setLong(2, source.firstEntry() + source.entries() - 1);
        result = statement.executeQuery();
    }

    /** Moves to the next row; false after the last. */
    public boolean next() {
        return Transaction.run(file, this::move);
    }

    private boolean move() throws SQLException {
        long last = row;
        while (result.next()) {
            row = result.getLong(1);
            if (row != last) {
                number = result.getLong(2);
                return true;
            }
        }
        return false;
    }

    /** The row's number in the file. */
    public long row() {
        return row;
    }

    /** The number of its first entry. */
    public long number() {
        return number;
    }

    @Override
    public void close() {
        Transaction.run(
                file,
                () -> {
                    result.close();
                    statement.close();
                    return true;
                });
    }
}
