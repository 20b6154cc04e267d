package quarterfold.ledger;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.money.Amount;

/** Table {@code close} and the tables that hang on it. */
final class CloseTable {
    private CloseTable() {}

    static boolean isClosed(Connection connection, YearMonth period) throws SQLException {
        return Sql.number(
                        connection,
                        "select count(*) from close where period = ?",
                        period.toString())
                > 0;
    }

    /** Whether a row of {@code closed_entry} before {@code end} is of the occasion. */
    static boolean isClosed(
            Connection connection, long number, LocalDate day, String cause, long end)
            throws SQLException {
        return Sql.number(
                        connection,
                        "select exists (select 1 from closed_entry where number = ? and day = ? and cause = ? and id < ?)",
                        number,
                        day.toEpochDay(),
                        cause,
                        end)
                > 0;
    }

    static Optional<Close> find(Connection connection, YearMonth period) throws SQLException {
        return Sql.first(
                connection,
                "select * from close where period = ?",
                row -> close(connection, row),
                period.toString());
    }

    static List<Close> all(Connection connection) throws SQLException {
        return Sql.list(
                connection, "select * from close order by period", row -> close(connection, row));
    }

    /** The periods by the first id of what their closes froze; those that froze nothing are out. */
    static Map<Long, YearMonth> byFirstEntry(Connection connection) throws SQLException {
        Map<Long, YearMonth> periods = new LinkedHashMap<>();
        Sql.list(
                        connection,
                        "select first_entry, period from close where entries > 0",
                        row -> Map.entry(row.getLong(1), YearMonth.parse(row.getString(2))))
                .forEach(p -> periods.put(p.getKey(), p.getValue()));
        return periods;
    }

    static void add(Connection connection, Close close, long firstEntry, long entries)
            throws SQLException {
        String period = close.period().toString();
        Sql.execute(
                connection,
                "insert into close (period, start_day, end_day, due_day, direction, settings,"
                        + " last_entry, last_decision, last_rate, first_entry, entries) values"
                        + " (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                period,
                close.start().toEpochDay(),
                close.end().toEpochDay(),
                close.due().toEpochDay(),
                close.direction(),
                SettingsFile.write(close.settings()),
                close.lastEntry(),
                close.lastDecision(),
                close.lastRate(),
                firstEntry,
                entries);
        int position = 0;
        for (Map.Entry<String, Amount> box : close.exact().entrySet()) {
            Sql.execute(
                    connection,
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
        for (ClosedAdjustment adjustment : close.adjustments()) {
            ClosedAdjustmentTable.add(connection, period, ++position, adjustment);
        }
        position = 0;
        for (ClosedQuery query : close.queries()) {
            Sql.execute(
                    connection,
                    "insert into close_query (period, position, id, entry, place, question, money,"
                            + " holds_close, answer) values (?, ?, ?, ?, ?, ?, ?, ?, ?)",
                    period,
                    ++position,
                    query.id(),
                    query.entry(),
                    query.place(),
                    query.question(),
                    query.money().tenThousandths(),
                    query.holdsClose() ? 1 : 0,
                    query.answer());
        }
        position = 0;
        for (TableText table : close.tables()) {
            Sql.execute(
                    connection,
                    "insert or ignore into law_text (sha256, text) values (?, ?)",
                    table.sha256(),
                    table.text());
            Sql.execute(
                    connection,
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

    private static Close close(Connection connection, ResultSet row) throws SQLException {
        String period = row.getString("period");
        return new Close(
                YearMonth.parse(period),
                LocalDate.ofEpochDay(row.getLong("start_day")),
                LocalDate.ofEpochDay(row.getLong("end_day")),
                LocalDate.ofEpochDay(row.getLong("due_day")),
                row.getString("direction"),
                SettingsFile.read("the close of " + period, row.getString("settings")),
                row.getLong("last_entry"),
                row.getLong("last_decision"),
                row.getLong("last_rate"),
                boxes(connection, period, "exact"),
                boxes(connection, period, "figure"),
                boxes(connection, period, "other_rounding"),
                ClosedAdjustmentTable.of(connection, period),
                queries(connection, period),
                tables(connection, period));
    }

    private static Map<String, Amount> boxes(Connection connection, String period, String column)
            throws SQLException {
        Map<String, Amount> boxes = new LinkedHashMap<>();
        Sql.list(
                        connection,
                        "select box, %s from close_box where period = ? order by position"
                                .formatted(column),
                        row -> Map.entry(row.getString(1), new Amount(row.getLong(2))),
                        period)
                .forEach(box -> boxes.put(box.getKey(), box.getValue()));
        return boxes;
    }

    private static List<ClosedQuery> queries(Connection connection, String period)
            throws SQLException {
        return Sql.list(
                connection,
                "select * from close_query where period = ? order by position",
                row ->
                        new ClosedQuery(
                                row.getString("id"),
                                row.getLong("entry"),
                                row.getString("place"),
                                row.getString("question"),
                                new Amount(row.getLong("money")),
                                row.getLong("holds_close") != 0,
                                row.getString("answer")),
                period);
    }

    private static List<TableText> tables(Connection connection, String period)
            throws SQLException {
        return Sql.list(
                connection,
                "select name, sha256, text from close_table join law_text using (sha256) where"
                        + " period = ? order by position",
                row -> new TableText(row.getString(1), row.getString(2), row.getString(3)),
                period);
    }
}
