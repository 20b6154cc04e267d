package quarterfold.ledger;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import quarterfold.money.Amount;

/** Table {@code source}. */
final class SourceTable {
    private SourceTable() {}

    static List<Source> all(Connection connection) throws SQLException {
        return Sql.list(connection, "select * from source order by id", SourceTable::source);
    }

    static Optional<Source> bySha256(Connection connection, String sha256) throws SQLException {
        return Sql.first(
                connection, "select * from source where sha256 = ?", SourceTable::source, sha256);
    }

    /** The rows of a source that made no entry. */
    static List<SetAside> setAside(Connection connection, long source) throws SQLException {
        return Sql.list(
                connection,
                "select * from set_aside where source = ? order by id",
                row ->
                        new SetAside(
                                row.getLong("source"), row.getLong("row"), row.getString("reason")),
                source);
    }

    /** The questions that the reading of sources raised. */
    static List<RaisedQuery> raised(Connection connection) throws SQLException {
        return Sql.list(
                connection,
                "select * from raised_query order by id",
                row ->
                        new RaisedQuery(
                                row.getLong("source"),
                                row.getString("code"),
                                row.getString("about"),
                                row.getString("question")));
    }

    /** The source whose run holds the entry {@code number}. */
    static Optional<Source> holding(Connection connection, long number) throws SQLException {
        return Sql.first(
                connection,
                "select * from source where ? between first_entry and first_entry + entries - 1",
                SourceTable::source,
                number);
    }

    static void add(Connection connection, Source source) throws SQLException {
        Sql.execute(
                connection,
                "insert into source (id, sha256, name, layout, first_entry, entries, rows_read,"
                        + " rows_entered, money_in, money_entered, first_day, last_day) values"
                        + " (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                source.id(),
                source.sha256(),
                source.name(),
                source.layout(),
                source.firstEntry(),
                source.entries(),
                source.rowsRead(),
                source.rowsEntered(),
                source.moneyIn().tenThousandths(),
                source.moneyEntered().tenThousandths(),
                source.dates().map(d -> d.first().toEpochDay()).orElse(null),
                source.dates().map(d -> d.last().toEpochDay()).orElse(null));
    }

    private static Source source(ResultSet row) throws SQLException {
        long entries = row.getLong("entries");
        return new Source(
                row.getLong("id"),
                row.getString("sha256"),
                row.getString("name"),
                row.getString("layout"),
                row.getLong("first_entry"),
                entries,
                row.getLong("rows_read"),
                row.getLong("rows_entered"),
                new Amount(row.getLong("money_in")),
                new Amount(row.getLong("money_entered")),
                entries == 0
                        ? Optional.empty()
                        : Optional.of(
                                new Source.Dates(
                                        LocalDate.ofEpochDay(row.getLong("first_day")),
                                        LocalDate.ofEpochDay(row.getLong("last_day")))));
    }
}
