package quarterfold.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collections;
import java.util.List;
import java.util.function.Function;

/**
 * A table that keeps each distinct value once, with a number: values of only texts, unique
 * together.
 *
 * <p>Values used lately are remembered, others are found by the table's unique index. Use one for
 * one transaction: what it remembers is wrong after a rollback.
 */
final class Interned<T> implements AutoCloseable {
    private final Function<T, List<String>> texts;
    private final PreparedStatement find;
    private final PreparedStatement insert;
    private final Recent<T> recent = new Recent<>();

    Interned(Connection connection, String table, Texts<T> type) throws SQLException {
        this.texts = type.texts();
        List<String> columns = type.columns();
        String marks = String.join(", ", Collections.nCopies(columns.size(), "?"));
        find =
                connection.prepareStatement(
                        "select id from %s where %s = ?"
                                .formatted(table, String.join(" = ? and ", columns)));
        insert =
                connection.prepareStatement(
                        "insert into %s (%s) values (%s) returning id"
                                .formatted(table, String.join(", ", columns), marks));
    }

    /** How a value is told as texts: the columns, and a value's text for each. */
    record Texts<T>(List<String> columns, Function<T, List<String>> texts) {}

    /** The value's number; adds the value where it is new. */
    long id(T value) throws SQLException {
        long known = recent.id(value);
        if (known != 0) {
            return known;
        }
        List<String> cells = texts.apply(value);
        long id = ask(find, cells);
        if (id == 0) {
            id = ask(insert, cells);
        }
        recent.put(value, id);
        return id;
    }

    private static long ask(PreparedStatement statement, List<String> cells) throws SQLException {
        for (int i = 0; i < cells.size(); i++) {
            statement.setString(i + 1, cells.get(i));
        }
        try (ResultSet rows = statement.executeQuery()) {
            return rows.next() ? rows.getLong(1) : 0;
        }
    }

    @Override
    public void close() throws SQLException {
        find.close();
        insert.close();
    }
}
