package quarterfold.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import quarterfold.money.Amount;

/** Reads what a close froze, beside the entries it froze. */
final class ClosedReader implements AutoCloseable {
    private static final int OWN = EntryReader.WIDTH;
    private static final String FROZEN =
            ", c.ruling, c.net, c.vat, c.claim, c.boxes, c.day, c.cause, c.id,"
                    + " coalesce(c.evidence, ''), coalesce(c.exchange, '')";
    private static final String ONE =
            "select "
                    + EntryReader.COLUMNS
                    + FROZEN
                    + " from closed_entry c join entry e on e.number = c.number where c.number = ? and c.id < ? order by c.id";
    static final String RUN =
            "select "
                    + EntryReader.COLUMNS
                    + FROZEN
                    + " from close p join closed_entry c on c.id between p.first_entry and"
                    + " p.first_entry + p.entries - 1 join entry e on e.number = c.number"
                    + " where p.period = ? order by c.id";

    private final PreparedStatement run;
    private final PreparedStatement one;
    private final Connection connection;
    private final ById<RulingTable.Ruling> rulings;
    private final NavigableMap<Long, Source> sources = new TreeMap<>();
    private final NavigableMap<Long, YearMonth> periods = new TreeMap<>();

    ClosedReader(Connection connection, Horizon horizon) throws SQLException {
        run = connection.prepareStatement(RUN);
        one = connection.prepareStatement(ONE);
        one.setLong(2, horizon.firstFrozen());
        this.connection = connection;
        rulings = new ById<>(connection, "ruling", ById.MANY, RulingTable::read);
        SourceTable.all(connection).forEach(s -> sources.put(s.firstEntry(), s));
        periods.putAll(CloseTable.byFirstEntry(connection));
    }

    /** {@code kinds}: what entries were by decision at the close. */
    void read(YearMonth period, KindDecisions kinds, BiConsumer<Entry, ClosedEntry> each)
            throws SQLException {
        run.setString(1, period.toString());
        try (EntryReader entries = new EntryReader(connection, ById.MANY, EntryReader.RUN, kinds);
                ResultSet rows = run.executeQuery()) {
            while (rows.next()) {
                each.accept(
                        entries.entry(rows, sources.floorEntry(rows.getLong(1)).getValue().id()),
                        closed(rows));
            }
        }
    }

    /** Every occasion of an entry that a close froze, in the order they were frozen. */
    List<ClosedEntry> entry(long number) throws SQLException {
        one.setLong(1, number);
        List<ClosedEntry> frozen = new ArrayList<>(1);
        try (ResultSet rows = one.executeQuery()) {
            while (rows.next()) {
                frozen.add(closed(rows));
            }
        }
        return frozen;
    }

    private ClosedEntry closed(ResultSet row) throws SQLException {
        RulingTable.Ruling ruling = rulings.get(row.getLong(OWN + 1));
        return new ClosedEntry(
                periods.floorEntry(row.getLong(OWN + 8)).getValue(),
                row.getLong(1),
                LocalDate.ofEpochDay(row.getLong(OWN + 6)),
                row.getString(OWN + 7),
                ruling.takenUp(),
                ruling.treatment(),
                ruling.rule(),
                ruling.rate(),
                new Amount(row.getLong(OWN + 2)),
                new Amount(row.getLong(OWN + 3)),
                new Amount(row.getLong(OWN + 4)),
                BoxesText.parse(row.getString(OWN + 5)),
                row.getString(OWN + 9),
                row.getString(OWN + 10));
    }

    @Override
    public void close() throws SQLException {
        run.close();
        one.close();
        rulings.close();
    }
}
