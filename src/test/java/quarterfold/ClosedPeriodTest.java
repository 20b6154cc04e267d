package quarterfold;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.cli.Json;
import quarterfold.cli.Run;
import quarterfold.cli.SmallBook;

/** A closed period never changes, and what comes after it is not lost. */
class ClosedPeriodTest {

    private static final String LATE =
            """
            date,kind,document,gross,rate
            2026-09-29,sale,L-1,600.00,20
            2026-10-02,sale,N-1,60.00,20
            """;

    @TempDir private Path folder;
    private Path book = Path.of("");

    @BeforeEach
    void closesTheQuarter() throws IOException {
        book = SmallBook.quarter(folder);
        Run closed = run("close", "2026-09");
        assertThat(closed.code()).as(closed.err()).isZero();
    }

    @Test
    void secondCloseIsRefused() {
        assertThat(run("close", "2026-09"))
                .isEqualTo(
                        new Run(
                                1,
                                "",
                                "2026-09 is closed already, and a closed period never changes; nothing was changed\n"));
    }

    @Test
    void lateEntryChangesNothingThatIsClosed() throws IOException {
        Map<String, String> papers = papers();
        String closed = run("return", "2026-09").out();
        String json = run("return", "2026-09", "--json").out();
        String vouched = run("vouch", "2026-09", "--box", "1").out();
        String queries = run("queries", "2026-09").out();
        String ledger = run("ledger", "--json").out();

        SmallBook.enter(book, SmallBook.file(folder, "late.csv", LATE));

        assertThat(run("return", "2026-09").out()).isEqualTo(closed);
        assertThat(run("return", "2026-09", "--json").out()).isEqualTo(json);
        assertThat(run("vouch", "2026-09", "--box", "1").out()).isEqualTo(vouched);
        assertThat(run("queries", "2026-09").out()).isEqualTo(queries);
        assertThat(run("ledger", "--json").out()).startsWith(ledger);
        assertThat(papers()).isEqualTo(papers);
        assertThat(run("papers", "2026-09").code()).isZero();
        assertThat(papers()).isEqualTo(papers);
    }

    @Test
    void laterSettingsChangeNothingThatIsClosed() throws IOException {
        Map<String, String> papers = papers();
        String closed = run("return", "2026-09").out();
        Path settings = book.resolve("book.yaml");
        String before = Files.readString(settings);
        Files.writeString(
                settings,
                before.replaceFirst("(?m)^name: .*$", "name: Quite Another Ltd")
                        .replaceFirst("(?m)^vat_number: .*$", "vat_number: GB101747641")
                        .replaceFirst("(?m)^rounding: .*$", "rounding: per-line"));
        assertThat(run("return", "2026-12").out()).startsWith("Quite Another Ltd, GB101747641\n");

        assertThat(run("return", "2026-09").out()).isEqualTo(closed);
        assertThat(run("papers", "2026-09").code()).isZero();
        assertThat(papers()).isEqualTo(papers);
    }

    @Test
    void lateEntryIsAQueryOfTheNextPeriodAndInNoBox() throws IOException {
        SmallBook.enter(book, SmallBook.file(folder, "late.csv", LATE));

        assertThat(run("queries", "2026-12"))
                .isEqualTo(
                        new Run(
                                0,
                                """
                                E7/late  late.csv row 2
                                  600.00 is dated 2026-09-29, in a period that is closed, and came after the close. It is in no box of any return yet. Its VAT belongs on this return if it is a purchase whose document came only now; anything else is an error of the closed return, put right here up to the limit, above it by telling the tax authority. Until corrections can be entered, do so by hand.

                                1 query is open.
                                """,
                                ""));
        // only the sale of 60.00 in October: VAT 10.00, value 50.00
        assertThat(Json.flat(run("return", "2026-12", "--json").out()))
                .containsEntry("boxes/1", "10.00")
                .containsEntry("boxes/6", "50")
                .containsEntry("queries", "1");
        Map<String, String> late = Json.flat(run("ledger", "--json").out().lines().toList().get(6));
        assertThat(late).containsEntry("number", "7").containsEntry("vat", "100.00");
        assertThat(late.keySet()).noneMatch(path -> path.startsWith("boxes/"));
        assertThat(run("vouch", "7").out())
                .contains("  It is in no box.\n")
                .endsWith(
                        "  Period                 2026-09, closed before this entry came: it is in no return yet\n");
        assertThat(run("vouch", "8").out()).contains("  Adds to box 1          10.00\n");
    }

