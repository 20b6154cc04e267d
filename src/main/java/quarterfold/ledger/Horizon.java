package quarterfold.ledger;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.YearMonth;
import java.util.List;
import java.util.Set;

/**
 * How much of a ledger is seen: all of it, or what was there when a period was closed.
 *
 * @param closes the periods whose closes are seen; empty for all
 * @param firstFrozen what was frozen from this row of {@code closed_entry} on is not seen
 */
record Horizon(
        boolean isAll,
        long lastEntry,
        long lastDecision,
        long lastRate,
        Set<YearMonth> closes,
        long firstFrozen) {

    static final Horizon ALL =
            new Horizon(
                    true, Long.MAX_VALUE, Long.MAX_VALUE, Long.MAX_VALUE, Set.of(), Long.MAX_VALUE);

    /** What was there when a period that is closed was closed. */
    static Horizon of(Connection connection, Close close) throws SQLException {
        String period = close.period().toString();
        List<String> before =
                Sql.list(
                        connection,
                        "select p.period from close p join close c on c.period = ? where p.period <>"
                                + " c.period and (p.first_entry < c.first_entry or (p.first_entry ="
                                + " c.first_entry and p.entries = 0 and p.period < c.period))",
                        row -> row.getString(1),
                        period);
        return new Horizon(
                false,
                close.lastEntry(),
                close.lastDecision(),
                close.lastRate(),
                Set.copyOf(before.stream().map(YearMonth::parse).toList()),
                Sql.number(connection, "select first_entry from close where period = ?", period));
    }

    /** Whether a source was there; its entries all came with it. */
    boolean sees(Source source) {
        return source.firstEntry() <= lastEntry;
    }

    boolean sees(Decision decision) {
        return decision.id() <= lastDecision;
    }

    boolean sees(HeldRate rate) {
        return rate.id() <= lastRate;
    }

    boolean seesClose(YearMonth period) {
        return isAll || closes.contains(period);
    }
}
