package quarterfold.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import org.jdbi.v3.core.Handle;
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
    private Handle database;

    @BeforeEach
    void fill() {
        try (Ledger ledger = Samples.newLedger(folder)) {
            try (FileEntry file = ledger.begin("a", "a.csv", "plain-sheet")) {
                file.add(Samples.FULL);
                file.setAside(3, "no amount");
                file.raise("code", "about", "question");
                file.commit(2, 1, Amount.ZERO, Amount.ZERO);
            }
            CloseTest.close(ledger, CloseTest.CLOSE);
        }
        database =
                LedgerFile.open(folder.resolve("book").resolve(Book.LEDGER), Duration.ZERO, false);
    }

    @AfterEach
    void leave() {
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
                    close,        direction = 'nil'
                    close_box,    figure = 1
                    close_query,  question = 'x'
                    close_table,  name = 'x'
                    law_text,     text = 'x'
                    ruling,       rule = 'x'
                    closed_entry, vat = 1
                    """)
    void nothingIsChangedOrDeleted(String table, String change) {
        String before = rows(table);
        assertThat(before).isNotEmpty();

        assertThatThrownBy(() -> database.execute("update %s set %s".formatted(table, change)))
                .hasMessageContaining(
                        "the ledger only grows: a row of %s is never changed".formatted(table));
        assertThatThrownBy(() -> database.execute("delete from " + table))
                .hasMessageContaining(
                        "the ledger only grows: a row of %s is never deleted".formatted(table));
        assertThatThrownBy(
                        () ->
                                database.execute(
                                        "insert or replace into %1$s select * from %1$s"
                                                .formatted(table)))
                .hasMessageContaining(
                        "the ledger only grows: a row of %s is never deleted".formatted(table));
        assertThat(rows(table)).isEqualTo(before);
    }

    private String rows(String table) {
        return database.createQuery("select * from " + table).mapToMap().list().toString();
    }

    /** A table without its two triggers would not be noticed by the test above. */
    @Test
    void everyTableIsCovered() {
        assertThat(
                        database.createQuery(
                                        "select name from sqlite_master where type = 'table' and"
                                                + " name <> 'flyway_schema_history' and (select"
                                                + " count(*) from sqlite_master t where t.type ="
                                                + " 'trigger' and t.tbl_name = sqlite_master.name) <>"
                                                + " 2")
                                .mapTo(String.class)
                                .list())
                .isEmpty();
        assertThat(
                        database.createQuery(
                                        "select count(distinct tbl_name) from sqlite_master where"
                                                + " type = 'trigger'")
                                .mapTo(Integer.class)
                                .one())
                .isEqualTo(13);
    }

    /** Foreign keys are on: an entry cannot refer to a profile that is not there. */
    @Test
    void anEntryRefersToRowsThatAreThere() {
        assertThatThrownBy(
                        () ->
                                database.execute(
                                        "insert into entry (number, row, tax_point, profile, item)"
                                                + " values (2, 2, ?, 99, 1)",
                                        LocalDate.EPOCH.toEpochDay()))
                .hasMessageContaining("FOREIGN KEY constraint failed");
    }

    @Test
    void everyCommitIsOnTheDiskBeforeItIsReported() {
        assertThat(pragma("journal_mode")).isEqualTo("wal");
        assertThat(pragma("synchronous")).isEqualTo("2");
        assertThat(pragma("foreign_keys")).isEqualTo("1");
    }

    private String pragma(String name) {
        return database.createQuery("pragma " + name).mapTo(String.class).one();
    }

    /** A period's entries are found by runs of numbers: no index to keep up, no table scan. */
    @Test
    void readingARunIsARangeOfRowNumbers() {
        assertThat(
                        database.createQuery("explain query plan " + EntryReader.RUN)
                                .bind(0, 1)
                                .bind(1, 2)
                                .bind(2, 3)
                                .bind(3, 4)
                                .map((row, context) -> row.getString("detail"))
                                .list())
                .containsExactly("SEARCH e USING INTEGER PRIMARY KEY (rowid>? AND rowid<?)");
        assertThat(
                        database.createQuery("explain query plan " + ClosedReader.RUN)
                                .bind(0, "2026-09")
                                .map((row, context) -> row.getString("detail"))
                                .list())
                .containsExactly(
                        "SEARCH p USING INDEX sqlite_autoindex_close_1 (period=?)",
                        "SEARCH c USING INTEGER PRIMARY KEY (rowid>? AND rowid<?)",
                        "SEARCH e USING INTEGER PRIMARY KEY (rowid=?)");
        assertThat(
                        database.createQuery(
                                        "select tbl_name from sqlite_master where type = 'index'"
                                                + " and tbl_name in ('entry', 'closed_entry')")
                                .mapTo(String.class)
                                .list())
                .as("an entry is closed once; nothing else is kept up while a file is entered")
                .containsExactly("closed_entry");
    }
}
