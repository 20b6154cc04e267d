package quarterfold.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.jspecify.annotations.Nullable;

/**
 * The values of an interned table by their number. Remembers up to {@link #SLOTS}, each in the slot
 * its number falls in, so memory stays flat and looking one up makes no garbage.
 */
final class ById<T> implements AutoCloseable {
    private static final int SLOTS = 1 << 15;

    /** Makes a value of a row; its first column is the number. */
    interface Reader<T> {
        T read(ResultSet row) throws SQLException;
    }

    private final PreparedStatement find;
    private final Reader<T> reader;
    private final long[] ids = new long[SLOTS];
    private final @Nullable Object[] values = new Object[SLOTS];

    ById(Connection connection, String table, Reader<T> reader) throws SQLException {
        this.find = connection.prepareStatement("select * from %s where id = ?".formatted(table));
        this.reader = reader;
    }

    T get(long id) throws SQLException {
        int slot = (int) id & (SLOTS - 1);
        if (ids[slot] == id) {
            Object value = values[slot];
            if (value != null) {
                @SuppressWarnings("unchecked") // only values of T are put in
                T known = (T) value;
                return known;
            }
        }
        find.setLong(1, id);
        try (ResultSet row = find.executeQuery()) {
            if (!row.next()) {
                throw new IllegalStateException("the ledger refers to a missing row " + id);
            }
            T value = reader.read(row);
            ids[slot] = id;
            values[slot] = value;
            return value;
        }
    }

    @Override
    public void close() throws SQLException {
        find.close();
    }
}
