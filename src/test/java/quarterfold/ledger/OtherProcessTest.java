package quarterfold.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Another process on the same book. */
class OtherProcessTest {
    @TempDir Path folder;

    @Test
    void aBookWhoseProcessWasKilledWhileEnteringAFileOpensWhole() throws Exception {
        try (Ledger ledger = Samples.newLedger(folder)) {
            Samples.enter(ledger, "a", Samples.FULL);
        }
        Path file = folder.resolve("book").resolve(Book.LEDGER);
        Process process = OtherProcess.start(file, "enter");
        try (BufferedReader out = process.inputReader(StandardCharsets.UTF_8)) {
            assertThat(out.readLine()).isEqualTo("writing");
            try (Ledger ledger = Samples.again(folder, Duration.ofMillis(50))) {
                assertThatThrownBy(() -> ledger.begin("b", "b.csv", "plain-sheet"))
                        .hasMessage(
                                file
                                        + ": the book is in use by another quarterfold process;"
                                        + " nothing was changed, try again when it has finished");
                assertThat(Samples.entries(ledger)).hasSize(1);
            }
        } finally {
            process.destroyForcibly().waitFor();
        }

        assertThat(Files.size(file.resolveSibling("ledger.sqlite-wal"))).isGreaterThan(1_000_000);
        try (Ledger ledger = Samples.again(folder, Duration.ofSeconds(10))) {
            assertThat(ledger.source("killed")).isEmpty();
            assertThat(Samples.entries(ledger)).containsExactly(new Entry(1, 1, Samples.FULL));
            Samples.enter(ledger, "b", Samples.FULL);
            assertThat(Samples.numbers(Samples.entries(ledger))).containsExactly(1L, 2L);
        }
    }

    /** Loading the library that migrates would cost every command that reads a ledger. */
    @Test
    void openingALedgerThatIsUpToDateLoadsNoMigrations() throws IOException {
        Samples.newLedger(folder).close();
        Path ledger = folder.resolve("book").resolve(Book.LEDGER);
        Process process = OtherProcess.start(ledger, "open", "-Xlog:class+load");
        List<String> lines;
        try (BufferedReader out = process.inputReader(StandardCharsets.UTF_8)) {
            lines = out.lines().toList();
        }

        assertThat(lines)
                .contains("0")
                .anyMatch(l -> l.contains("quarterfold.ledger.LedgerFile "))
                .noneMatch(l -> l.contains("org.flywaydb"));
    }
}
