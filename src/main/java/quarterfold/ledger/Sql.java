package quarterfold.ledger;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.dbutils.QueryRunner;
import org.jspecify.annotations.Nullable;

/** Plain SQL in, values out: everything but the two paths that run for every entry. */
final class Sql {
    private static final QueryRunner RUNNER = new Runner();

    private Sql() {}

    /** Leaves a failure as the driver tells it: the library would add the cells to its message. */
    private static final class Runner extends QueryRunner {
        @Override
        protected void rethrow(SQLException cause, String sql, Object... cells)
                throws SQLException {
            throw cause;
        }
    }

    /** Makes a value of a row. */
    interface Value<T> {
        T read(ResultSet row) throws SQLException;
    }

    /** A value for each row, in the query's order. */
    static <T> List<T> list(
            Connection connection, String query, Value<T> value, @Nullable Object... cells)
            throws SQLException {
        return RUNNER.query(
                connection,
                query,
                rows -> {
                    List<T> list = new ArrayList<>();
                    while (rows.next()) {
                        list.add(value.read(rows));
                    }
                    return list;
                },
                cells);
    }

    /** The value of the first row, where there is one. */
    static <T> Optional<T> first(
            Connection connection, String query, Value<T> value, @Nullable Object... cells)
            throws SQLException {
        return list(connection, query, value, cells).stream().findFirst();
    }

    /** The whole number that a query of one row and one column gives. */
    static long number(Connection connection, String query, @Nullable Object... cells)
            throws SQLException {
        return first(connection, query, row -> row.getLong(1), cells).orElseThrow();
    }

    /** One above the highest whole number of a column; 1 where the table is empty. */
    static long next(Connection connection, String table, String column) throws SQLException {
        return number(
                connection, "select coalesce(max(%s), 0) + 1 from %s".formatted(column, table));
    }

    static void execute(Connection connection, String change, @Nullable Object... cells)
            throws SQLException {
        RUNNER.update(connection, change, cells);
    }
}
