package quarterfold.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import java.util.Optional;
import quarterfold.money.Amount;

/** Adds entries, a batch at a time. */
final class EntryWriter implements AutoCloseable {
    private static final int BATCH = 1_000;
    private static final String INSERT =
            "insert into entry (number, row, tax_point, profile, item, order_number, document, net,"
                    + " vat, gross, paid, original, notes, particulars) values"
                    + " (?,?,?,?,?,?,?,?,?,?,?,?,?,?)";

    private final PreparedStatement insert;
    private final Interned<Profile> profiles;
    private final ItemWriter items;
    private int waiting;

    EntryWriter(Connection connection) throws SQLException {
        insert = connection.prepareStatement(INSERT);
        profiles = new Interned<>(connection, "profile", ProfileTable.TEXTS);
        items = new ItemWriter(connection);
    }

    void add(long number, Line line) throws SQLException {
        insert.setLong(1, number);
        insert.setLong(2, line.row());
        insert.setLong(3, line.taxPoint().toEpochDay());
        insert.setLong(4, profiles.id(line.profile()));
        insert.setLong(5, items.id(line.item()));
        text(6, line.order());
        text(7, line.document());
        amount(8, line.amounts().net());
        amount(9, line.amounts().vat());
        amount(10, line.amounts().gross());
        if (line.paid().isPresent()) {
            insert.setLong(11, line.paid().get().toEpochDay());
        } else {
            insert.setNull(11, Types.INTEGER);
        }
        text(12, line.original());
        text(13, line.notes());
        text(14, line.particulars().text());
        insert.addBatch();
        if (++waiting == BATCH) {
            flush();
        }
    }

    void flush() throws SQLException {
        items.flush(); // before the entries that refer to them
        insert.executeBatch();
        waiting = 0;
    }

    private void text(int column, String text) throws SQLException {
        if (text.isEmpty()) {
            insert.setNull(column, Types.VARCHAR);
        } else {
            insert.setString(column, text);
        }
    }

    private void amount(int column, Optional<Amount> amount) throws SQLException {
        if (amount.isPresent()) {
            insert.setLong(column, amount.get().tenThousandths());
        } else {
            insert.setNull(column, Types.INTEGER);
        }
    }

    @Override
    public void close() throws SQLException {
        insert.close();
        profiles.close();
        items.close();
    }
}
