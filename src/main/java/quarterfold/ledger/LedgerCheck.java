package quarterfold.ledger;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.function.Consumer;
import quarterfold.ledger.Finding.Check;

/** Checks that the ledger holds together: numbers without a gap, and whole runs of them. */
final class LedgerCheck {

    private final Connection connection;
    private final Consumer<Finding> found;

    LedgerCheck(Connection connection, Consumer<Finding> found) {
        this.connection = connection;
        this.found = found;
    }

    /** Whether every row that another names is there, so that the ledger can be read at all. */
    boolean check() throws SQLException {
        numbers();
        List<String> broken =
                Sql.list(
                        connection,
                        "pragma foreign_key_check",
                        row ->
                                "row %d of %s names a row of %s that is not there"
                                        .formatted(
                                                row.getLong(2),
                                                row.getString(1),
                                                row.getString(3)));
        broken.forEach(text -> tell("ledger", text));
        return broken.isEmpty();
    }

    private void numbers() throws SQLException {
        long next = 1;
        for (Source source : SourceTable.all(connection)) {
            if (source.entries() > 0) {
                if (source.firstEntry() != next) {
                    tell(
                            source.name(),
                            "its entries begin with %d; expected %d, the number after the file before it"
                                    .formatted(source.firstEntry(), next));
                }
                run(source);
                next = source.firstEntry() + source.entries();
            }
            rows(source);
        }
        long beyond = count("select count(*) from entry where number >= ? or number < 1", next);
        if (beyond > 0) {
            tell(
                    "ledger",
                    "%d entries belong to no file; expected none above %d"
                            .formatted(beyond, next - 1));
        }
        unbroken("decision", "decisions");
        unbroken("exchange_rate", "exchange rates");
    }

    private void run(Source source) throws SQLException {
        long last = source.firstEntry() + source.entries() - 1;
        long there =
                count(
                        "select count(*) from entry where number between ? and ?",
                        source.firstEntry(),
                        last);
        if (there != source.entries()) {
            tell(
                    source.name(),
                    "%d of its entries are there; expected the %d from %d to %d"
                            .formatted(there, source.entries(), source.firstEntry(), last));
        }
    }

    private void rows(Source source) throws SQLException {
        long aside = count("select count(*) from set_aside where source = ?", source.id());
        if (aside != source.rowsSetAside()) {
            tell(
                    source.name(),
                    "%d of its rows are set aside; expected %d, its rows read less those entered"
                            .formatted(aside, source.rowsSetAside()));
        }
    }

    private void unbroken(String table, String place) throws SQLException {
        long there = count("select count(*) from " + table);
        long last = Sql.next(connection, table, "id") - 1;
        if (there != last) {
            tell(place, "%d are there; expected every number from 1 to %d".formatted(there, last));
        }
    }

    private long count(String sql, Object... values) throws SQLException {
        return Sql.number(connection, sql, values);
    }

    private void tell(String place, String text) {
        found.accept(new Finding(Check.NUMBERS, place, text));
    }
}
