package quarterfold.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;
import quarterfold.money.Amount;

/**
 * Reads entries by runs of numbers, one at a time. Every figure of a row is fetched once, in column
 * order; profiles and items are looked up by number.
 */
final class EntryReader implements AutoCloseable {
    static final String COLUMNS =
            "e.number, e.row, e.tax_point, e.profile, e.item, e.order_number, e.document, e.net,"
                    + " e.vat, e.gross, e.paid, e.original, e.notes";

    /** Before and after every day an entry can have. */
    static final LocalDate EARLIEST = LocalDate.of(-999_999, 1, 1);

    static final LocalDate LATEST = LocalDate.of(999_999, 12, 31);
    private static final String RUN =
            "select "
                    + COLUMNS
                    + " from entry e where e.number between ? and ? and e.tax_point between ? and ?";

    private final PreparedStatement run;
    private final ById<Profile> profiles;
    private final ById<Item> items;

    EntryReader(Connection connection) throws SQLException {
        run = connection.prepareStatement(RUN);
        profiles = new ById<>(connection, "profile", ProfileTable::read);
        items = new ById<>(connection, "item", ItemTable::read);
    }

    /** The entries of one source with a tax point from {@code first} to {@code last}, in order. */
    void run(Source source, LocalDate first, LocalDate last, Consumer<Entry> each)
            throws SQLException {
        run(source.firstEntry(), source.entries(), source.id(), first, last, each);
    }

    /** The entry with a number that the ledger has. */
    Entry entry(long number, long source) throws SQLException {
        List<Entry> found = new ArrayList<>(1);
        run(number, 1, source, EARLIEST, LATEST, found::add);
        return found.get(0);
    }

    private void run(
            long from, long count, long source, LocalDate first, LocalDate last, Consumer<Entry> to)
            throws SQLException {
        run.setLong(1, from);
        run.setLong(2, from + count - 1);
        run.setLong(3, first.toEpochDay());
        run.setLong(4, last.toEpochDay());
        try (ResultSet rows = run.executeQuery()) {
            while (rows.next()) {
                to.accept(entry(rows, source));
            }
        }
    }

    /** Whether a source has an entry with a tax point from {@code first} to {@code last}. */
    static boolean any(Handle handle, Source source, LocalDate first, LocalDate last) {
        return handle.createQuery(
                        "select exists (select 1 from entry where number between :from and :to"
                                + " and tax_point between :first and :last)")
                .bind("from", source.firstEntry())
                .bind("to", source.firstEntry() + source.entries() - 1)
                .bind("first", first.toEpochDay())
                .bind("last", last.toEpochDay())
                .mapTo(Boolean.class)
                .one();
    }

    /** The entry in a row of {@link #COLUMNS}. */
    Entry entry(ResultSet row, long source) throws SQLException {
        return new Entry(
                row.getLong(1),
                source,
                new Line(
                        row.getLong(2),
                        LocalDate.ofEpochDay(row.getLong(3)),
                        profiles.get(row.getLong(4)),
                        items.get(row.getLong(5)),
                        text(row, 7),
                        text(row, 6),
                        new Amounts(amount(row, 8), amount(row, 9), amount(row, 10)),
                        day(row, 11),
                        text(row, 12),
                        text(row, 13)));
    }

    private static String text(ResultSet row, int column) throws SQLException {
        String text = row.getString(column);
        return text == null ? "" : text;
    }

    private static Optional<Amount> amount(ResultSet row, int column) throws SQLException {
        long value = row.getLong(column);
        return value == 0 && row.wasNull() ? Optional.empty() : Optional.of(new Amount(value));
    }

    private static Optional<LocalDate> day(ResultSet row, int column) throws SQLException {
        long value = row.getLong(column);
        return value == 0 && row.wasNull()
                ? Optional.empty()
                : Optional.of(LocalDate.ofEpochDay(value));
    }

    @Override
    public void close() throws SQLException {
        run.close();
        profiles.close();
        items.close();
    }
}
