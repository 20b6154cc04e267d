package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What is none of a file's faults: no permission, an output that takes nothing, an interruption.
 */
class FailingSystemTest {
    private static final int ROWS = 400_000;

    @TempDir private Path folder;
    private Path book = Path.of("");

    @BeforeEach
    void makesTheBook() throws IOException {
        book = SmallBook.quarter(folder);
    }

    /** The system's superuser may read any file, so for that one it is a file no one can read. */
    @Test
    void aFileThatMayNotBeRead() throws IOException {
        Path file = SmallBook.file(folder, "more.csv", "date,kind,gross\n2026-07-01,sale,6.00\n");
        Files.setPosixFilePermissions(file, Set.of());
        boolean readable = Files.isReadable(file);
        Path unreadable = readable ? Path.of("/proc/self/mem") : file;
        String why = readable ? "Input/output error" : "permission denied";

        assertThat(Run.of("--book", book, "import", unreadable).calling(folder, "FOLDER"))
                .isEqualTo(
                        new Run(
                                74,
                                "",
                                "%s: could not be copied into FOLDER/book/sources: %s\n"
                                        .formatted(
                                                readable ? unreadable : "FOLDER/more.csv", why)));
        assertUnchanged();
    }

    /** The reader of the output has gone, as with {@code | head}: what is entered is whole. */
    @Test
    void aBrokenPipe() throws Exception {
        Path more = SmallBook.file(folder, "more.csv", "date,kind,gross\n2026-07-01,sale,6.00\n");
        Process process = program("import", more).start();
        process.getInputStream().close();
        assertThat(process.waitFor()).isEqualTo(74);

        assertThat(Files.readString(folder.resolve("err.txt")))
                .isEqualTo("The output could not be written whole.\n");
        assertThat(Run.of("--book", book, "verify").code()).isZero();
        assertThat(Run.of("--book", book, "ledger", "--json").out().lines()).hasSize(7);
    }

    @Test
    void anOutputThatIsFull() throws Exception {
        Process process = program("ledger").redirectOutput(new File("/dev/full")).start();
        assertThat(process.waitFor()).isEqualTo(74);
        assertThat(Files.readString(folder.resolve("err.txt")))
                .isEqualTo("The output could not be written whole.\n");
    }

    /**
     * Stopped as by Ctrl-C, for which Java has one way of ending; here by the signal that no shell
     * makes its children ignore. It puts away what it had begun, and says so.
     */
    @Test
    void anImportThatIsInterrupted() throws Exception {
        StringBuilder rows = new StringBuilder("date,kind,gross\n");
        rows.append("2026-07-01,sale,6.00\n".repeat(ROWS));
        Path big = SmallBook.file(folder, "big.csv", rows.toString());
        Path sources = book.resolve("sources");
        Process process = program("import", big).start();
        while (process.isAlive()
                && names(sources).stream().noneMatch(n -> n.endsWith("-big.csv"))) {
            LockSupport.parkNanos(1_000_000); // until it has its copy, and all to read still
        }
        process.destroy();
        assertThat(process.waitFor()).isEqualTo(128 + 15);

        assertThat(Files.readString(folder.resolve("err.txt")))
                .isEqualTo("Interrupted: nothing was entered.\n");
        assertThat(names(sources)).as("no copy and no lock is left").hasSize(1);
        assertThat(Run.of("--book", book, "ledger", "--json").out().lines().count()).isEqualTo(6);
        SmallBook.enter(
                book, SmallBook.file(folder, "more.csv", "date,kind,gross\n2026-07-01,sale,6\n"));
        assertThat(names(sources)).as("the copies of the two files that were entered").hasSize(2);
        assertThat(Run.of("--book", book, "verify").code()).isZero();
    }

    private static List<String> names(Path sources) {
        return List.of(Objects.requireNonNull(sources.toFile().list()));
    }

    private void assertUnchanged() {
        assertThat(Run.of("--book", book, "ledger", "--json").out().lines()).hasSize(6);
        assertThat(names(book.resolve("sources"))).hasSize(1);
    }

    private ProcessBuilder program(Object... args) {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(
                List.of(
                        "-Xmx256m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Main.class.getName(),
                        "--book",
                        book.toString()));
        List.of(args).forEach(arg -> command.add(arg.toString()));
        return new ProcessBuilder(command).redirectError(folder.resolve("err.txt").toFile());
    }
}
