package quarterfold;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
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
        SmallBook.setAside(book, "E4/evidence-missing");
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

    /** An under-declared sale of 100.00 VAT is an error of the closed return: reg 34. */
    @Test
    void lateEntryIsTakenUpByTheNextPeriodAsAnError() throws IOException {
        SmallBook.enter(book, SmallBook.file(folder, "late.csv", LATE));

        // the sale of 60.00 in October, VAT 10.00, value 50.00; and the error's VAT alone
        assertThat(Json.flat(run("return", "2026-12", "--json").out()))
                .containsEntry("boxes/1", "110.00")
                .containsEntry("boxes/6", "50")
                .containsEntry("queries", "0")
                .containsEntry("corrections/error/entries", "1")
                .containsEntry("corrections/error/output", "100.00")
                .containsEntry("corrections/error/input", "0.00")
                .containsEntry("corrections/error/net", "100.00")
                .containsEntry("corrections/error/boxes/1", "100.00")
                .containsEntry("corrections/limit/amount", "10000.00");
        assertThat(run("return", "2026-12").out())
                .contains(
                        """

                        From earlier periods:
                          Errors of closed returns put right: 1 entry; box 1 100.00. Net 100.00; the
                          limit is 10,000.00, the larger of 10000.00 and 1% of box 6, which is 0.50 of
                          50.00.
                        """);
        Map<String, String> late = Json.flat(run("ledger", "--json").out().lines().toList().get(6));
        assertThat(late)
                .containsEntry("number", "7")
                .containsEntry("vat", "100.00")
                .containsEntry("boxes/1", "100.00")
                .doesNotContainKey("boxes/6");
        assertThat(run("vouch", "7").out())
                .endsWith(
                        """
                          Adds to box 1          100.00
                          Belongs to             2026-09
                          Taken up               error of a closed return, put right on this one (VAT Regulations 1995 reg 34)
                          Period                 2026-12, open
                        """);
        assertThat(run("vouch", "8").out())
                .contains("  Adds to box 1          10.00\n")
                .endsWith("  Period                 2026-12, open\n");
        assertThat(run("vouch", "2026-12", "--box", "1").out()).contains("late.csv row 2, error\n");
    }

    @Test
    void lateEntryIsTakenUpOnceAndKeptByTheNextClose() throws IOException {
        SmallBook.enter(book, SmallBook.file(folder, "late.csv", LATE));
        assertThat(Json.flat(run("return", "2027-03", "--json").out()))
                .containsEntry("boxes/1", "0.00")
                .doesNotContainKey("corrections/error/entries");

        assertThat(run("close", "2026-12").code()).isZero();

        assertThat(run("vouch", "2026-12", "--box", "1").out())
                .contains("110.00 (exactly 110.00)")
                .contains("L-1");
        assertThat(Json.flat(run("return", "2027-03", "--json").out()))
                .containsEntry("boxes/1", "0.00");
        assertThat(run("vouch", "7").out()).endsWith("  Period                 2026-12, closed\n");
        Path papers = book.resolve("papers/2026-12");
        assertThat(Files.readString(papers.resolve("corrections.csv")))
                .isEqualToIgnoringNewLines(
                        """
                        row,of_period,entry,day,box,declared,right,difference,taken_up,on_this_return,output,input,net,why
                        entry,2026-09,7,2026-09-29,1,0.00,100.00,100.00,error,100.00,,,,came after the return of 2026-09 was closed
                        entry,2026-09,7,2026-09-29,6,0.00,500.00,500.00,error,0.00,,,,came after the return of 2026-09 was closed
                        total,,,,,,,,error,1: 100.00,100.00,0.00,100.00,"error of a closed return, put right on this one (VAT Regulations 1995 reg 34)"
                        limit,,,,,,,,,,,,10000.00,"the larger of 10000.00 and 1% of box 6, which is 0.50 of 50.00 [VAT Regulations 1995 reg 34(3) as amended by SI 2008/1482 reg 2; HMRC manuals VAEC7190 and CH81142: for the period of discovery, by its first day]"
                        """);
        assertThat(Json.flat(Files.readString(papers.resolve("corrections.json"))))
                .containsEntry("period", "2026-12")
                .containsEntry("summary/error/net", "100.00");
        assertThat(sheet(papers, "Corrections"))
                .containsExactly(
                        "Of period|Entry|Day|Box|Declared|Right|Difference|On this return|Taken up"
                                + " as|Why",
                        "2026-09|7|29 Sep 2026|1|0.00|100.00|100.00|100.00|error of a closed return,"
                                + " put right on this one (VAT Regulations 1995 reg 34)|came after"
                                + " the return of 2026-09 was closed",
                        "2026-09|7|29 Sep 2026|6|0.00|500.00|500.00|0.00|error of a closed return,"
                                + " put right on this one (VAT Regulations 1995 reg 34)|came after"
                                + " the return of 2026-09 was closed");
        assertThat(sheet(book.resolve("papers/2026-09"), "Corrections")).isEmpty();
    }

    /** The heading of a list in the workbook, and its rows, as a person sees them. */
    private static List<String> sheet(Path papers, String name) throws IOException {
        DataFormatter format = new DataFormatter(Locale.ROOT);
        List<String> rows = new ArrayList<>();
        try (InputStream in = Files.newInputStream(papers.resolve("workbook.xlsx"));
                XSSFWorkbook workbook = new XSSFWorkbook(in)) {
            if (workbook.getSheet(name) != null) {
                for (Row row : workbook.getSheet(name)) {
                    if (row.getRowNum() > 2) {
                        rows.add(
                                StreamSupport.stream(row.spliterator(), false)
                                        .map(cell -> format.formatCellValue(cell).replace("??", ""))
                                        .collect(Collectors.joining("|")));
                    }
                }
            }
        }
        return rows;
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
        SmallBook.setAside(open, "E4/evidence-missing");
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
