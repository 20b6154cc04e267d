package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Attachment;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Line;
import quarterfold.money.Amount;

/** Lists of receipts that name each receipt's picture: it is kept, and belongs to its row. */
class ReceiptsTest {
    private static final String HEADER =
            "date,kind,party,category,gross,rate,evidence,file\n2026-08-05,expense,Inkwell Nook Ltd,stationery,27.89,20,simplified,";

    @TempDir Path folder;
    private Desk desk;
    private Path receipts = Path.of("");

    @BeforeEach
    void open() throws IOException {
        desk = new Desk(folder);
        receipts = Files.createDirectory(folder.resolve("receipts"));
    }

    @AfterEach
    void close() {
        desk.close();
    }

    private void picture(String name) throws IOException {
        Path file = receipts.resolve(name);
        Files.createDirectories(file.getParent());
        Files.writeString(file, "%PDF-1.4 " + name);
    }

    private void list(String name, String text) throws IOException {
        Files.writeString(receipts.resolve(name), text);
    }

    private List<String> enter(Path... named) {
        List<String> told = new ArrayList<>();
        desk.deliver(List.of(named), result -> told.add(told(result)));
        return told;
    }

    private static String told(ImportResult result) {
        if (result instanceof ImportResult.Entered entered) {
            return "%s | %d entered, %d kept"
                    .formatted(entered.name(), entered.entries(), entered.attached());
        }
        if (result instanceof ImportResult.NotEntered other) {
            return other.name() + " | " + other.reason();
        }
        return result.problems().isEmpty()
                ? result.name() + " | " + result.getClass().getSimpleName()
                : result.problems().get(0).toString();
    }

    @Test
    void aPictureIsKeptWithItsRow() throws IOException {
        list("list.csv", HEADER + "scans/r1.pdf\n");
        picture("scans/r1.pdf");
        picture("scans/r2.pdf");

        assertThat(enter(receipts))
                .containsExactly(
                        "list.csv | 1 entered, 1 kept",
                        "scans/r1.pdf | evidence of list.csv row 2",
                        "scans/r2.pdf | a PDF that no form of report fits, and no list of receipts names");
        assertThat(desk.ledger().attachments().all())
                .singleElement()
                .isEqualTo(
                        new Attachment(
                                1, 2, "scans/r1.pdf", sha256(receipts.resolve("scans/r1.pdf"))));
        assertThat(desk.archive()).containsExactly("list.csv", "r1.pdf");
        assertThat(desk.lines().get(0).profile().evidence())
                .as("a picture says nothing of what is on it")
                .isEqualTo(Evidence.SIMPLIFIED);
        assertThat(desk.lines().get(0).notes()).isEmpty();
    }

