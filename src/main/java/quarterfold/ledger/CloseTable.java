package quarterfold.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import quarterfold.money.Amount;

/** Table {@code close} and the tables that hang on it. */
final class CloseTable {
    private CloseTable() {}

    static boolean isClosed(Handle handle, YearMonth period) {
        return handle.createQuery("select count(*) from close where period = :period")
                .bind("period", period.toString())
                .mapTo(Boolean.class)
                .one();
    }

    static Optional<Close> find(Handle handle, YearMonth period) {
        return handle.createQuery("select * from close where period = :period")
                .bind("period", period.toString())
                .map((row, context) -> close(handle, row))
                .findOne();
    }

    static List<Close> all(Handle handle) {
        return handle.createQuery("select * from close order by period")
                .map((row, context) -> close(handle, row))
                .list();
    }

    static void add(Handle handle, Close close, long firstEntry, long entries) {
        String period = close.period().toString();
        handle.execute(
                "insert into close (period, start_day, end_day, due_day, direction, settings,"
                        + " last_entry, first_entry, entries) values (?, ?, ?, ?, ?, ?, ?, ?, ?)",
                period,
                close.start().toEpochDay(),
                close.end().toEpochDay(),
                close.due().toEpochDay(),
                close.direction(),
                SettingsFile.write(close.settings()),
                close.lastEntry(),
                firstEntry,
                entries);
        int position = 0;
        for (Map.Entry<String, Amount> box : close.exact().entrySet()) {
            handle.execute(
                    "insert into close_box (period, position, box, exact, figure, other_rounding)"
                            + " values (?, ?, ?, ?, ?, ?)",
                    period,
                    ++position,
                    box.getKey(),
                    box.getValue().tenThousandths(),
                    figure(close.figures(), box.getKey()),
                    figure(close.otherRounding(), box.getKey()));
        }
        position = 0;
        for (ClosedQuery query : close.queries()) {
            handle.execute(
                    "insert into close_query (period, position, id, entry, place, question, money)"
                            + " values (?, ?, ?, ?, ?, ?, ?)",
                    period,
                    ++position,
                    query.id(),
                    query.entry(),
                    query.place(),
                    query.question(),
                    query.money().tenThousandths());
        }
        position = 0;
        for (TableText table : close.tables()) {
            handle.execute(
                    "insert or ignore into law_text (sha256, text) values (?, ?)",
                    table.sha256(),
                    table.text());
            handle.execute(
                    "insert into close_table (period, position, name, sha256) values (?, ?, ?, ?)",
                    period,
                    ++position,
                    table.name(),
                    table.sha256());
        }
    }

    private static long figure(Map<String, Amount> figures, String box) {
        Amount figure = figures.get(box);
        if (figure == null) {
            throw new IllegalArgumentException("no figure for box " + box);
        }
        return figure.tenThousandths();
    }

    private static Close close(Handle handle, ResultSet row) throws SQLException {
        String period = row.getString("period");
        return new Close(
                YearMonth.parse(period),
                LocalDate.ofEpochDay(row.getLong("start_day")),
                LocalDate.ofEpochDay(row.getLong("end_day")),
                LocalDate.ofEpochDay(row.getLong("due_day")),
                row.getString("direction"),
                SettingsFile.read(
                        "the settings of the close of " + period, row.getString("settings")),
                row.getLong("last_entry"),
                boxes(handle, period, "exact"),
                boxes(handle, period, "figure"),
                boxes(handle, period, "other_rounding"),
                queries(handle, period),
                tables(handle, period));
    }

    private static Map<String, Amount> boxes(Handle handle, String period, String column) {
        Map<String, Amount> boxes = new LinkedHashMap<>();
        handle.createQuery(
                        "select box, %s from close_box where period = :period order by position"
                                .formatted(column))
                .bind("period", period)
                .map((row, context) -> Map.entry(row.getString(1), new Amount(row.getLong(2))))
                .forEach(box -> boxes.put(box.getKey(), box.getValue()));
        return boxes;
    }

    private static List<ClosedQuery> queries(Handle handle, String period) {
        return handle.createQuery(
                        "select * from close_query where period = :period order by position")
                .bind("period", period)
                .map(
                        (row, context) ->
                                new ClosedQuery(
                                        row.getString("id"),
                                        row.getLong("entry"),
                                        row.getString("place"),
                                        row.getString("question"),
                                        new Amount(row.getLong("money"))))
                .list();
    }

    private static List<TableText> tables(Handle handle, String period) {
        return handle.createQuery(
                        "select name, sha256, text from close_table join law_text using (sha256)"
                                + " where period = :period order by position")
                .bind("period", period)
                .map(
                        (row, context) ->
                                new TableText(row.getString(1), row.getString(2), row.getString(3)))
                .list();
    }
}
