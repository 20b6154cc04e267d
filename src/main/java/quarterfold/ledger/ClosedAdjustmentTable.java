package quarterfold.ledger;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import quarterfold.money.Amount;

/** Table {@code close_adjustment}. */
final class ClosedAdjustmentTable {
    private ClosedAdjustmentTable() {}

    static void add(Connection connection, String period, int position, ClosedAdjustment adjustment)
            throws SQLException {
        Sql.execute(
                connection,
                "insert into close_adjustment (period, position, treatment, about, why, authority,"
                        + " net, vat, claim, boxes) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                period,
                position,
                adjustment.treatment(),
                adjustment.about(),
                adjustment.why(),
                adjustment.authority(),
                adjustment.net().tenThousandths(),
                adjustment.vat().tenThousandths(),
                adjustment.claim().tenThousandths(),
                BoxesText.of(adjustment.boxes()));
    }

    static List<ClosedAdjustment> of(Connection connection, String period) throws SQLException {
        return Sql.list(
                connection,
                "select * from close_adjustment where period = ? order by position",
                row ->
                        new ClosedAdjustment(
                                row.getString("treatment"),
                                row.getString("about"),
                                row.getString("why"),
                                row.getString("authority"),
                                new Amount(row.getLong("net")),
                                new Amount(row.getLong("vat")),
                                new Amount(row.getLong("claim")),
                                BoxesText.parse(row.getString("boxes"))),
                period);
    }
}