    private static String sha256(Path file) throws IOException {
        try {
            return java.util.HexFormat.of()
                    .formatHex(
                            java.security.MessageDigest.getInstance("SHA-256")
                                    .digest(Files.readAllBytes(file)));
        } catch (java.security.NoSuchAlgorithmException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void theListByItselfFindsWhatIsBesideIt() throws IOException {
        list("list.csv", HEADER + "r1.pdf\n");
        picture("r1.pdf");

        assertThat(enter(receipts.resolve("list.csv")))
                .containsExactly("list.csv | 1 entered, 1 kept");
    }

    @Test
    void listedAndNamedTogetherAsAShellNamesThem() throws IOException {
        list("z-list.csv", HEADER + "r1.pdf\n");
        picture("r1.pdf");

        assertThat(enter(receipts.resolve("r1.pdf"), receipts.resolve("z-list.csv")))
                .containsExactly(
                        "z-list.csv | 1 entered, 1 kept", "r1.pdf | evidence of z-list.csv row 2");
    }

    @Test
    void aListInYaml() throws IOException {
        list(
                "list.yaml",
                """
                # August
                - file: r1.pdf
                  date: 2026-08-05
                  supplier: Inkwell Nook Ltd
                  amount: 27.89
                  category: stationery
                  bought: Paper
                - {file: r2.pdf, date: 2026-08-06, supplier: Corner Shop, amount: 3.50, kind: purchase}
                """);
        picture("r1.pdf");
        picture("r2.pdf");

        assertThat(enter(receipts))
                .containsExactly(
                        "list.yaml | 2 entered, 2 kept",
                        "r1.pdf | evidence of list.yaml row 2",
                        "r2.pdf | evidence of list.yaml row 8");
        List<Line> lines = desk.lines();
        assertThat(lines.get(0).profile().kind()).isEqualTo(Kind.EXPENSE);
        assertThat(lines.get(0).profile().party()).isEqualTo("Inkwell Nook Ltd");
        assertThat(lines.get(0).profile().category()).isEqualTo("stationery");
        assertThat(lines.get(0).taxPoint()).isEqualTo(LocalDate.of(2026, 8, 5));
        assertThat(lines.get(0).amounts().gross()).contains(Amount.of("27.89"));
        assertThat(lines.get(0).notes()).isEqualTo("bought: Paper");
        assertThat(lines.get(1).profile().kind()).isEqualTo(Kind.PURCHASE);
    }

    @Test
    void whatIsWrongWithAListInYaml() throws IOException {
        list("a.yaml", "- {file: r1.pdf, date: 2026-08-32, amount: 1.00}\n");
        list("b.yaml", "- {file: r1.pdf, date: 2026-08-05\n- x\n");
        list("c.yaml", "- just words\n");
        list("d.yaml", "- {date: 2026-08-05, amount: [1]}\n");
        list("e.yaml", "- date: 2026-08-05\n  amount: 1.00\n  gross: 1.00\n");
        list("f.yaml", "layout: mine\n");

        assertThat(enter(receipts))
                .containsExactly(
                        "a.yaml:1 [date]: found '2026-08-32'; expected a date on the calendar written yyyy-MM-dd, such as 2026-09-30",
                        "b.yaml:3: found text that is not YAML (expected ',' or '}', but got <stream end>)"
                                + EXPECTED,
                        "c.yaml:1: found an item without keys" + EXPECTED,
                        "d.yaml:1: found a list or keys within an item" + EXPECTED,
                        "e.yaml:3: found 'gross' twice in an item; expected it once, such as gross: text",
                        "f.yaml | a text that no layout knows");
        assertThat(desk.lines()).isEmpty();
    }

    private static final String EXPECTED =
            "; expected a list of receipts, such as - {file: r1.jpg, date: 2026-08-05, supplier: Inkwell Nook Ltd, amount: 27.89}";

    @Test
    void aPictureThatIsNotThere() throws IOException {
        list(
                "list.csv",
                HEADER
                        + "r9.pdf\n"
                        + "2026-08-06,expense,,,1.00,,,r1.pdf\n"
                        + "2026-08-07,expense,,,1.00,,,../secret.pdf\n"
                        + "2026-08-07,expense,,,1.00,,,empty.pdf\n"
                        + "2026-08-07,expense,,,1.00,,,list.csv\n");
        picture("r1.pdf");
        Files.writeString(receipts.resolve("empty.pdf"), "");
        Files.writeString(folder.resolve("secret.pdf"), "%PDF-1.4 secret");

        List<String> problems = new ArrayList<>();
        desk.deliver(
                List.of(receipts),
                result -> result.problems().forEach(p -> problems.add(p.toString())));

        assertThat(problems)
                .containsExactly(
                        "list.csv:2 [file]: found 'r9.pdf', and no such file was brought with it; expected the name of a file beside the list or in a folder with it, such as receipt-12.jpg",
                        "list.csv:4 [file]: found '../secret.pdf', which is not there, or outside what was brought; expected the name of a file beside the list or in a folder with it, such as receipt-12.jpg",
                        "list.csv:5 [file]: found 'empty.pdf', an empty file; expected the document, such as its picture again",
                        "list.csv:6 [file]: found 'list.csv', the list itself; expected the name of a file beside the list or in a folder with it, such as receipt-12.jpg");
        assertThat(desk.archive()).as("nothing of a refused list stays").isEmpty();
        assertThat(desk.ledger().attachments().all()).isEmpty();
        assertThat(enter(receipts)).contains("r1.pdf | named by list.csv, which was refused");
    }

    @Test
    void aLinkOutOfTheFolderIsNoReceipt(@TempDir Path elsewhere) throws IOException {
        Path secret = Files.writeString(elsewhere.resolve("secret.pdf"), "%PDF-1.4");
        list("list.csv", HEADER + "r1.pdf\n");
        Files.createSymbolicLink(receipts.resolve("r1.pdf"), secret);

        assertThat(enter(receipts.resolve("list.csv")))
                .containsExactly(
                        "list.csv:2 [file]: found 'r1.pdf', and no such file was brought with it; expected the name of a file beside the list or in a folder with it, such as receipt-12.jpg");
    }

    @Test
    void onePictureForTwoRows() throws IOException {
        list("list.csv", HEADER + "r1.pdf\n2026-08-05,expense,,,1.00,5,simplified,r1.pdf\n");
        picture("r1.pdf");

        assertThat(enter(receipts)).first().isEqualTo("list.csv | 2 entered, 2 kept");
        assertThat(desk.archive()).containsExactly("list.csv", "r1.pdf");
        assertThat(desk.ledger().attachments().of(desk.entries().get(1)))
                .extracting(Attachment::row)
                .containsExactly(3L);
    }

    /** A layout may take the document's name from a column, as any field, but not as a constant. */
    @Test
    void aLayoutOfTheOwnersOwn() throws IOException {
        desk.layout(
                "till",
                """
                layout: till
                dates: {pattern: "yyyy-MM-dd"}
                signs: document
                fields: {date: Day, file: Picture}
                rows:
                  - when: {}
                    enter: [{kind: expense, gross: Sum}]
                amounts: [Sum]
                """);
        list("till.csv", "Day,Sum,Picture\n2026-08-05,12.00,r1.pdf\n2026-08-06,1.00,\n");
        picture("r1.pdf");

        assertThat(enter(receipts))
                .containsExactly(
                        "till.csv | 2 entered, 1 kept", "r1.pdf | evidence of till.csv row 2");
        desk.layout(
                "till",
                """
                layout: till
                dates: {pattern: "yyyy-MM-dd"}
                signs: document
                fields: {date: Day}
                constants: {file: r1.pdf}
                rows:
                  - when: {}
                    enter: [{kind: expense, gross: Sum}]
                amounts: [Sum]
                """);
        assertThat(desk.enter("other.csv", "Day,Sum\n2026-08-05,12.00\n").problems())
                .extracting(Problem::place)
                .containsExactly("till.yaml:5");
    }

    @Test
    void aReportWithEntriesIsNoReceiptToo() throws IOException {
        list("report.csv", "date,kind,gross,rate\n2026-08-05,expense,12.00,20\n");
        enter(receipts);
        list("z-list.csv", HEADER + "report.csv\n");

        assertThat(enter(receipts.resolve("z-list.csv")))
                .containsExactly(
                        "z-list.csv:2 [file]: found 'report.csv', which is in the book as source 1 with entries of its own; expected a document that is no report, so that nothing is claimed twice, such as the row left out");
    }

    @Test
    void aReceiptBroughtAgainIsKnown() throws IOException {
        list("list.csv", HEADER + "r1.pdf\n");
        picture("r1.pdf");
        enter(receipts);

        assertThat(enter(receipts))
                .containsExactly("list.csv | AlreadyThere", "r1.pdf | evidence of list.csv row 2");
        assertThat(enter(receipts.resolve("r1.pdf")))
                .containsExactly("r1.pdf | evidence of list.csv row 2");
    }

    @Test
    void inAZip() throws IOException {
        Path zip = folder.resolve("receipts.zip");
        try (var out = new java.util.zip.ZipOutputStream(Files.newOutputStream(zip))) {
            for (String[] file :
                    new String[][] {
                        {"a/list.csv", HEADER + "../scans/r1.pdf\n"},
                        {"scans/r1.pdf", "%PDF-1.4 r1"},
                        {"scans/r2.pdf", "%PDF-1.4 r2"}
                    }) {
                out.putNextEntry(new java.util.zip.ZipEntry(file[0]));
                out.write(file[1].getBytes(java.nio.charset.StandardCharsets.UTF_8));
            }
        }

        assertThat(enter(zip))
                .containsExactly(
                        "receipts.zip/a/list.csv | 1 entered, 1 kept",
                        "receipts.zip/scans/r1.pdf | evidence of receipts.zip/a/list.csv row 2",
                        "receipts.zip/scans/r2.pdf | a PDF that no form of report fits, and no list of receipts names");
    }
}
