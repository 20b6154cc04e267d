package quarterfold.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.money.Amount;

/** The database itself refuses to change or remove anything that is in it. */
class AppendOnlyTest {
    @TempDir Path folder;
    private Connection database;

    @BeforeEach
    void fill() {
        try (Ledger ledger = Samples.newLedger(folder)) {
            try (FileEntry file = ledger.begin("a", "a.csv", "plain-sheet")) {
                file.add(Samples.FULL);
                file.add(Samples.RATE);
                file.setAside(3, "no amount");
                file.raise("code", "about", "question");
                file.attach(2, "r.jpg", "b");
                file.commit(2, 1, Amount.ZERO, Amount.ZERO);
            }
            CloseTest.close(ledger, CloseTest.CLOSE);
        }
        database =
                LedgerFile.open(folder.resolve("book").resolve(Book.LEDGER), Duration.ZERO, false);
    }

    @AfterEach
    void leave() throws SQLException {
        database.close();
    }

    @ParameterizedTest
    @CsvSource(
            textBlock =
                    """
                    entry,        gross = 1
                    entry,        number = 5
                    profile,      kind = 'sale'
                    item,         product = 'x'
                    source,       name = 'x'
                    set_aside,    reason = 'x'
                    raised_query, question = 'x'
                    exchange_rate, units = '2'
                    attachment,   file = 'x'
                    close,        direction = 'nil'
                    close_box,    figure = 1
                    close_query,  question = 'x'
                    close_table,  name = 'x'
                    law_text,     text = 'x'
                    ruling,       rule = 'x'
                    closed_entry, vat = 1
                    close_correction, why = 'x'
                    """)
    void nothingIsChangedOrDeleted(String table, String change) throws SQLException {
        String before = rows(table);
        assertThat(before).isNotEmpty();

        assertThatThrownBy(() -> Sql.execute(database, "update %s set %s".formatted(table, change)))
                .hasMessageContaining(
                        "the ledger only grows: a row of %s is never changed".formatted(table));
        assertThatThrownBy(() -> Sql.execute(database, "delete from " + table))
                .hasMessageContaining(
                        "the ledger only grows: a row of %s is never deleted".formatted(table));
        assertThatThrownBy(
                        () ->
                                Sql.execute(
                                        database,
                                        "insert or replace into %1$s select * from %1$s"
                                                .formatted(table)))
                .hasMessageContaining(
                        "the ledger only grows: a row of %s is never deleted".formatted(table));
        assertThat(rows(table)).isEqualTo(before);
    }

    private String rows(String table) throws SQLException {
        return Sql.list(database, "select * from " + table, AppendOnlyTest::cells).toString();
    }

    private static List<String> cells(ResultSet row) throws SQLException {
        List<String> cells = new ArrayList<>();
        for (int i = 1; i <= row.getMetaData().getColumnCount(); i++) {
            cells.add(row.getString(i));
        }
        return cells;
    }

    /** A table without its two triggers would not be noticed by the test above. */
    @Test
    void everyTableIsCovered() throws SQLException {
        assertThat(
                        Sql.list(
                                database,
                                "select name from sqlite_master where type = 'table' and"
                                        + " name <> 'flyway_schema_history' and (select"
                                        + " count(*) from sqlite_master t where t.type ="
                                        + " 'trigger' and t.tbl_name = sqlite_master.name) <>"
                                        + " 2",
                                row -> row.getString(1)))
                .isEmpty();
        assertThat(
                        Sql.number(
                                database,
                                "select count(distinct tbl_name) from sqlite_master where"
                                        + " type = 'trigger'"))
                .isEqualTo(21);
    }

    /** Foreign keys are on: an entry cannot refer to a profile that is not there. */
    @Test
    void anEntryRefersToRowsThatAreThere() {
        assertThatThrownBy(
                        () ->
                                Sql.execute(
                                        database,
                                        "insert into entry (number, row, tax_point, profile, item)"
                                                + " values (2, 2, ?, 99, 1)",
                                        LocalDate.EPOCH.toEpochDay()))
                .hasMessageContaining("FOREIGN KEY constraint failed");
    }

    @Test
    void everyCommitIsOnTheDiskBeforeItIsReported() throws SQLException {
        assertThat(pragma("journal_mode")).isEqualTo("wal");
        assertThat(pragma("synchronous")).isEqualTo("2");
        assertThat(pragma("foreign_keys")).isEqualTo("1");
    }

    private String pragma(String name) throws SQLException {
        return Sql.first(database, "pragma " + name, row -> row.getString(1)).orElseThrow();
    }

    /** A period's entries are found by runs of numbers: no index to keep up, no table scan. */
    @Test
    void readingARunIsARangeOfRowNumbers() throws SQLException {
        assertThat(
                        Sql.list(
                                database,
                                "explain query plan " + EntryReader.RUN,
                                row -> row.getString("detail"),
                                1,
                                2,
                                3,
                                4))
                .containsExactly("SEARCH e USING INTEGER PRIMARY KEY (rowid>? AND rowid<?)");
        assertThat(
                        Sql.list(
                                database,
                                "explain query plan " + ClosedReader.RUN,
                                row -> row.getString("detail"),
                                "2026-09"))
                .containsExactly(
                        "SEARCH p USING INDEX sqlite_autoindex_close_1 (period=?)",
                        "SEARCH c USING INTEGER PRIMARY KEY (rowid>? AND rowid<?)",
                        "SEARCH e USING INTEGER PRIMARY KEY (rowid=?)");
        assertThat(
                        Sql.list(
                                database,
                                "select tbl_name from sqlite_master where type = 'index'"
                                        + " and tbl_name in ('entry', 'closed_entry')",
                                row -> row.getString(1)))
                .as("an occasion is closed once; few entries have particulars")
                .containsExactly("entry", "closed_entry");
    }
}
