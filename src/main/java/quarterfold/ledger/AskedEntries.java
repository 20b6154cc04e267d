package quarterfold.ledger;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;

/**
 * A run of entries that a question of their file about what they are is about.
 *
 * @param about what the question is about, as {@link RaisedQuery#about} has it
 * @param first the number of the first of them
 * @param last the number of the last of them
 */
public record AskedEntries(String about, long first, long last) {

    /** The runs of a source, in the order of their numbers. */
    static List<AskedEntries> of(Connection connection, long source) throws SQLException {
        return Sql.list(
                connection,
                "select about, first_entry, last_entry from asked_entry where source = ?"
                        + " order by first_entry",
                row -> new AskedEntries(row.getString(1), row.getLong(2), row.getLong(3)),
                source);
    }

    /** The runs that a question about the kind of rows is about; none of another question. */
    static List<AskedEntries> of(Connection connection, RaisedQuery.Name query)
            throws SQLException {
        return query.isOfKind()
                ? of(connection, query.source()).stream()
                        .filter(run -> run.about.equals(query.about()))
                        .toList()
                : List.of();
    }

    /** Whether the number follows on the run's last, under the same question. */
    boolean isFollowedBy(String question, long number) {
        return about.equals(question) && number == last + 1;
    }

    AskedEntries to(long number) {
        return new AskedEntries(about, first, number);
    }
}
