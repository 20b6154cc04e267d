package quarterfold.ledger;

import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import quarterfold.money.Amount;

/**
 * Reads entries by runs of numbers, one at a time. Each call into the driver costs: what is not
 * stated is told by one number of bits, and not asked for.
 */
final class EntryReader implements AutoCloseable {
    /** Before and after every day an entry can have. */
    static final LocalDate EARLIEST = LocalDate.of(-999_999, 1, 1);

    static final LocalDate LATEST = LocalDate.of(999_999, 12, 31);

    /** The columns {@link #entry} reads, from the first. */
    static final String COLUMNS =
            "e.number, e.row, e.tax_point, e.profile, e.item,"
                    + " (e.net is not null) | ((e.vat is not null) << 1) | ((e.gross is not null) << 2)"
                    + " | ((e.order_number is not null) << 3) | ((e.document is not null) << 4)"
                    + " | ((e.paid is not null) << 5)"
                    + " | ((e.particulars is not null) << 6) | ((e.original is not null) << 7)"
                    + " | ((e.notes is not null) << 8),"
                    + " e.net, e.vat, e.gross, e.order_number, e.document, e.paid, e.particulars,"
                    + " e.original, e.notes";

    /** The same but for what no box depends on: the texts for people. */
    private static final String FIGURES =
            "e.number, e.row, e.tax_point, e.profile, e.item,"
                    + " (e.net is not null) | ((e.vat is not null) << 1) | ((e.gross is not null) << 2)"
                    + " | ((e.order_number is not null) << 3) | ((e.document is not null) << 4)"
                    + " | ((e.paid is not null) << 5) | ((e.particulars is not null) << 6),"
                    + " e.net, e.vat, e.gross, e.order_number, e.document, e.paid, e.particulars";

    static final int WIDTH = 15;
    private static final int STATED = 6;
    private static final int NET = 7;
    private static final int VAT = 8;
    private static final int GROSS = 9;
    private static final int ORDER = 10;
    private static final int DOCUMENT = 11;
    private static final int PAID = 12;
    private static final int PARTICULARS = 13;
    private static final int ORIGINAL = 14;
    private static final int NOTES = 15;
    private static final String FROM =
            " from entry e where e.number between ? and ? and e.tax_point between ? and ?";

    /** Whole entries. */
    static final String RUN = "select " + COLUMNS + FROM;

    /** Entries whose original text and notes are left out. */
    static final String RUN_OF_FIGURES = "select " + FIGURES + FROM;

    /** The same, of entries that state a particular; not of those that state an account alone. */
    static final String RUN_OF_FIGURES_WITH_PARTICULARS =
            RUN_OF_FIGURES
                    + " and e.particulars is not null and not (e.particulars glob '%s=*' and instr(e.particulars, ' ') = 0)"
                            .formatted(Particular.ACCOUNT.code());

    /** The same, of entries that may be of a kind. */
    static String runOfFiguresOf(Kind kind, KindDecisions kinds) {
        return RUN_OF_FIGURES
                + " and "
                + kinds.or(
                        "e.profile in (select id from profile where kind = '%s')"
                                .formatted(kind.code()));
    }

    private final PreparedStatement run;
    private final ById<Profile> profiles;
    private final ById<Item> items;
    private final KindDecisions kinds;
    private LocalDate day = LocalDate.EPOCH;

    /**
     * @param query {@link #RUN} or {@link #RUN_OF_FIGURES}
     * @param kinds what entries are by decision; {@link KindDecisions#NONE} for entries as they
     *     were entered
     */
    EntryReader(Connection connection, int remembered, String query, KindDecisions kinds)
            throws SQLException {
        this.kinds = kinds;
        run = connection.prepareStatement(query);
        profiles = new ById<>(connection, "profile", remembered, ProfileTable::read);
        items =
                new ById<>(
                        connection,
                        "item",
                        remembered,
                        row -> new Item(row.getString(2), row.getString(3)));
    }

    /** The entries of one source with a tax point from {@code first} to {@code last}, in order. */
    void run(Source source, LocalDate first, LocalDate last, Consumer<Entry> each)
            throws SQLException {
        run(source.firstEntry(), source.entries(), source.id(), first, last, each);
    }

    /** At most so many entries of a source from a number on, in order. */
    void run(Source source, long from, int count, Consumer<Entry> each) throws SQLException {
        long left = source.firstEntry() + source.entries() - from;
        run(from, Math.min(count, left), source.id(), EARLIEST, LATEST, each);
    }

    /** A run of a source's entries. */
    void run(AskedEntries asked, long source, Consumer<Entry> each) throws SQLException {
        run(asked.first(), asked.last() - asked.first() + 1, source, EARLIEST, LATEST, each);
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
    static boolean any(Connection connection, Source source, LocalDate first, LocalDate last)
            throws SQLException {
        return Sql.number(
                        connection,
                        "select exists (select 1 from entry where number between ? and ? and"
                                + " tax_point between ? and ?)",
                        source.firstEntry(),
                        source.firstEntry() + source.entries() - 1,
                        first.toEpochDay(),
                        last.toEpochDay())
                > 0;
    }

    /** The entry in a row of {@link #COLUMNS}. */
    Entry entry(ResultSet row, long source) throws SQLException {
        int stated = row.getInt(STATED);
        long number = row.getLong(1);
        Line entered =
                new Line(
                        row.getLong(2),
                        day(row.getLong(3)),
                        profiles.get(row.getLong(4)),
                        items.get(row.getLong(5)),
                        text(row, stated, DOCUMENT),
                        text(row, stated, ORDER),
                        new Amounts(
                                amount(row, stated, NET),
                                amount(row, stated, VAT),
                                amount(row, stated, GROSS)),
                        isStated(stated, PAID)
                                ? Optional.of(LocalDate.ofEpochDay(row.getLong(PAID)))
                                : Optional.empty(),
                        isStated(stated, PARTICULARS)
                                ? Particulars.parse(text(row, stated, PARTICULARS))
                                : Particulars.NONE,
                        text(row, stated, ORIGINAL),
                        text(row, stated, NOTES));
        return new Entry(number, source, kinds.line(number, entered));
    }

    private static boolean isStated(int stated, int column) {
        return (stated >> (column - NET) & 1) != 0;
    }

    /** A text as its bytes, which the driver hands over faster than as characters. */
    private static String text(ResultSet row, int stated, int column) throws SQLException {
        return isStated(stated, column)
                ? new String(row.getBytes(column), StandardCharsets.UTF_8)
                : "";
    }

    private static Optional<Amount> amount(ResultSet row, int stated, int column)
            throws SQLException {
        return isStated(stated, column)
                ? Optional.of(new Amount(row.getLong(column)))
                : Optional.empty();
    }

    /** Neighbours mostly share their day. */
    private LocalDate day(long epochDay) {
        if (day.toEpochDay() != epochDay) {
            day = LocalDate.ofEpochDay(epochDay);
        }
        return day;
    }

    @Override
    public void close() throws SQLException {
        run.close();
        profiles.close();
        items.close();
    }
}
