package quarterfold.ledger;

import java.math.BigDecimal;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Table {@code exchange_rate}. */
final class RateTable {
    private RateTable() {}

    static List<HeldRate> all(Connection connection) throws SQLException {
        return Sql.list(connection, "select * from exchange_rate order by id", RateTable::read);
    }

    static Optional<HeldRate> find(Connection connection, long id) throws SQLException {
        return Sql.first(
                connection, "select * from exchange_rate where id = ?", RateTable::read, id);
    }

    /** Every rate of a publisher for a currency, by its first day. */
    static List<HeldRate> of(Connection connection, Publisher publisher, String currency)
            throws SQLException {
        return Sql.list(
                connection,
                "select * from exchange_rate where publisher = ? and currency = ? order by"
                        + " first_day, id",
                RateTable::read,
                publisher.code(),
                currency);
    }

    /** Every rate of a source, in the order they came. */
    static List<HeldRate> of(Connection connection, long source) throws SQLException {
        return Sql.list(
                connection,
                "select * from exchange_rate where source = ? order by id",
                RateTable::read,
                source);
    }

    static void add(Connection connection, HeldRate held) throws SQLException {
        PublishedRate rate = held.rate();
        Sql.execute(
                connection,
                "insert into exchange_rate (id, source, row, publisher, currency, first_day,"
                        + " last_day, units) values (?, ?, ?, ?, ?, ?, ?, ?)",
                held.id(),
                held.source(),
                rate.row(),
                rate.publisher().code(),
                rate.currency(),
                rate.first().toEpochDay(),
                rate.last().toEpochDay(),
                rate.units().toPlainString());
    }

    private static HeldRate read(ResultSet row) throws SQLException {
        String publisher = row.getString("publisher");
        return new HeldRate(
                row.getLong("id"),
                row.getLong("source"),
                new PublishedRate(
                        row.getLong("row"),
                        Coded.find(Publisher.class, publisher)
                                .orElseThrow(
                                        () ->
                                                new IllegalStateException(
                                                        "the ledger holds the publisher '%s', which this program does not know"
                                                                .formatted(publisher))),
                        row.getString("currency"),
                        LocalDate.ofEpochDay(row.getLong("first_day")),
                        LocalDate.ofEpochDay(row.getLong("last_day")),
                        new BigDecimal(row.getString("units"))));
    }
}
