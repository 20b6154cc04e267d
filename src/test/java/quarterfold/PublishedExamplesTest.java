package quarterfold;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import quarterfold.cli.Json;
import quarterfold.cli.Run;

/**
 * The worked examples of {@code fixtures/published} through the whole program: a plain sheet in,
 * nine boxes out. The source of each stands in its {@code case.csv}.
 */
class PublishedExamplesTest {

    private static final Path EXAMPLES = Path.of("fixtures", "published");

    @TempDir private Path folder;

    static Stream<Path> wholeQuarters() throws IOException {
        try (Stream<Path> found = Files.list(EXAMPLES)) {
            return found.filter(Files::isDirectory).sorted().toList().stream();
        }
    }

    @Test
    void examplesAreThere() throws IOException {
        assertThat(wholeQuarters().map(p -> p.getFileName().toString()))
                .contains("T-106", "T-107", "T-109", "T-1006", "13A-1", "13A-2");
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("wholeQuarters")
    void givesTheBoxesOfItsSource(Path example) throws IOException {
        Map<String, String> facts = facts(example);
        Path book = book(facts);
        Run entered = Run.of("--book", book, "import", example.resolve("sheet.csv"));
        assertThat(entered.code()).as(entered.err()).isZero();

        for (String period : fact(facts, "period").split(" ", -1)) {
            Run run = Run.of("--book", book, "return", period, "--json");
            Map<String, String> vatReturn = Json.flat(run.out());
            String source = fact(facts, "title") + " [" + fact(facts, "source") + "] " + run.err();
            Map<String, String> boxes = new TreeMap<>();
            vatReturn.forEach(
                    (path, text) -> {
                        if (path.startsWith("boxes/")) {
                            boxes.put(path.substring("boxes/".length()), text);
                        }
                    });
            assertThat(ReturnRules.broken(run.out())).as(source).isEmpty();
            assertThat(boxes).as(source).isEqualTo(expected(example, period));
            CSVRecord outcome =
                    rows(example.resolve("outcome.csv")).stream()
                            .filter(r -> r.get("period").equals(period))
                            .findFirst()
                            .orElseThrow();
            assertThat(vatReturn.get("direction")).as(source).isEqualTo(outcome.get("direction"));
            assertThat(vatReturn.get("queries")).as(source).isEqualTo(outcome.get("queries"));
        }
    }

    private Path book(Map<String, String> facts) throws IOException {
        Path book = folder.resolve("book");
        Run made =
                Run.of(
                        "--book",
                        book,
                        "new",
                        "--name",
                        "Example",
                        "--country",
                        fact(facts, "country"),
                        "--vat-number",
                        fact(facts, "vat_number"),
                        "--registered-from",
                        fact(facts, "registered_from"),
                        "--period-ends",
                        fact(facts, "period_ends").replace(' ', ','),
                        "--rounding",
                        fact(facts, "rounding"),
                        "--stock",
                        fact(facts, "stock"),
                        fact(facts, "northern_ireland").equals("yes")
                                ? "--northern-ireland"
                                : "--zone=Europe/London");
        assertThat(made.code()).as(made.err()).isZero();
        Path settings = book.resolve("book.yaml");
        String choices =
                Stream.of(fact(facts, "choices").split(" ", -1))
                        .filter(c -> !c.isEmpty())
                        .map(c -> c.replace("=", ": "))
                        .collect(Collectors.joining(", ", "choices: {", "}"));
        String yaml = Files.readString(settings);
        Files.writeString(settings, yaml.replaceFirst("(?m)^choices: .*$", choices));
        assertThat(Files.readString(settings)).contains(choices);
        return book;
    }

    private static String fact(Map<String, String> facts, String name) {
        return Optional.ofNullable(facts.get(name))
                .orElseThrow(() -> new AssertionError("no " + name));
    }

    private static Map<String, String> facts(Path example) throws IOException {
        Map<String, String> facts = new TreeMap<>();
        rows(example.resolve("case.csv")).forEach(r -> facts.put(r.get("key"), r.get("value")));
        return facts;
    }

    private static Map<String, String> expected(Path example, String period) throws IOException {
        Map<String, String> boxes = new TreeMap<>();
        rows(example.resolve("expected.csv")).stream()
                .filter(r -> r.get("period").equals(period))
                .forEach(r -> boxes.put(r.get("box"), r.get("figure")));
        return boxes;
    }

    private static List<CSVRecord> rows(Path file) throws IOException {
        CSVFormat format = CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();
        try (CSVParser rows = CSVParser.parse(file, StandardCharsets.UTF_8, format)) {
            return rows.getRecords();
        }
    }
}
