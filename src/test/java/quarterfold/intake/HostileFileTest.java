package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.LedgerException;

class HostileFileTest {
    private static final String HEADER = "date,kind,gross,description\n";
    private static final String GOOD = "2026-09-30,sale,1.00,a\n";

    @TempDir Path folder;
    private Desk desk;

    @BeforeEach
    void open() {
        desk = new Desk(folder);
    }

    @AfterEach
    void close() {
        desk.close();
    }

    @Test
    void aQuoteThatIsNeverClosed() throws IOException {
        assertThat(desk.problems("a.csv", HEADER + GOOD + "2026-09-30,sale,1.00,\"blue\n" + GOOD))
                .containsExactly(
                        "a.csv:3: found a quote that is opened and never closed; expected a closing quote, such as \"blue, 12 cm\"");
    }

    @Test
    void textAfterAClosingQuote() throws IOException {
        assertThat(desk.problems("a.csv", HEADER + "2026-09-30,sale,1.00,\"12\" ruler\n" + GOOD))
                .containsExactly(
                        "a.csv:2: found text after a closing quote; expected the delimiter there, and a quote inside quotes doubled, such as \"12\"\" ruler\"");
    }

    @Test
    void aQuoteLeftOpenBeforeAGreatDeal() throws IOException {
        assertThat(
                        desk.problems(
                                "a.csv",
                                HEADER + "2026-09-30,sale,1.00,\"blue\n" + GOOD.repeat(100_000)))
                .singleElement()
                .asString()
                .startsWith("a.csv:")
                .endsWith(
                        ": found a row of more than 1,000,000 characters; expected shorter rows, with every opening quote closed, such as \"blue, 12 cm\"");
    }

    @Test
    void aHugeCell() throws IOException {
        assertThat(
                        desk.problems(
                                "a.csv",
                                HEADER
                                        + GOOD
                                        + "2026-09-30,sale,1.00,"
                                        + "x".repeat(100_001)
                                        + "\n"))
                .containsExactly(
                        "a.csv:3: found a cell of 100,001 characters; expected at most 100,000; is a quote left open, as in \"blue, 12 cm?");
    }

    @Test
    void theLargestCellThereMayBe() throws IOException {
        String text = "x".repeat(100_000);
        desk.enter("a.csv", HEADER + "2026-09-30,sale,1.00," + text + "\n" + GOOD);

        assertThat(desk.lines().get(0).item().description()).isEqualTo(text);
    }

    @Test
    void anotherEncoding() throws IOException {
        Path file =
                desk.file(
                        "a.csv",
                        HEADER + GOOD + "2026-09-30,sale,1.00,Caf\u00e9\n" + GOOD,
                        Charset.forName("windows-1252"));

        assertThat(desk.problems(file))
                .containsExactly(
                        "a.csv:3: found the bytes E9, which are not UTF-8; expected text in UTF-8, such as the table saved again in that encoding, or a layout that names the file's own");
    }

    @Test
    void anotherEncodingFarDown() throws IOException {
        Path file =
                desk.file(
                        "a.csv",
                        HEADER + GOOD.repeat(30_000) + "2026-09-30,sale,1.00,\u00a35\r\n",
                        StandardCharsets.ISO_8859_1);

        assertThat(desk.problems(file))
                .containsExactly(
                        "a.csv:30002: found the bytes A3, which are not UTF-8; expected text in UTF-8, such as the table saved again in that encoding, or a layout that names the file's own");
    }

    @Test
    void textCutOffWithinACharacter() throws IOException {
        byte[] whole = (HEADER + "2026-09-30,sale,1.00,\u20ac").getBytes(StandardCharsets.UTF_8);
        Path file =
                Files.write(desk.path("a.csv"), java.util.Arrays.copyOf(whole, whole.length - 1));

        assertThat(desk.problems(file))
                .containsExactly(
                        "a.csv:2: found the bytes E2 82, which are not UTF-8; expected text in UTF-8, such as the table saved again in that encoding, or a layout that names the file's own");
    }

    @Test
    void aNulCharacter() throws IOException {
        assertThat(desk.problems("a.csv", HEADER + GOOD + "2026-09-30,sale,1.00,a\0b\n"))
                .containsExactly(
                        "a.csv:3: found a NUL character; expected text, such as a table saved as .csv");
    }

