package quarterfold;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.cli.Child;
import quarterfold.cli.Json;
import quarterfold.cli.Run;
import quarterfold.cli.SmallBook;
import quarterfold.ledger.Book;

/** Two processes on one book, and one that is killed at its work. */
class TwoProcessesTest {

    private static final String IN_USE =
            "BOOK/ledger.sqlite: the book is in use by another quarterfold process; nothing was changed, try again when it has finished\n";
    private static final int ROWS = 20_000;

    @TempDir private Path folder;

    /** Waits as long as the program does before it gives up, some ten seconds, once for all. */
    @Test
    void writersAreToldThatTheBookIsInUseAndReadersAreServed() throws Exception {
        Path book = SmallBook.quarter(folder);
        Path more = SmallBook.file(folder, "more.csv", "date,kind,gross\n2026-07-01,sale,6.00\n");
        String before = Run.of("--book", book, "ledger", "--json").out();
        CompletableFuture<Run> imported;
        CompletableFuture<Run> same;
        CompletableFuture<Run> closed;
        // The other process has copied this file already and is about to enter it.
        Path theirs =
                SmallBook.file(folder, "theirs.csv", "date,kind,gross\n2026-07-01,sale,9.00\n");
        Path copy = Book.open(book).archive().archive(theirs).path();

        try (Connection other = connect(book);
                Statement statement = other.createStatement()) {
            statement.execute("begin immediate");
            imported = start("--book", book, "import", more);
            same = start("--book", book, "import", theirs);
            closed = start("--book", book, "close", "2026-09");
            assertThat(Run.of("--book", book, "ledger", "--json").out()).isEqualTo(before);
            assertThat(Run.of("--book", book, "return", "2026-09").code()).isZero();
            assertThat(imported.get().calling(book, "BOOK")).isEqualTo(new Run(74, "", IN_USE));
            assertThat(same.get().calling(book, "BOOK")).isEqualTo(new Run(74, "", IN_USE));
            assertThat(closed.get().calling(book, "BOOK")).isEqualTo(new Run(74, "", IN_USE));
            statement.execute("rollback");
        }

        assertThat(Run.of("--book", book, "ledger", "--json").out()).isEqualTo(before);
        assertThat(book.resolve("sources").toFile().list())
                .as("the quarter's copy and the other process's, and none of the refused file")
                .hasSize(2)
                .contains(copy.getFileName().toString());
        assertThat(book.resolve("papers").toFile().list()).isEmpty();
        SmallBook.enter(book, more);
        SmallBook.setAside(book, "E4/evidence-missing");
        assertThat(Run.of("--book", book, "close", "2026-09").code()).isZero();
    }

    /**
     * The second import reaches its turn while the first writer holds the book, and waits for it.
     */
    @Test
    void secondWriterWaitsForTheFirst() throws Exception {
        Path book = SmallBook.quarter(folder);
        Path more = SmallBook.file(folder, "more.csv", "date,kind,gross\n2026-07-01,sale,6.00\n");
        try (Connection other = connect(book);
                Statement statement = other.createStatement()) {
            statement.execute("begin immediate");
            CompletableFuture<Run> imported = start("--book", book, "import", more);
            until(() -> files(book.resolve("sources")) > 1 || imported.isDone());
            assertThat(imported).as("holds until the first has finished").isNotDone();
            statement.execute("rollback");
            assertThat(imported.get().code()).as(imported.get().err()).isZero();
        }
        assertThat(Run.of("--book", book, "ledger", "--json").out().lines()).hasSize(7);
    }

    /** No entry may name a source whose file is gone. */
    @Test
    void importWhoseCopyWasRemovedEntersNothing() throws Exception {
        Path book = SmallBook.quarter(folder);
        Path more = SmallBook.file(folder, "more.csv", "date,kind,gross\n2026-07-01,sale,6.00\n");
        Path sources = book.resolve("sources");
        try (Connection other = connect(book);
                Statement statement = other.createStatement()) {
            statement.execute("begin immediate");
            CompletableFuture<Run> imported = start("--book", book, "import", more);
            until(() -> copies(sources, "more.csv").size() == 1 || imported.isDone());
            Path copy = copies(sources, "more.csv").get(0);
            Files.delete(copy);
            statement.execute("rollback");
            Run told = imported.get().calling(folder, "FOLDER");
            assertThat(told.code()).isEqualTo(74);
            assertThat(told.err())
                    .isIn(
                            "more.csv: its copy in the book was removed by another import of the same file; nothing was entered, try again\n",
                            // where it was gone before it could be opened
                            "FOLDER/more.csv: could not be read: FOLDER/book/sources/%s: there is no such file\n"
                                    .formatted(copy.getFileName()));
        }
        assertThat(Run.of("--book", book, "ledger", "--json").out().lines()).hasSize(6);
        SmallBook.enter(book, more);
    }

