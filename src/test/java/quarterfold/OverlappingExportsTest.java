package quarterfold;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quarterfold.cli.Run;
import quarterfold.cli.SmallBook;

/** A channel's statements, exported in overlapping windows of days, before a close and after it. */
class OverlappingExportsTest {

    private static final Path DEMO = Path.of("fixtures", "demo");

    @TempDir private Path folder;

    private static Run run(Path book, Object... args) {
        List<Object> all = new ArrayList<>(List.of("--book", book));
        all.addAll(List.of(args));
        return Run.of(all.toArray());
    }

    /** The rows of the demo's statements of July to October, and above them their header. */
    private static List<String> statements() throws IOException {
        List<String> rows = new ArrayList<>();
        for (String month : List.of("2026-07", "2026-08", "2026-09-to-10")) {
            List<String> lines = Files.readAllLines(DEMO.resolve("quaylark-" + month + ".csv"));
            rows.addAll(rows.isEmpty() ? lines : lines.subList(1, lines.size()));
        }
        return rows;
    }

    private static String day(String row) {
        return row.replaceFirst("([^,]*,){3}(.{10}).*", "$2");
    }

    /** The rows with a time on the days, as a file. */
    private Path window(String name, String from, String to) throws IOException {
        List<String> all = statements();
        List<String> rows = new ArrayList<>(List.of(all.get(0)));
        all.stream()
                .skip(1)
                .filter(r -> day(r).compareTo(from) >= 0 && day(r).compareTo(to) <= 0)
                .forEach(rows::add);
        return Files.write(folder.resolve(name), rows);
    }

    private Path book(String name) throws IOException {
        return SmallBook.empty(Files.createDirectories(folder.resolve(name)));
    }

    private static Run enter(Path book, Path file) {
        Run entered = run(book, "import", file);
        assertThat(entered.code()).as(entered.err()).isZero();
        return entered;
    }

    /** What the entries say, but for their numbers, files and rows, and how often. */
    private static Map<String, Long> said(Path book) {
        return run(book, "ledger", "--json")
                .out()
                .lines()
                .map(
                        l ->
                                l.replaceFirst("\"number\":\\d+", "")
                                        .replaceFirst("\"source\":\\{[^}]*}", ""))
                .collect(Collectors.groupingBy(l -> l, TreeMap::new, Collectors.counting()));
    }

    private static String boxes(Path book) {
        return run(book, "return", "2026-09", "--json")
                .out()
                .replaceFirst(".*(\"boxes\":\\{[^}]*}).*", "$1");
    }

    private static void closeWithItsQueries(Path book) {
        List<String> ids =
                run(book, "queries", "2026-09", "--json")
                        .out()
                        .lines()
                        .filter(l -> l.contains("\"holds_close\":true"))
                        .map(l -> l.replaceFirst(".*?\"id\":\"([^\"]*)\".*", "$1"))
                        .toList();
        ids.forEach(id -> SmallBook.setAside(book, id));
        Run closed = run(book, "close", "2026-09");
        assertThat(closed.code()).as(closed.err()).isZero();
    }

    private static void verify(Path book) {
        Run verified = run(book, "verify");
        assertThat(verified.code()).as(verified.out()).isZero();
    }

    /** Three months in windows of ten to thirty days, in any order, are the three months. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(ints = {1, 2, 3})
    void windowsInAnyOrderAreTheWhole(int seed) throws IOException {
        Path whole = book("whole");
        enter(whole, window("whole.csv", "2026-06-01", "2026-12-31"));
        Path parts = book("parts");
        Random random = new Random(seed);
        List<Path> files = new ArrayList<>();
        LocalDate from = LocalDate.of(2026, 6, 30);
        while (from.getYear() == 2026 && from.getMonthValue() < 11) {
            LocalDate to = from.plusDays(random.nextInt(10, 31));
            Path file = window(from + ".csv", from.toString(), to.toString());
            if (Files.readAllLines(file).size() > 1) {
                files.add(file);
            }
            from = to.minusDays(random.nextInt(8));
        }
        Collections.shuffle(files, random);
        files.forEach(file -> enter(parts, file));
        assertThat(said(parts)).isEqualTo(said(whole));
        assertThat(boxes(parts)).isEqualTo(boxes(whole)).contains("\"1\":");
        verify(parts);
    }

    /** The questions of the quarter about payouts, as {@code queries} prints them. */
    private static String payouts(Path book) {
        return run(book, "queries", "2026-09")
                .out()
                .lines()
                .filter(l -> l.contains("payout-does-not-tie") || l.contains("states a payout"))
                .filter(l -> !l.contains("quarterfold decide"))
                .map(String::strip)
                .collect(Collectors.joining("\n"));
    }

