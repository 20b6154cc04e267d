package quarterfold.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.money.Amount;

/** A ledger of the first schema, with a close, is brought up to date and loses nothing. */
class MigrationTest {

    private static final String[] FIRST = {
        "insert into profile values (1, 'sale', 'GBP', '', '', '', '', '', '', '', 'consumer', '',"
                + " 'Quaylark', 'no', '', 'unstated', '100')",
        "insert into item values (1, '', 'A kettle')",
        "insert into source values (1, 'aa', 'a.csv', 'plain-sheet', 1, 1, 1, 1, 600000, 600000,"
                + " 20666, 20666)",
        "insert into entry values (1, 2, 20666, 1, 1, null, null, null, null, 600000, null, null,"
                + " null)",
        "insert into close values ('2026-09', 20635, 20726, 20764, 'pay', 'settings', 1, 1, 1)",
        "insert into close_box values ('2026-09', 1, '1', 100000, 100000, 100000)",
        "insert into close_query values ('2026-09', 1, 'E1/x', 1, 'a.csv row 2', 'Well?', 100000)",
        "insert into ruling values (1, 'uk-sale', 'S17a', '20%')",
        "insert into closed_entry values (1, 1, 1, 500000, 100000, 0, '1:10.0000 6:50.0000')"
    };

    @TempDir Path folder;
    private Path file;

    @BeforeEach
    void first() throws SQLException {
        file = folder.resolve("ledger.sqlite");
        Flyway.configure(Migrations.class.getClassLoader())
                .dataSource("jdbc:sqlite:" + file.toAbsolutePath(), "", "")
                .locations("classpath:quarterfold/ledger/migration")
                .target("1")
                .load()
                .migrate();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            for (String sql : FIRST) {
                statement.execute(sql);
            }
        }
    }

    @Test
    void nothingIsLost() {
        try (Ledger ledger = Ledger.open(file, Duration.ZERO)) {
            List<Entry> entries = new ArrayList<>();
            ledger.forEach(entries::add);
            assertThat(entries).hasSize(1);
            assertThat(entries.get(0).amounts().gross()).contains(Amount.of("60"));
            assertThat(entries.get(0).line().particulars()).isEqualTo(Particulars.NONE);
            assertThat(ledger.decisions()).isEmpty();
            assertThat(ledger.closedEntry(1))
                    .containsExactly(
                            new ClosedEntry(
                                    YearMonth.of(2026, 9),
                                    1,
                                    LocalDate.ofEpochDay(20666),
                                    "supply",
                                    "in-its-period",
                                    "uk-sale",
                                    "S17a",
                                    "20%",
                                    Amount.of("50"),
                                    Amount.of("10"),
                                    Amount.ZERO,
                                    Map.of("1", Amount.of("10"), "6", Amount.of("50"))));
        }
    }

    @Test
    void whatMayNotChangeStillMayNot() throws SQLException {
        Ledger.open(file, Duration.ZERO).close();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            for (String table : List.of("closed_entry", "ruling", "close_query", "close")) {
                assertThatThrownBy(() -> statement.execute("delete from " + table))
                        .hasMessageContaining(
                                "the ledger only grows: a row of %s is never deleted"
                                        .formatted(table));
            }
        }
    }
}
