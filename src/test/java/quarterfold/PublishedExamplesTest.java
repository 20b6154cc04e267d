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

    /** Settings that a case states where it needs them, as the settings file has them. */
    private static final List<String> OPTIONAL =
            List.of(
                    "scheme",
                    "flat_rate_sector",
                    "annual_accounting",
                    "partial_exemption_year_ends",
                    "partial_exemption_last_year");

    @TempDir private Path folder;

    static Stream<Path> wholeQuarters() throws IOException {
        try (Stream<Path> found = Files.list(EXAMPLES)) {
            return found.filter(Files::isDirectory).sorted().toList().stream();
        }
    }

    @Test
    void examplesAreThere() throws IOException {
        assertThat(wholeQuarters().map(p -> p.getFileName().toString()))
                .contains("T-106", "T-107", "T-109", "T-1006", "13A-1", "13A-2", "T-504");
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("wholeQuarters")
    void givesTheBoxesOfItsSource(Path example) throws IOException {
        Map<String, String> facts = facts(example);
        Path book = book(facts);
        for (String goods : List.of("products.csv", "bundles.csv")) {
            if (Files.exists(example.resolve(goods))) {
                Files.copy(example.resolve(goods), book.resolve(goods));
            }
        }
        enter(example, book, facts);
        for (Path rates : rates(example)) {
            done(Run.of("--book", book, "import", rates));
        }

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

    /**
     * Enters {@code sheet.csv}; or sheet-1.csv, sheet-2.csv … in their order, each followed by the
     * close of the period that stands in its place in the fact {@code closes}.
     */
    private static void enter(Path example, Path book, Map<String, String> facts) {
        String closes = facts.getOrDefault("closes", "");
        if (closes.isEmpty()) {
            done(Run.of("--book", book, "import", example.resolve("sheet.csv")));
            return;
        }
        int sheet = 0;
        for (String period : closes.split(" ", -1)) {
            sheet++;
            done(
                    Run.of(
                            "--book",
                            book,
                            "import",
                            example.resolve("sheet-%d.csv".formatted(sheet))));
            if (!period.equals("-")) {
                done(Run.of("--book", book, "close", period));
            }
        }
        assertThat(example.resolve("sheet-%d.csv".formatted(sheet + 1))).doesNotExist();
    }

    /** The files of exchange rates; after the sheets, since rates that come later count too. */
    private static List<Path> rates(Path example) throws IOException {
        try (Stream<Path> files = Files.list(example)) {
            return files.filter(f -> f.getFileName().toString().startsWith("rates"))
                    .sorted()
                    .toList();
        }
    }

    private static void done(Run run) {
        assertThat(run.code()).as(run.err()).isZero();
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
        String yaml = Files.readString(settings).replaceFirst("(?m)^choices: .*$", choices);
        for (String key : OPTIONAL) {
            if (facts.containsKey(key)) {
                String stated = key + ": " + fact(facts, key);
                yaml = yaml.replaceFirst("(?m)^(# )?" + key + ": .*$", stated);
                assertThat(yaml).contains("\n" + stated + "\n");
            }
        }
        Files.writeString(settings, yaml);
        assertThat(Files.readString(settings)).contains(choices);
        if (facts.containsKey("registered_to")) {
            String last = "registered_to: " + fact(facts, "registered_to");
            String now = Files.readString(settings);
            Files.writeString(settings, now.replaceFirst("(?m)^(# )?registered_to: .*$", last));
            assertThat(Files.readString(settings)).contains(last);
        }
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
