package quarterfold;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.cli.Child;
import quarterfold.cli.Json;
import quarterfold.cli.Run;
import quarterfold.papers.Recalculation;

/**
 * The demo quarter through the whole program, against the figures worked out without it in {@code
 * fixtures/demo/NOTES.md}.
 */
class DemoTest {

    private static final Path FIXTURE = DemoFiles.FOLDER;
    private static final List<String> PAPERS =
            List.of("return.csv", "return.json", "summary.pdf", "workbook.xlsx");

    @TempDir private static Path folder;
    private static Path book = Path.of("");
    private static String shown = "";
    private static List<Map<String, String>> ledger = List.of();

    @BeforeAll
    static void runsTheDemo() {
        book = folder.resolve("book");
        Run demo = Run.of("--book", book, "demo");
        assertThat(demo.code()).as(demo.err()).isZero();
        assertThat(demo.err()).isEmpty();
        shown = demo.out();
        ledger = run("ledger", "--json").out().lines().map(Json::flat).toList();
    }

    @Test
    void boxesAndTheirExactSumsAreThoseOfTheNotes() throws IOException {
        Map<String, CSVRecord> papers = new TreeMap<>();
        DemoFiles.rows(paper("return.csv")).forEach(r -> papers.put(r.get("box"), r));
        Map<String, String> json = Json.flat(Files.readString(paper("return.json")));
        List<CSVRecord> expected = DemoFiles.rows(FIXTURE.resolve("expected.csv"));

        assertThat(expected).hasSize(9).hasSameSizeAs(papers.values());
        for (CSVRecord box : expected) {
            String id = box.get("box");
            CSVRecord found = Objects.requireNonNull(papers.get(id));
            assertThat(found.get("figure")).as("box " + id).isEqualTo(box.get("figure"));
            assertThat(new BigDecimal(found.get("exact")))
                    .as("box " + id)
                    .isEqualByComparingTo(box.get("exact"));
            assertThat(json).containsEntry("boxes/" + id, box.get("figure"));
        }
        assertThat(json)
                .containsEntry("status", "closed")
                .containsEntry("direction", "pay")
                .containsEntry("queries", "0")
                .containsEntry("period/start", "2026-07-01")
                .containsEntry("period/end", "2026-09-30")
                .containsEntry("period/due", "2026-11-07")
                .hasSize(15);
    }

    @Test
    void figuresKeepThePublishedRules() {
        for (String period : List.of("2026-09", "2026-12")) {
            Run run = run("return", period, "--json");
            assertThat(run.code()).isZero();
            assertThat(ReturnRules.broken(run.out())).isEmpty();
        }
    }

    /** The exact sums as vouching gives them; NOTES.md, "Box by box". */
    @ParameterizedTest(name = "box {0}")
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    1 | 9,020.27 (exactly 9,020.2685)
                    4 | 5,750.59 (exactly 5,750.5907)
                    6 | 42,465 (exactly 42,465.8815)
                    7 | 32,473 (exactly 32,473.731)
                    """)
    void vouchedEntriesMakeTheBox(String box, String head) {
        List<String> lines = run("vouch", "2026-09", "--box", box).out().lines().toList();
        assertThat(lines.get(1)).isEqualTo(head);
        BigDecimal sum =
                lines.stream()
                        .filter(line -> line.matches(" *[0-9]+  2026-.*"))
                        .map(line -> line.substring(68, 84).strip().replace(",", ""))
                        .map(BigDecimal::new)
                        .reduce(BigDecimal.ZERO, BigDecimal::add);
        assertThat(head).contains("(exactly %,.4f".formatted(sum).replaceFirst("0+$", ""));
        assertThat(sum)
                .isEqualByComparingTo(
                        exact(box, date -> date.compareTo("2026-09-30") <= 0)); // from the ledger
    }

    /**
     * NOTES.md, "What is decided": the four receipts are asked about, and the VAT at stake in them.
     */
    @Test
    void queriesAreTheFourReceiptsAndNoOther() {
        assertThat(shown)
                .contains(
                        "\nPay 3,379.68 by 7 November 2026.\n4 queries are open: quarterfold queries 2026-09\n")
                .contains(
                        """
                        E6721/evidence-missing  receipts.csv row 14
                          No document is held for 45.00, so its VAT of 7.50 is not reclaimed. Find the invoice, or leave it out.
                          quarterfold decide --entry 6721 --evidence-seen invoice --why WHY --who NAME

