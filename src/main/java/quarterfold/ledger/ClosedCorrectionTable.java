package quarterfold.ledger;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;

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

    /** What closes took up of an entry, in the order of the closes. */
    static List<ClosedCorrection> of(Connection connection, long number) throws SQLException {
        return Sql.list(
                connection,
                "select * from close_correction where number = ? order by id",
                ClosedCorrectionTable::read,
                number);
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