    /** Windows that cut statements in two, until all their rows are there. */
    @Test
    void statementsThatWindowsCut() throws IOException {
        Path book = book("cut");
        enter(book, window("july.csv", "2026-07-01", "2026-08-15"));
        String july =
                """
                S1/payout-does-not-tie/QL-0417  july.csv
                settlement QL-0417 states a payout of GBP 6348.23; its other rows, 1252 of them, sum to 6316.90; the difference is 31.33: which rows are missing, or which are not of this settlement? The file begins with it, so others of its rows may be in another export; this question goes once all of them are entered and tie.""";
        assertThat(payouts(book)).isEqualTo(july);
        enter(book, window("september.csv", "2026-08-20", "2026-10-03"));
        String august =
                """
                S2/payout-does-not-tie/QL-0418  september.csv
                settlement QL-0418 states a payout of GBP 7209.59; its other rows, 494 of them, sum to 2167.82; the difference is 5041.77: which rows are missing, or which are not of this settlement? The file begins with it, so others of its rows may be in another export; this question goes once all of them are entered and tie.""";
        assertThat(payouts(book)).isEqualTo(july + "\n" + august);
        enter(book, window("june.csv", "2026-06-30", "2026-07-05"));
        assertThat(payouts(book)).isEqualTo(august);
        enter(book, window("august.csv", "2026-08-10", "2026-08-25"));
        assertThat(payouts(book)).isEmpty();
        verify(book);
    }

    /** What was in the quarter when it was closed is not late because it is exported again. */
    @Test
    void aWindowAfterTheClose() throws IOException {
        Path book = book("closed");
        enter(book, window("quarter.csv", "2026-06-30", "2026-09-30"));
        closeWithItsQueries(book);
        String closed = run(book, "return", "2026-09", "--json").out();
        Path straight = book("straight");
        enter(straight, window("october.csv", "2026-09-15", "2026-12-31"));

        Run late = enter(book, window("september-on.csv", "2026-09-15", "2026-12-31"));
        assertThat(late.out())
                .containsPattern(
                        "does not tie: asked; \\d+ rows of earlier files, -?[\\d,.]+, entered once");
        assertThat(run(book, "return", "2026-09", "--json").out()).isEqualTo(closed);
        assertThat(run(book, "return", "2026-12", "--json").out())
                // the other book alone has but half of a statement to ask about
                .isEqualTo(
                        run(straight, "return", "2026-12", "--json")
                                .out()
                                .replace("\"queries\":2", "\"queries\":1"))
                .contains("\"boxes\":{\"1\":\"")
                .doesNotContain("corrections");
        verify(book);
    }

    /** A row that the closed quarter lacked is late, and those beside it are not. */
    @Test
    void aLateRowAmongRowsThatWereThere() throws IOException {
        Path book = book("late");
        Path quarter = window("quarter.csv", "2026-06-30", "2026-09-30");
        List<String> rows = new ArrayList<>(Files.readAllLines(quarter));
        String left =
                rows.stream()
                        .filter(r -> r.contains(",Sale,Goods,") && r.contains(",GB,GB,"))
                        .reduce((first, last) -> last)
                        .orElseThrow();
        rows.remove(left);
        enter(book, Files.write(folder.resolve("without.csv"), rows));
        closeWithItsQueries(book);
        long before = run(book, "ledger", "--json").out().lines().count();
        enter(book, quarter);
        assertThat(run(book, "ledger", "--json").out().lines().count()).isEqualTo(before + 1);
        verify(book);
    }

    @Test
    void saysSoInBothForms() throws IOException {
        Path book = book("told");
        enter(book, window("july.csv", "2026-07-01", "2026-07-03"));
        Path again = window("again.csv", "2026-07-02", "2026-07-04");
        Run told = enter(book, again);
        long there =
                Files.readAllLines(again).stream()
                        .skip(1)
                        .filter(r -> day(r).compareTo("2026-07-03") <= 0)
                        .count();
        assertThat(told.out()).contains("ties; %d rows of earlier files, ".formatted(there));
        Run json = run(book, "import", "--json", window("more.csv", "2026-07-03", "2026-07-05"));
        long both =
                Files.readAllLines(folder.resolve("more.csv")).stream()
                        .skip(1)
                        .filter(r -> day(r).compareTo("2026-07-04") <= 0)
                        .count();
        assertThat(json.out()).contains("\"repeated\":%d,\"money\":".formatted(both));
    }
}
