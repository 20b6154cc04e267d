package quarterfold;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

/**
 * {@code fixtures/published/examples.csv}: every worked example we know of, each with what tests it
 * or the reason why nothing does.
 */
class ExamplesRegisterTest {

    private static final Path EXAMPLES = Path.of("fixtures", "published");

    /** Examples by the hundred of their subject, from the first to the last of each. */
    private static final Map<Integer, Integer> NUMBERED =
            Map.of(100, 12, 200, 7, 300, 8, 400, 14, 500, 7, 600, 10, 700, 19, 800, 4, 900, 2);

    private static final int PRICES = 1000;

    /** Examples of sections, by the section's number. */
    private static final String LETTERED =
            "1-A 1-B 1-C 1-D 2-A 2-B 2-C 2-D 3-A 3.1 3.2 4-A 4-B 4-C 4.2 4.3 4.4 5-A 5-B 6-A 6-B 6-C"
                    + " LC-1 LC-2 6.4-point-of-sale 6.4-apportionment 6.4-direct-calculation"
                    + " 6.5-relief 6.5 VBDR6000 6.6 7 8-A 9-A 11-A 11-B 13A-1 13A-2 13A-3";

    @Test
    void everyExampleIsThereOnce() throws IOException {
        List<String> expected =
                Stream.concat(
                                Stream.concat(
                                        NUMBERED.entrySet().stream()
                                                .flatMap(n -> numbered(n.getKey(), n.getValue())),
                                        numbered(PRICES, 9)),
                                Arrays.stream(LETTERED.split(" ", -1)))
                        .toList();
        assertThat(rows().stream().map(r -> r.get("id")).toList())
                .hasSize(131)
                .containsExactlyInAnyOrderElementsOf(expected);
    }

    private static Stream<String> numbered(int hundred, int count) {
        return IntStream.rangeClosed(1, count).mapToObj(n -> "T-" + (hundred + n));
    }

    @Test
    void everyExampleIsTestedOrSaysWhyNot() throws IOException {
        List<String> wrong = new ArrayList<>();
        for (CSVRecord row : rows()) {
            if (row.get("tested_by").isBlank() == row.get("skipped_why").isBlank()) {
                wrong.add(row.get("id") + ": state either tested_by or skipped_why");
            }
            if (!Set.of("published", "derived").contains(row.get("figures"))) {
                wrong.add(row.get("id") + ": figures are published or derived");
            }
            if (row.get("source").isBlank() || row.get("what").isBlank()) {
                wrong.add(row.get("id") + ": say what it is and where it comes from");
            }
        }
        assertThat(wrong).isEmpty();
    }

    @Test
    void whatTestsAnExampleExists() throws IOException {
        Map<String, Set<String>> folders = folders();
        Set<String> ids = rows().stream().map(r -> r.get("id")).collect(Collectors.toSet());
        List<String> wrong = new ArrayList<>();
        for (CSVRecord row : rows()) {
            String id = row.get("id");
            for (String by : row.get("tested_by").split(" ", -1)) {
                boolean exists =
                        by.isEmpty()
                                || (by.equals("folders") && folders.containsKey(id))
                                || (by.endsWith(".csv") && idsOf(by).contains(id))
                                || (by.contains("#") && isTest(by))
                                || (!by.equals(id) && ids.contains(by));
                if (!exists) {
                    wrong.add(id + ": nothing is '" + by + "' for it");
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    @Test
    void noFolderIsForgotten() throws IOException {
        Map<String, String> testedBy = new TreeMap<>();
        rows().forEach(r -> testedBy.put(r.get("id"), r.get("tested_by")));
        List<String> wrong = new ArrayList<>();
        folders()
                .forEach(
                        (id, names) -> {
                            String by = testedBy.getOrDefault(id, "");
                            if (!List.of(by.split(" ", -1)).contains("folders")) {
                                wrong.add(
                                        "%s: %s are whole examples of it; write 'folders' in tested_by"
                                                .formatted(id, names));
                            }
                        });
        assertThat(wrong).isEmpty();
    }

    @Test
    void theReadmeNamesEveryFolder() throws IOException {
        String readme = Files.readString(EXAMPLES.resolve("README.md"));
        assertThat(folders().values().stream().flatMap(Set::stream))
                .allSatisfy(name -> assertThat(readme).contains("`" + name + "/`"));
    }

    private static boolean isTest(String classAndMethod) {
        String[] parts = classAndMethod.split("#", -1);
        try {
            return Arrays.stream(Class.forName(parts[0]).getDeclaredMethods())
                    .anyMatch(m -> m.getName().equals(parts[1]));
        } catch (ClassNotFoundException e) {
            return false;
        }
    }

    private static Set<String> idsOf(String table) throws IOException {
        return rows(EXAMPLES.resolve(table)).stream()
                .map(r -> r.get("id"))
                .collect(Collectors.toSet());
    }

    /** The folders of each example. */
    private static Map<String, Set<String>> folders() throws IOException {
        Map<String, Set<String>> folders = new TreeMap<>();
        try (Stream<Path> found = Files.list(EXAMPLES)) {
            for (Path folder : found.filter(Files::isDirectory).toList()) {
                Optional<String> id =
                        rows(folder.resolve("case.csv")).stream()
                                .filter(r -> r.get("key").equals("id"))
                                .map(r -> r.get("value"))
                                .findFirst();
                folders.computeIfAbsent(id.orElse("no id"), i -> new TreeSet<>())
                        .add(folder.getFileName().toString());
            }
        }
        return folders;
    }

    private static List<CSVRecord> rows() throws IOException {
        return rows(EXAMPLES.resolve("examples.csv"));
    }

    private static List<CSVRecord> rows(Path file) throws IOException {
        CSVFormat format = CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();
        try (CSVParser rows = CSVParser.parse(file, StandardCharsets.UTF_8, format)) {
            return rows.getRecords();
        }
    }
}