                        E6725/evidence-over-limit  receipts.csv row 18
                          A simplified invoice does not do for 318.00: above the limit a full VAT invoice is needed. Its VAT of 53.00 is not reclaimed until it is held.
                          quarterfold decide --entry 6725 --evidence-seen invoice --why WHY --who NAME

                        E6732/evidence-missing  receipts.csv row 25
                          No document is held for 660.00, so its VAT of 110.00 is not reclaimed. Find the invoice, or leave it out.
                          quarterfold decide --entry 6732 --evidence-seen invoice --why WHY --who NAME

                        E6737/evidence-missing  receipts.csv row 30
                          No document is held for 41.66, so its VAT of 6.94 is not reclaimed. Find the invoice, or leave it out.
                          quarterfold decide --entry 6737 --evidence-seen invoice --why WHY --who NAME

                        4 queries are open.
                        """);
        assertThat(List.of("6721", "6725", "6732", "6737"))
                .extracting(DemoTest::document)
                .containsExactly("R13", "R17", "R24", "R29");
    }

    /** NOTES.md, "What is decided": only R24 moves a figure, and R29 stays with its answer. */
    @Test
    void decisionsAnswerTheFourReceipts() {
        assertThat(shown)
                .contains(
                        """
                        Decision 3 of 5 October 2026 by Isolde Marchbank: entry 6732, evidence-seen invoice
                          The invoice of the autumn fair came by post on 28 September

                        In 2026-09:
                          box 4  5,640.59 -> 5,750.59
                          box 5  3,379.68 -> 3,269.68
                          answered: E6732/evidence-missing
                          1 query is still open.
                        """);
        assertThat(shown.lines().filter(line -> line.startsWith("  box "))).hasSize(2);
        assertThat(run("queries", "2026-09").out())
                .isEqualTo(
                        """
                        E6737/evidence-missing  receipts.csv row 30
                          No document is held for 41.66, so its VAT of 6.94 is not reclaimed. Find the invoice, or leave it out.
                          set aside by Isolde Marchbank on 2026-10-05: Only a card slip is held; the VAT is left unclaimed

