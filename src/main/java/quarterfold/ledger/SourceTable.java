package quarterfold.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import quarterfold.money.Amount;

/** Table {@code source}. */
final class SourceTable {
    private SourceTable() {}

    static List<Source> all(Handle handle) {
        return handle.createQuery("select * from source order by id")
                .map((row, context) -> source(row))
                .list();
    }

    static Optional<Source> bySha256(Handle handle, String sha256) {
        return handle.createQuery("select * from source where sha256 = :sha256")
                .bind("sha256", sha256)
                .map((row, context) -> source(row))
                .findOne();
    }

    /** The source whose run holds the entry {@code number}. */
    static Optional<Source> holding(Handle handle, long number) {
        return handle.createQuery(
                        "select * from source where :number between first_entry and first_entry +"
                                + " entries - 1")
                .bind("number", number)
                .map((row, context) -> source(row))
                .findOne();
    }

    static void add(Handle handle, Source source) {
        handle.createUpdate(
                        "insert into source (id, sha256, name, layout, first_entry, entries,"
                                + " rows_read, rows_entered, money_in, money_entered, first_day,"
                                + " last_day) values (:id, :sha256, :name, :layout, :firstEntry,"
                                + " :entries, :rowsRead, :rowsEntered, :moneyIn, :moneyEntered,"
                                + " :firstDay, :lastDay)")
                .bind("id", source.id())
                .bind("sha256", source.sha256())
                .bind("name", source.name())
                .bind("layout", source.layout())
                .bind("firstEntry", source.firstEntry())
                .bind("entries", source.entries())
                .bind("rowsRead", source.rowsRead())
                .bind("rowsEntered", source.rowsEntered())
                .bind("moneyIn", source.moneyIn().tenThousandths())
                .bind("moneyEntered", source.moneyEntered().tenThousandths())
                .bind("firstDay", source.dates().map(d -> d.first().toEpochDay()))
                .bind("lastDay", source.dates().map(d -> d.last().toEpochDay()))
                .execute();
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
