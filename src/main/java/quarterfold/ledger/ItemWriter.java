package quarterfold.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/**
 * Adds items, a batch at a time. An item used lately is not stored again; one that was long ago is.
 * An index that kept each once would cost a file of a million different items five times as long.
 */
final class ItemWriter implements AutoCloseable {

    private final PreparedStatement insert;
    private final Recent<Item> recent = new Recent<>();
    private long last;
    private boolean waiting;

    ItemWriter(Connection connection) throws SQLException {
        insert =
                connection.prepareStatement(
                        "insert into item (id, product, description) values (?, ?, ?)");
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("select coalesce(max(id), 0) from item")) {
            last = row.getLong(1);
        }
    }

    /** The item's number; it is in the table once {@link #flush} has returned. */
    long id(Item item) throws SQLException {
        long known = recent.id(item);
        if (known != 0) {
            return known;
        }
        last++;
        insert.setLong(1, last);
        insert.setString(2, item.product());
        insert.setString(3, item.description());
        insert.addBatch();
        waiting = true;
        recent.put(item, last);
        return last;
    }

    void flush() throws SQLException {
        if (waiting) {
            insert.executeBatch();
            waiting = false;
        }
    }

    @Override
    public void close() throws SQLException {
        insert.close();
    }
}
