package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every file of {@code fixtures/hostile}, named by its fault, is refused with the whole message
 * that {@code expected.csv} has for it, and changes nothing. A line of that file is all a new one
 * needs.
 */
class HostileFixturesTest {
    private static final Path FIXTURES = Path.of("fixtures/hostile");
    private static final String REGISTER = "expected.csv";

    @TempDir private static Path folder;
    private static Path book = Path.of("");
    private static String before = "";
    private static List<String> kept = List.of();

    record Hostile(String file, int exit, String says) {
        @Override
        public String toString() {
            return file;
        }
    }

    @BeforeAll
    static void makesABookWithAGoodFile() throws IOException {
        book = SmallBook.quarter(folder);
        before = ledger();
        kept = sources();
    }

    static List<Hostile> register() throws IOException {
        List<Hostile> all = new ArrayList<>();
        try (CSVParser parser =
                CSVParser.parse(
                        FIXTURES.resolve(REGISTER),
                        StandardCharsets.UTF_8,
                        CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get())) {
            for (CSVRecord row : parser) {
                all.add(
                        new Hostile(
                                row.get("file"),
                                Integer.parseInt(row.get("exit")),
                                row.get("says")));
            }
        }
        return all;
    }

    @ParameterizedTest
    @MethodSource("register")
    void isRefusedAndChangesNothing(Hostile hostile) throws IOException {
        Run run = Run.of("--book", book, "import", FIXTURES.resolve(hostile.file()));

        assertThat(run.err()).isEqualTo(hostile.says() + "\n");
        assertThat(run.code()).isEqualTo(hostile.exit());
        assertThat(run.out()).contains("refused: nothing was entered");
        assertThat(ledger()).isEqualTo(before);
        assertThat(sources()).isEqualTo(kept);
    }

    @Test
    void everyFileIsInTheRegister() throws IOException {
        Set<String> named =
                register().stream()
                        .map(Hostile::file)
                        .collect(Collectors.toCollection(TreeSet::new));
        try (Stream<Path> files = Files.list(FIXTURES)) {
            assertThat(files.map(f -> String.valueOf(f.getFileName())))
                    .filteredOn(f -> !f.equals(REGISTER) && !f.equals("README.md"))
                    .containsExactlyInAnyOrderElementsOf(named)
                    .hasSizeGreaterThan(50);
        }
    }

    private static String ledger() {
        return Run.of("--book", book, "ledger", "--json").out();
    }

    private static List<String> sources() throws IOException {
        try (Stream<Path> files = Files.list(book.resolve("sources"))) {
            return files.map(f -> String.valueOf(f.getFileName())).sorted().toList();
        }
    }
}
