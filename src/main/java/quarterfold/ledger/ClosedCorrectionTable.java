package quarterfold.ledger;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/** Table {@code close_correction}. */
final class ClosedCorrectionTable {
    private ClosedCorrectionTable() {}

    static void add(Connection connection, String period, int position, ClosedCorrection row)
            throws SQLException {
        Sql.execute(
                connection,
                "insert into close_correction (period, position, number, day, cause, of_period,"
                        + " taken_up, declared, right, boxes, why) values"
                        + " (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                period,
                position,
                row.number(),
                row.day().toEpochDay(),
                row.cause(),
                row.of().toString(),
                row.takenUp(),
                BoxesText.of(row.declared()),
                BoxesText.of(row.right()),
                BoxesText.of(row.boxes()),
                row.why());
    }

    static List<ClosedCorrection> of(Connection connection, YearMonth period) throws SQLException {
        return Sql.list(
                connection,
                "select * from close_correction where period = ? order by position",
                ClosedCorrectionTable::read,
                period.toString());
    }

    /** What the closes that are seen took up of an entry, in the order of the closes. */
    static List<ClosedCorrection> of(Connection connection, long number, Predicate<YearMonth> seen)
            throws SQLException {
        List<ClosedCorrection> rows = new ArrayList<>();
        Sql.list(
                        connection,
                        "select * from close_correction where number = ? order by id",
                        row -> Map.entry(YearMonth.parse(row.getString("period")), read(row)),
                        number)
                .stream()
                .filter(row -> seen.test(row.getKey()))
                .forEach(row -> rows.add(row.getValue()));
        return rows;
    }

    private static ClosedCorrection read(ResultSet row) throws SQLException {
        return new ClosedCorrection(
                row.getLong("number"),
                LocalDate.ofEpochDay(row.getLong("day")),
                row.getString("cause"),
                YearMonth.parse(row.getString("of_period")),
                row.getString("taken_up"),
                BoxesText.parse(row.getString("declared")),
                BoxesText.parse(row.getString("right")),
                BoxesText.parse(row.getString("boxes")),
                row.getString("why"));
    }
}
