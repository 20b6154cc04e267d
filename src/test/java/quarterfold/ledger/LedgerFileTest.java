package quarterfold.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.time.Duration;
import java.time.YearMonth;
import org.flywaydb.core.api.MigrationInfo;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.LedgerException.Fault;

class LedgerFileTest {
    private static final Duration SOON = Duration.ofMillis(50);

    @TempDir Path folder;
    private Path file;

    @BeforeEach
    void make() {
        Book.create(folder.resolve("book"), Samples.SETTINGS);
        file = folder.resolve("book").resolve(Book.LEDGER);
    }

    /** The number the program goes by is that of the last migration, and they were all run. */
    @Test
    void theSchemaIsThatOfTheLastMigration() {
        MigrationInfo[] migrations = Migrations.flyway(file).info().all();

        assertThat(migrations).hasSizeBetween(1, LedgerFile.SCHEMA);
        assertThat(migrations)
                .allSatisfy(m -> assertThat(m.getState().isApplied()).isTrue())
                .extracting(m -> String.valueOf(m.getVersion()))
                .endsWith(String.valueOf(LedgerFile.SCHEMA));
        Migrations.flyway(file).validate();
    }

    @Test
    void aLedgerOfANewerVersionIsRefused() {
        execute("pragma user_version = 7");

        assertThatThrownBy(() -> Samples.again(folder, SOON))
                .isInstanceOfSatisfying(LedgerException.class, LedgerFileTest::isUnreadable)
                .hasMessage(
                        file
                                + ": found schema 7; this program knows schemas up to 5: the book"
                                + " was last used by a newer version, use that one");
    }

    private void execute(String sql) {
        Transaction.run(
                file,
                () -> {
                    try (Connection connection = LedgerFile.open(file, SOON, false)) {
                        Sql.execute(connection, sql);
                    }
                    return file;
                });
    }

    private static void isUnreadable(LedgerException e) {
        assertThat(e.fault()).isEqualTo(Fault.UNREADABLE);
        assertThat(e.fault().exitCode()).isEqualTo(74);
    }

    @Test
    void aMissingLedgerIsNotMadeAnew() throws IOException {
        Files.delete(file);

        assertThatThrownBy(() -> Samples.again(folder, SOON))
                .isInstanceOfSatisfying(LedgerException.class, LedgerFileTest::isUnreadable)
                .hasMessage(file + ": the ledger is missing; put it back from a copy of the book");
        assertThat(file).doesNotExist();
    }

    @Test
    void aFileThatIsNoLedgerIsRefused() throws IOException {
        Files.writeString(file, "not a database, but longer than its header is".repeat(9));

        assertThatThrownBy(() -> Samples.again(folder, SOON))
                .isInstanceOfSatisfying(LedgerException.class, LedgerFileTest::isUnreadable)
                .hasMessageStartingWith(file + ": this is not a ledger; use a copy of the book (");
    }

    @Test
    void aSecondWriterIsToldTheBookIsInUse() {
        try (Ledger first = Samples.again(folder, SOON);
                Ledger second = Samples.again(folder, SOON)) {
            Samples.enter(first, "a", Samples.FULL);
            try (FileEntry writing = first.begin("b", "b.csv", "plain-sheet")) {
                writing.add(Samples.FULL);
                String message =
                        file
                                + ": the book is in use by another quarterfold process; nothing was"
                                + " changed, try again when it has finished";
                assertThatThrownBy(() -> second.begin("c", "c.csv", "plain-sheet"))
                        .isInstanceOfSatisfying(
                                LedgerException.class,
                                e -> {
                                    assertThat(e.fault()).isEqualTo(Fault.IN_USE);
                                    assertThat(e.fault().exitCode()).isEqualTo(74);
                                })
                        .hasMessage(message);
                assertThatThrownBy(() -> second.beginClose(YearMonth.of(2026, 9)))
                        .hasMessage(message);
                assertThat(Samples.entries(second)).hasSize(1);
            }
            Samples.enter(second, "c", Samples.FULL);
            assertThat(Samples.numbers(Samples.entries(first))).containsExactly(1L, 2L);
        }
    }

    @Test
    void aSecondWriterWaitsForTheFirst() throws InterruptedException {
        try (Ledger first = Samples.again(folder, SOON);
                Ledger second = Samples.again(folder, Duration.ofMinutes(1))) {
            FileEntry writing = first.begin("a", "a.csv", "plain-sheet");
            writing.add(Samples.FULL);
            Thread waiting = new Thread(() -> Samples.enter(second, "b", Samples.FULL));
            waiting.start();
            waiting.join(100);
            assertThat(waiting.isAlive()).isTrue();
            Amounts amounts = Samples.FULL.amounts();
            writing.commit(1, 1, amounts.money(), amounts.money());
            writing.close();
            waiting.join();
            assertThat(second.sources()).extracting(Source::sha256).containsExactly("a", "b");
            assertThat(Samples.numbers(Samples.entries(first))).containsExactly(1L, 2L);
        }
    }
}