                        No query is open. 1 is set aside.
                        """);
    }

    /** The book is checked against its files and its close, and all is as it must be. */
    @Test
    void bookVerifies() {
        assertThat(shown)
                .contains(
                        """
                        sources   11 files kept are those that were imported, byte for byte
                        entries   6,757 entries are what their files say
                        returns   2026-09: worked out again from 6,550 entries, the same to the penny
                        numbers   entries 1 to 6,757, without a gap
                        All is as it must be.
                        """);
    }

    /** Reg 32 and reg 39(2) and (3): the account adds up to the boxes. */
    @Test
    void vatAccountIsTheBoxes() {
        assertThat(Json.flat(run("return", "2026-09", "--account", "--json").out()))
                .containsEntry("payable/total", "9020.2685")
                .containsEntry("payable/boxes/1", "9020.27")
                .containsEntry("allowable/total", "5750.5907")
                .containsEntry("allowable/boxes/4", "5750.59");
    }

    @Test
    void papersAreThere() throws IOException {
        try (Stream<Path> files = Files.list(book.resolve("papers/2026-09"))) {
            assertThat(files.map(f -> f.getFileName().toString()).sorted())
                    .containsExactlyElementsOf(PAPERS);
        }
    }

    /**
     * The promise: the same sources, decisions and tables give the same bytes on any machine; here
     * one whose language has digits of its own and whose day is another.
     */
    @Test
    void anotherMachineElsewhereGivesTheSameBytes() throws Exception {
        Path again = folder.resolve("again");
        List<String> elsewhere =
                List.of(
                        "-Duser.language=ar",
                        "-Duser.country=EG",
                        "-Duser.timezone=Pacific/Kiritimati",
                        "-Dfile.encoding=ISO-8859-1");

        Run demo = Child.run(elsewhere, folder, "--book", again, "demo").calling(again, "BOOK");

        assertThat(demo.err()).isEmpty();
        assertThat(demo.code()).isZero();
        assertThat(demo.out()).isEqualTo(shown.replace(book.toString(), "BOOK"));
        for (String paper : PAPERS) {
            assertThat(again.resolve("papers/2026-09").resolve(paper))
                    .hasSameBinaryContentAs(paper(paper));
        }
    }

    /** Writing the papers of the closed period once more changes no byte of them. */
    @Test
    void papersWrittenAgainAreTheSame() throws IOException {
        Map<String, String> before = digests();
        assertThat(run("papers", "2026-09").code()).isZero();
        assertThat(digests()).isEqualTo(before);
    }

    /**
     * NOTES.md: 60 orders and 5 returns of October stay out, with all else dated after the quarter.
     */
    @Test
    void octoberIsInTheNextPeriod() {
        Predicate<Map<String, String>> october = e -> date(e).compareTo("2026-09-30") > 0;
        assertThat(
                        ledger.stream()
                                .filter(october.and(e -> "sale".equals(e.get("kind"))))
                                .map(e -> e.get("order"))
                                .distinct())
                .hasSize(60);
        assertThat(
                        ledger.stream()
                                .filter(october.and(e -> "sale-refund".equals(e.get("kind"))))
                                .map(e -> e.get("order"))
                                .distinct())
                .hasSize(5);
        for (String box : List.of("1", "4", "6", "7")) {
            assertThat(run("vouch", "2026-09", "--box", box).out())
                    .contains("  2026-09-")
                    .doesNotContain("  2026-10-");
            assertThat(run("vouch", "2026-12", "--box", box).out())
                    .contains("  2026-10-")
                    .doesNotContain("  2026-09-");
        }
        // step A of NOTES.md with the dates from 2026-09-30T23:00:00Z on: VAT 185.2049, value
        // 926.0251 + 138.0900; and the one supplier's invoice of October
        assertThat(Json.flat(run("return", "2026-12", "--json").out()))
                .containsEntry("boxes/1", "185.20")
                .containsEntry("boxes/4", "36.00")
                .containsEntry("boxes/6", "1064")
                .containsEntry("boxes/7", "180")
                .containsEntry("status", "draft");
    }

    @Test
    void ledgerAddsUpToTheReturn() throws IOException {
        for (CSVRecord box : DemoFiles.rows(FIXTURE.resolve("expected.csv"))) {
            String id = box.get("box");
            if (!id.equals("3") && !id.equals("5")) {
                assertThat(exact(id, date -> date.compareTo("2026-09-30") <= 0))
                        .as("box " + id)
                        .isEqualByComparingTo(box.get("exact"));
            }
        }
    }

    /**
     * Every file's digest is its own, its rows are all entered or set aside, and it changes
     * nothing.
     */
    @Test
    void filesBroughtAgainAreKnownByTheirBytesAndChangeNothing() throws IOException {
        String before = run("ledger", "--json").out();
        List<String> files = Files.readAllLines(FIXTURE.resolve("files.txt"));
        List<Object> again = new ArrayList<>(List.of("import", "--json"));
        files.forEach(f -> again.add(FIXTURE.resolve(f)));

        Run imported = run(again.toArray());

        assertThat(imported.code()).isZero();
        List<Map<String, String>> results = imported.out().lines().map(Json::flat).toList();
        assertThat(results).extracting(r -> r.get("file")).containsExactlyElementsOf(files);
        for (Map<String, String> result : results) {
            String file = result.getOrDefault("file", "");
            assertThat(result)
                    .containsEntry("result", "already-there")
                    .containsEntry("sha256", sha256(FIXTURE.resolve(file)));
            List<Map<String, String>> entries =
                    ledger.stream().filter(e -> file.equals(e.get("source/file"))).toList();
            long rows = entries.stream().map(e -> e.get("source/row")).distinct().count();
            assertThat(entries).hasSize(number(result, "entries"));
            assertThat(rows + number(result, "set_aside"))
                    .as(file + ": rows entered and set aside")
                    .isEqualTo(number(result, "rows_read"));
            assertThat(entries.stream().map(e -> e.get("source/sha256")).distinct())
                    .containsExactly(result.get("sha256"));
        }
        assertThat(run("ledger", "--json").out().equals(before)).as("same ledger").isTrue();
    }

    /** The folder as a whole, in another order, says what its files say one by one. */
    @Test
    void theFolderGivesTheSameReturn(@TempDir Path other) throws IOException {
        Path another = other.resolve("book");
        List<Object> made = new ArrayList<>(List.of("--book", another, "new"));
        Files.readAllLines(FIXTURE.resolve("book.flags"))
                .forEach(line -> made.add(line.replace("\"", "")));
        assertThat(Run.of(made.toArray()).code()).isZero();
        Files.copy(FIXTURE.resolve("products.csv"), another.resolve("products.csv"));

        Run imported = Run.of("--book", another, "import", FIXTURE);

        assertThat(imported.code()).as(imported.err()).isZero();
        assertThat(imported.out())
                .endsWith(
                        """
                        11 files                                      entered now                  4,886    6,757          6  -17,273.82  11 tie

