package quarterfold.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.jspecify.annotations.Nullable;

/**
 * The rows of a table by their number. Remembers a power of two of them, each in the slot its
 * number falls in, so memory stays flat and looking one up makes no garbage. Rows asked for one
 * after the other, as those stored when they were met are, come many at a time.
 */
final class ById<T> implements AutoCloseable {
    /** For reading many rows. */
    static final int MANY = 1 << 16;

    /** For reading one row. */
    static final int ONE = 1;

    private static final int AHEAD = 256;

    /** Makes a value of a row; its first column is the number. */
    interface Reader<T> {
        T read(ResultSet row) throws SQLException;
    }

    private final PreparedStatement find;
    private final Reader<T> reader;
    private final long[] ids;
    private final @Nullable Object[] values;
    private long next;

    ById(Connection connection, String table, int slots, Reader<T> reader) throws SQLException {
        this.find =
                connection.prepareStatement(
                        "select * from %s where id >= ? order by id limit ?".formatted(table));
        this.reader = reader;
        this.ids = new long[slots];
        this.values = new Object[slots];
    }

    T get(long id) throws SQLException {
        if (!holds(id)) {
            fetch(id);
        }
        Object value = values[slot(id)];
        if (value == null || !holds(id)) {
            throw new IllegalStateException("the ledger refers to a missing row " + id);
        }
        @SuppressWarnings("unchecked") // only values of T are put in
        T known = (T) value;
        return known;
    }

    private boolean holds(long id) {
        return ids[slot(id)] == id;
    }

    private int slot(long id) {
        return (int) id & (ids.length - 1);
    }

    private void fetch(long id) throws SQLException {
        find.setLong(1, id);
        find.setInt(2, id == next ? Math.min(AHEAD, ids.length) : 1);
        next = id + 1;
        try (ResultSet rows = find.executeQuery()) {
            while (rows.next()) {
                long found = rows.getLong(1);
                ids[slot(found)] = found;
                values[slot(found)] = reader.read(rows);
                next = found + 1;
            }
        }
    }

    @Override
    public void close() throws SQLException {
        find.close();
    }
}