    @Test
    void problemsBeforeAFaultAreToldToo() throws IOException {
        assertThat(desk.problems("a.csv", HEADER + "2026-09-30,sale,x,a\n2026-09-30,sale,1,\"b\n"))
                .containsExactly(
                        "a.csv:2 [gross]: found 'x'; expected an amount with at most 4 decimals, such as 1234.50",
                        "a.csv:3: found a quote that is opened and never closed; expected a closing quote, such as \"blue, 12 cm\"");
    }

    @Test
    void anEmptyFile() throws IOException {
        assertThat(desk.problems("a.csv", ""))
                .containsExactly(
                        "a.csv: found an empty file; expected a header row and rows below it");
    }

    @Test
    void aHeaderAlone() throws IOException {
        assertThat(desk.problems("a.csv", HEADER + "\n,,,\n"))
                .containsExactly(
                        "a.csv: found a header and no rows; expected at least one row below the header");
    }

    @Test
    void aFolder() throws IOException {
        Path file = Files.createDirectory(desk.path("a.csv"));

        assertThatThrownBy(() -> desk.enter(file))
                .isInstanceOf(LedgerException.class)
                .hasMessageStartingWith(file.toString());
    }

    @Test
    void noFile() {
        Path file = desk.path("none.csv");

        assertThatThrownBy(() -> desk.enter(file))
                .isInstanceOf(LedgerException.class)
                .hasMessageStartingWith(file.toString());
    }

    @Test
    void filesThatAreNoTables() throws IOException {
        assertThat(desk.problems("a.csv", "%PDF-1.7\n"))
                .containsExactly(
                        "a.csv: found a PDF that is not sound; expected one that opens, such as the same report downloaded again");
        assertThat(desk.problems("a.xlsx", "PK\3\4 and no more"))
                .containsExactly(
                        "a.xlsx: found a packed file that is not a sound XLSX workbook; expected a text table or an XLSX workbook, such as the sheet saved again as .xlsx or .csv");
        Path old =
                Files.write(
                        desk.path("a.xls"),
                        new byte[] {(byte) 0xD0, (byte) 0xCF, 0x11, (byte) 0xE0, 0, 0});
        assertThat(desk.problems(old))
                .containsExactly(
                        "a.xls: found an old office file that is not a sound workbook; expected a text table or a workbook, such as the same sheet saved as .xlsx or .csv");
    }

    @Test
    void aHeaderNoOneKnows() throws IOException {
        assertThat(desk.problems("a.csv", "colour,shape\nred,round\n"))
                .containsExactly(
                        "a.csv: found no header that a layout knows; expected the columns of a layout or of the plain sheet, such as date,kind,gross; or a layout for it, which this works out: quarterfold learn FILE");
    }

    @Test
    void aHeaderThatLacksAColumn() throws IOException {
        assertThat(desk.problems("a.csv", "date,type,gross\n2026-09-30,sale,1.00\n"))
                .containsExactly(
                        "a.csv:1: found the header 'date,type,gross', which no layout fits; expected, for layout plain-sheet, also 'kind'; or a layout for it, which this works out: quarterfold learn FILE"
                                .replace("date,type,gross", "date, type, gross"));
    }

    @Test
    void aLayoutAskedForThatDoesNotFit() throws IOException {
        Path file = desk.file("a.csv", "date,type,gross\n2026-09-30,sale,1.00\n");

        assertThat(desk.enter(file, "plain-sheet").problems())
                .extracting(Problem::toString)
                .containsExactly(
                        "a.csv:1 [kind]: found no such column; expected every column that layout plain-sheet names, such as 'kind'");
    }

    @Test
    void aLayoutThereIsNot() throws IOException {
        Path file = desk.file("a.csv", HEADER + GOOD);

        assertThatThrownBy(() -> desk.enter(file, "plain"))
                .isInstanceOf(LedgerException.class)
                .hasMessage(
                        "--layout: found 'plain'; expected one of camt.053, daily-rates, duty-deferment-statement-pdf, duty-deferment-statements, e-invoice, expenses, import-vat-certificate-pdf, import-vat-certificates, monthly-rates, norrowby-orders, plain-sheet, postponed-import-statement-pdf, postponed-import-statements, quaylark-statement, supplier-invoices, such as plain-sheet");
    }

    @Test
    void amountsThatAddUpToTooMuch() throws IOException {
        assertThat(
                        desk.problems(
                                "a.csv",
                                HEADER + "2026-09-30,sale,9999999999999.9999,a\n".repeat(100)))
                .startsWith(
                        "a.csv:94: found amounts that add up to more than 922 million million; expected less, such as the file in parts");
    }
}
