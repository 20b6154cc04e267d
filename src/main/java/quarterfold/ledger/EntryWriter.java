package quarterfold.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quarterfold.money.Amount;

/** Adds entries, several with one statement: each statement is some calls into the driver. */
final class EntryWriter implements AutoCloseable {
    private static final int TOGETHER = 50;
    private static final List<String> COLUMNS =
            List.of(
                    "number",
                    "row",
                    "tax_point",
                    "profile",
                    "item",
                    "order_number",
                    "document",
                    "net",
                    "vat",
                    "gross",
                    "paid",
                    "original",
                    "notes",
                    "particulars");

    private final Connection connection;
    private final PreparedStatement insert;
    private final Interned<Profile> profiles;
    private final ItemWriter items;
    private final List<Line> waiting = new ArrayList<>(TOGETHER);
    private long first;

    EntryWriter(Connection connection) throws SQLException {
        this.connection = connection;
        insert = connection.prepareStatement(insert(TOGETHER));
        profiles = new Interned<>(connection, "profile", ProfileTable.TEXTS);
        items = new ItemWriter(connection);
    }

    private static String insert(int entries) {
        String one = "(" + String.join(",", COLUMNS.stream().map(c -> "?").toList()) + ")";
        return "insert into entry (%s) values %s"
                .formatted(String.join(", ", COLUMNS), (one + ",").repeat(entries - 1) + one);
    }

    /** {@code number}: one more than that of the line before. */
    void add(long number, Line line) throws SQLException {
        if (waiting.isEmpty()) {
            first = number;
        }
        waiting.add(line);
        if (waiting.size() == TOGETHER) {
            write(insert);
        }
    }

    /** Writes what waits still. */
    void flush() throws SQLException {
        if (!waiting.isEmpty()) {
            try (PreparedStatement rest = connection.prepareStatement(insert(waiting.size()))) {
                write(rest);
            }
        }
    }

    private void write(PreparedStatement to) throws SQLException {
        for (int i = 0; i < waiting.size(); i++) {
            bind(to, i * COLUMNS.size(), first + i, waiting.get(i));
        }
        items.flush(); // before the entries that refer to them
        to.executeUpdate();
        waiting.clear();
    }

    private void bind(PreparedStatement to, int at, long number, Line line) throws SQLException {
        to.setLong(at + 1, number);
        to.setLong(at + 2, line.row());
        to.setLong(at + 3, line.taxPoint().toEpochDay());
        to.setLong(at + 4, profiles.id(line.profile()));
        to.setLong(at + 5, items.id(line.item()));
        text(to, at + 6, line.order());
        text(to, at + 7, line.document());
        amount(to, at + 8, line.amounts().net());
        amount(to, at + 9, line.amounts().vat());
        amount(to, at + 10, line.amounts().gross());
        if (line.paid().isPresent()) {
            to.setLong(at + 11, line.paid().get().toEpochDay());
        } else {
            to.setNull(at + 11, Types.INTEGER);
        }
        text(to, at + 12, line.original());
        text(to, at + 13, line.notes());
        text(to, at + 14, line.particulars().text());
    }

    private static void text(PreparedStatement to, int at, String text) throws SQLException {
        if (text.isEmpty()) {
            to.setNull(at, Types.VARCHAR);
        } else {
            to.setString(at, text);
        }
    }

    private static void amount(PreparedStatement to, int at, Optional<Amount> amount)
            throws SQLException {
        if (amount.isPresent()) {
            to.setLong(at, amount.get().tenThousandths());
        } else {
            to.setNull(at, Types.INTEGER);
        }
    }

    @Override
    public void close() throws SQLException {
        insert.close();
        profiles.close();
        items.close();
    }
}
