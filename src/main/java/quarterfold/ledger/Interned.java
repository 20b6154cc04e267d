package quarterfold.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * A table that keeps each distinct value once, with a number: values of only texts, unique
 * together.
 *
 * <p>The values last used are remembered, up to {@link #REMEMBERED}; others are found by the
 * table's unique index, so memory stays flat however many there are. Use one for one transaction:
 * what it remembers is wrong after a rollback.
 */
final class Interned<T> implements AutoCloseable {
    private static final int REMEMBERED = 50_000;

    private final Function<T, List<String>> texts;
    private final PreparedStatement find;
    private final PreparedStatement insert;
    private final Map<T, Long> remembered = new LinkedHashMap<>(1024, 0.75f, true);

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
        Long known = remembered.get(value);
        if (known != null) {
            return known;
        }
        List<String> cells = texts.apply(value);
        long id = ask(find, cells);
        if (id == 0) {
            id = ask(insert, cells);
        }
        if (remembered.size() == REMEMBERED) {
            remembered.remove(remembered.keySet().iterator().next());
        }
        remembered.put(value, id);
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