    /** Killed at different moments, the book opens with whole files only, and goes on. */
    @Test
    void killedImportLeavesWholeFiles() throws Exception {
        Path book = SmallBook.empty(folder);
        List<Path> big = new ArrayList<>();
        for (int i = 1; i <= 4; i++) {
            big.add(SmallBook.file(folder, "big-%d.csv".formatted(i), rows(i)));
        }
        Path sources = book.resolve("sources");
        Path said = folder.resolve("out.txt");
        Path log = book.resolve("ledger.sqlite-wal");
        List<BooleanSupplier> moments =
                List.of(
                        () -> files(sources) > 0,
                        () -> size(log) > 0,
                        () -> size(log) > 1 << 20,
                        () -> size(said) > 300);
        int whole = 0;
        for (BooleanSupplier moment : moments) {
            List<Object> args = new ArrayList<>(List.of("--book", book, "import"));
            args.addAll(big);
            Files.deleteIfExists(said);
            Process killed = Child.start(List.of("-Xmx256m"), folder, args.toArray());
            until(() -> moment.getAsBoolean() || !killed.isAlive());
            assertThat(killed.destroyForcibly().waitFor()).as("killed at its work").isNotZero();

            Map<String, Long> files = wholeFiles(book);
            assertThat(files.values()).allMatch(entries -> entries == ROWS);
            assertThat(files.size()).isGreaterThanOrEqualTo(whole);
            whole = files.size();
            Run asked = Run.of("--book", book, "return", "2026-09", "--json");
            assertThat(asked.code()).as(asked.err()).isZero();
            // VAT of 6.00 is 1.00, value 5.00, in every line
            assertThat(Json.flat(asked.out()))
                    .containsEntry("boxes/1", "%d.00".formatted(whole * ROWS))
                    .containsEntry("boxes/6", Integer.toString(5 * whole * ROWS));
        }
        big.forEach(file -> SmallBook.enter(book, file));
        assertThat(wholeFiles(book)).hasSize(big.size());
        try (Stream<Path> kept = Files.list(sources)) {
            assertThat(kept.map(f -> f.getFileName().toString()).filter(f -> !f.startsWith(".")))
                    .hasSize(big.size());
        }
    }

    private static CompletableFuture<Run> start(Object... args) {
        return CompletableFuture.supplyAsync(() -> Run.of(args), task -> new Thread(task).start());
    }

    private static String rows(int file) {
        StringBuilder text = new StringBuilder("date,kind,document,gross,rate\n");
        for (int i = 1; i <= ROWS; i++) {
            text.append("2026-07-01,sale,F")
                    .append(file)
                    .append('-')
                    .append(i)
                    .append(",6.00,20\n");
        }
        return text.toString();
    }

    /** Each source with the entries it really has, found without the program. */
    private static Map<String, Long> wholeFiles(Path book) throws SQLException, IOException {
        Map<String, Long> files = new LinkedHashMap<>();
        try (Connection connection = connect(book);
                Statement statement = connection.createStatement()) {
            try (ResultSet row = statement.executeQuery("pragma integrity_check")) {
                assertThat(row.getString(1)).isEqualTo("ok");
            }
            try (ResultSet row =
                    statement.executeQuery(
                            "select count(*), coalesce(max(number), 0) from entry")) {
                assertThat(row.getLong(1)).as("numbers without a gap").isEqualTo(row.getLong(2));
            }
            try (ResultSet row =
                    statement.executeQuery(
                            "select s.name, s.sha256, (select count(*) from entry e where e.number"
                                    + " between s.first_entry and s.first_entry + s.entries - 1)"
                                    + " from source s order by s.id")) {
                while (row.next()) {
                    files.put(row.getString(1), row.getLong(3));
                    assertThat(
                                    book.resolve("sources")
                                            .resolve(
                                                    row.getString(2).substring(0, 12)
                                                            + "-"
                                                            + row.getString(1)))
                            .exists();
                }
            }
        }
        return files;
    }

    private static Connection connect(Path book) throws SQLException {
        return DriverManager.getConnection("jdbc:sqlite:" + book.resolve("ledger.sqlite"));
    }

    private static void until(BooleanSupplier reached) {
        while (!reached.getAsBoolean()) {
            LockSupport.parkNanos(1_000_000);
        }
    }

    private static int files(Path folder) {
        String[] names = folder.toFile().list();
        return names == null ? 0 : names.length;
    }

    private static List<Path> copies(Path folder, String name) {
        return Stream.of(Objects.requireNonNullElse(folder.toFile().list(), new String[0]))
                .filter(file -> file.endsWith("-" + name))
                .map(folder::resolve)
                .toList();
    }

    private static long size(Path file) {
        return file.toFile().length();
    }
}