    /**
     * The query is asked in one period only, the earliest that is open, and stays after its close.
     */
    @Test
    void lateQueryIsAskedOnceAndKeptByTheNextClose() throws IOException {
        SmallBook.enter(book, SmallBook.file(folder, "late.csv", LATE));
        assertThat(run("queries", "2027-03").out()).isEqualTo("No query is open.\n");

        assertThat(run("close", "2026-12").code()).isZero();

        assertThat(run("queries", "2026-12").out()).startsWith("E7/late  late.csv row 2\n");
        assertThat(run("vouch", "2026-12", "--box", "1").out())
                .contains("10.00 (exactly 10.00)")
                .doesNotContain("L-1");
    }

    /** VATA 1994 s.3 and s.4: a sale before the registration is no taxable person's. */
    @Test
    void saleBeforeTheRegistrationIsInNoBox() throws IOException {
        SmallBook.enter(
                book,
                SmallBook.file(
                        folder,
                        "early.csv",
                        "date,kind,document,gross,rate\n2023-12-31,sale,A-1,600.00,20\n"));
        assertThat(run("queries", "2026-12").out()).isEqualTo("No query is open.\n");
        assertThat(run("vouch", "7").out())
                .contains("Treated as before-registration-sale by rule B01")
                .contains("  It is in no box.\n")
                .endsWith("  Period                 none: before the registration\n");
    }

    @Test
    void periodsAreClosedInTheirOrder(@TempDir Path other) throws IOException {
        Path open = SmallBook.quarter(other);
        SmallBook.enter(open, SmallBook.file(other, "late.csv", LATE));
        assertThat(Run.of("--book", open, "close", "2026-12"))
                .isEqualTo(
                        new Run(
                                1,
                                "",
                                "2026-12 is not closed: the period before it, 2026-09, is open and has entries. Close that first.\n"));
        assertThat(Json.flat(Run.of("--book", open, "return", "2026-12", "--json").out()))
                .containsEntry("status", "draft");
        assertThat(open.resolve("papers").toFile().list()).isEmpty();
        // periods without entries, such as 2026-06, need no close
        assertThat(Run.of("--book", open, "close", "2026-09").code()).isZero();
        assertThat(Run.of("--book", open, "close", "2026-12").code()).isZero();
    }

    /** Other period ends would put August and September into two returns. */
    @Test
    void settingsThatCutAClosedPeriodAnewAreRefused() throws IOException {
        Path yaml = book.resolve("book.yaml");
        String before = Files.readString(yaml);
        Files.writeString(
                yaml, before.replaceFirst("period_ends: .*", "period_ends: [2, 5, 8, 11]"));
        for (String command : List.of("return 2026-11", "ledger", "close 2026-11")) {
            assertThat(run(command.split(" ", -1)))
                    .isEqualTo(
                            new Run(
                                    65,
                                    "",
                                    "book.yaml [period_ends, periods, registered_from]: 2026-09 was closed as 1 July 2026 to 30 September 2026, and with these settings it would be no such period, so that an entry could get into two returns; put back the settings it was closed with, or list its days under periods\n"));
        }
        Files.writeString(yaml, before);
        assertThat(run("ledger").code()).isZero();
    }

    /** The rounding printed on the papers must be the one the figures were closed with. */
    @Test
    void settingsChangedAfterTheCloseChangeNoneOfItsPapers() throws IOException {
        Map<String, String> papers = papers();
        String closed = run("return", "2026-09").out();
        Path yaml = book.resolve("book.yaml");
        Files.writeString(
                yaml,
                Files.readString(yaml)
                        .replaceFirst("(?m)^rounding: .*$", "rounding: per-line")
                        .replaceFirst("(?m)^name: .*$", "name: Another Name Ltd"));

        assertThat(run("papers", "2026-09").code()).isZero();

        assertThat(papers()).isEqualTo(papers);
        assertThat(run("return", "2026-09").out()).isEqualTo(closed);
        assertThat(run("return", "2026-12").out()).startsWith("Another Name Ltd, ");
    }

    private Run run(String... args) {
        List<Object> all = new ArrayList<>(List.of("--book", book));
        all.addAll(List.of(args));
        return Run.of(all.toArray());
    }

    private Map<String, String> papers() throws IOException {
        Map<String, String> papers = new TreeMap<>();
        try (Stream<Path> files = Files.list(book.resolve("papers/2026-09"))) {
            for (Path file : files.toList()) {
                papers.put(
                        file.getFileName().toString(),
                        Base64.getEncoder().encodeToString(Files.readAllBytes(file)));
            }
        }
        assertThat(papers).hasSize(4);
        return papers;
    }
}