                        Not read as reports:
                          NOTES.md         a text that no layout knows
                          book.flags       a text that no layout knows
                          decisions.flags  a text that no layout knows
                          expected.csv     no row has a date and a number
                          files.txt        no row has a date and a number
                          products.csv     a list of goods: its place is the book's own folder
                        """);
        assertThat(shown).contains(Run.of("--book", another, "return", "2026-09").out());
    }

    @Test
    void entriesAreNumberedWithoutAGap() {
        assertThat(ledger.stream().map(e -> e.get("number")))
                .containsExactlyElementsOf(
                        IntStream.rangeClosed(1, ledger.size())
                                .mapToObj(Integer::toString)
                                .toList())
                .hasSizeGreaterThan(6_000);
    }

    /** The money the import shows is the file's own column of amounts; NOTES.md, "ties". */
    @Test
    void moneyOfEveryFileTies() throws IOException {
        Map<String, BigDecimal> sums = new TreeMap<>();
        for (String file : Files.readAllLines(FIXTURE.resolve("files.txt"))) {
            sums.put(file, DemoFiles.money(file));
        }

        Map<String, BigDecimal> found = new TreeMap<>();
        shown.lines()
                .filter(line -> line.endsWith("  ties"))
                .map(line -> line.strip().split(" +", -1))
                .forEach(
                        cells ->
                                found.put(
                                        cells[0],
                                        new BigDecimal(cells[cells.length - 2].replace(",", ""))));
        assertThat(found).hasSize(11).containsOnlyKeys(sums.keySet());
        sums.forEach((file, sum) -> assertThat(found.get(file)).as(file).isEqualByComparingTo(sum));
    }

    @Test
    void anotherSpreadsheetProgramFindsTheSameBoxes() throws Exception {
        Recalculation.needed();
        Map<String, BigDecimal> boxes =
                Recalculation.boxes(Recalculation.of(paper("workbook.xlsx"), folder));
        List<CSVRecord> expected = DemoFiles.rows(FIXTURE.resolve("expected.csv"));
        assertThat(boxes).hasSameSizeAs(expected);
        for (CSVRecord box : expected) {
            assertThat(boxes.get(box.get("box")))
                    .as("box " + box.get("box"))
                    .isEqualByComparingTo(box.get("figure"));
        }
    }

    @Test
    void secondDemoInOneFolderIsRefused() {
        Run again = Run.of("--book", book, "demo").calling(book, "BOOK");
        assertThat(again.code()).isEqualTo(2);
        assertThat(again.err())
                .isEqualTo(
                        """
                        BOOK: there is a book here already (book.yaml); name another folder with --book
                        """);
    }

    private static Run run(Object... args) {
        List<Object> all = new ArrayList<>(List.of("--book", book));
        all.addAll(List.of(args));
        return Run.of(all.toArray());
    }

    private static Path paper(String name) {
        return book.resolve("papers/2026-09").resolve(name);
    }

    private static Map<String, String> digests() throws IOException {
        Map<String, String> digests = new TreeMap<>();
        for (String paper : PAPERS) {
            digests.put(paper, sha256(paper(paper)));
        }
        return digests;
    }

    private static String sha256(Path file) throws IOException {
        try {
            return HexFormat.of()
                    .formatHex(
                            MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String date(Map<String, String> entry) {
        return entry.getOrDefault("date", "");
    }

    private static int number(Map<String, String> result, String field) {
        return Integer.parseInt(result.getOrDefault(field, ""));
    }

    private static String document(String entry) {
        return ledger.get(Integer.parseInt(entry) - 1).getOrDefault("document", "");
    }

    /** What the entries of some days add to a box, from the ledger's own list. */
    private static BigDecimal exact(String box, Predicate<String> day) {
        return ledger.stream()
                .filter(e -> day.test(date(e)))
                .map(e -> new BigDecimal(e.getOrDefault("boxes/" + box, "0")))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }
}
