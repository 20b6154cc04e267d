package quarterfold.ledger;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;

/** Table {@code decision}. */
final class DecisionTable {
    private DecisionTable() {}

    static List<Decision> all(Connection connection) throws SQLException {
        return Sql.list(connection, "select * from decision order by id", DecisionTable::read);
    }

    static void add(Connection connection, Decision decision) throws SQLException {
        Sql.execute(
                connection,
                "insert into decision (id, target, about, action, value, why, who, day) values"
                        + " (?, ?, ?, ?, ?, ?, ?, ?)",
                decision.id(),
                decision.target().code(),
                decision.about(),
                decision.action().code(),
                decision.value(),
                decision.why(),
                decision.who(),
                decision.day().toEpochDay());
    }

    private static Decision read(ResultSet row) throws SQLException {
        return new Decision(
                row.getLong("id"),
                coded(Decision.Target.class, row.getString("target")),
                row.getString("about"),
                coded(Decision.Action.class, row.getString("action")),
                row.getString("value"),
                row.getString("why"),
                row.getString("who"),
                LocalDate.ofEpochDay(row.getLong("day")));
    }

    private static <E extends Enum<E> & Coded> E coded(Class<E> type, String code) {
        return Coded.find(type, code)
                .orElseThrow(
                        () ->
                                new IllegalStateException(
                                        "the ledger holds the %s '%s', which this program does not know"
                                                .formatted(type.getSimpleName(), code)));
    }
}
