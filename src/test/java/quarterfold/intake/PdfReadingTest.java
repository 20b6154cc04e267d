package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Line;

/** PDFs with a text layer, read by the lines of shipped layouts; the prints are invented. */
class PdfReadingTest {
    static final String CERTIFICATE =
            """
            Monthly import VAT certificate
            VAT registration number 101 7476 96
            EORI number: GB101747696000
            Month: July 2026
            Page 1 of 2
            Entry reference|Accounting date|VAT paid
            26GB0INVENTED04711|16/07/2026|£386.42
            071 123456A|17/07/2026|£1,200.00
            Total of this page||£1,586.42
            """;
    static final String SECOND_PAGE =
            """
            Monthly import VAT certificate
            EORI number: GB101747696000
            Month: July 2026
            Page 2 of 2
            Entry reference|Accounting date|VAT paid
            26GB0INVENTED04712|30/07/2026|£13.58
            Total of this page||£13.58
            Total VAT paid||£1,600.00
            """;
    static final String STATEMENT =
            """
            Monthly postponed import VAT statement
            VAT registration number: GB101747696
            EORI: GB101747696000
            Month: August 2026
            Page 1 of 1
            Part 1 Summary
            Total import VAT to account for||1,174.15
            Port Saltgate:||1,114.15
            Port Norham Wharf:||60.00
            Total of all ports||1,174.15
            Part 2 Entries
            Port: Saltgate
            Date of import|Entry number|Declarant's reference|Import VAT
            11/08/2026|26GB0INVENTED04933|TW-SEA-31|863.75
            12/08/2026|26GB0INVENTED04934||250.40
            Total for port Saltgate:|||1,114.15
            Port: Norham Wharf
            19/08/2026|0711234567A|AIR 7 box|60.00
            Total for port Norham Wharf:|||60.00
            """;

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

    private Path pdf(String... pages) {
        return PrintedPdf.write(folder.resolve("printed.pdf"), pages);
    }

    private static String told(Entry entry) {
        Line line = entry.line();
        return "%s %s %s %s %s %s %s [%s] row %d"
                .formatted(
                        line.profile().kind().code(),
                        line.taxPoint(),
                        line.document(),
                        line.profile().partyVat(),
                        line.profile().evidence().code(),
                        line.amounts().vat().orElseThrow(),
                        line.particulars().stated(),
                        line.notes(),
                        line.row());
    }

    @Test
    void aCertificateOfTwoPages() {
        ImportResult result = desk.enter(pdf(CERTIFICATE, SECOND_PAGE));
        assertThat(result.problems()).isEmpty();
        assertThat(result.layout()).isEqualTo("import-vat-certificate-pdf");
        assertThat(desk.entries())
                .extracting(PdfReadingTest::told)
                .containsExactly(
                        "import-vat-paid 2026-07-16 26GB0INVENTED04711 GB101747696000 import-certificate 386.42 {STATEMENT_MONTH=2026-07} [VAT registration number: 101 7476 96] row 1007",
                        "import-vat-paid 2026-07-17 071 123456A GB101747696000 import-certificate 1200.00 {STATEMENT_MONTH=2026-07} [VAT registration number: 101 7476 96] row 1008",
                        "import-vat-paid 2026-07-30 26GB0INVENTED04712 GB101747696000 import-certificate 13.58 {STATEMENT_MONTH=2026-07} [VAT registration number: 101 7476 96] row 2006");
        assertThat(desk.differences()).isEmpty();
    }

    @Test
    void aStatementOfTwoPorts() {
        ImportResult result = desk.enter(pdf(STATEMENT));
        assertThat(result.problems()).isEmpty();
        assertThat(desk.entries())
                .extracting(PdfReadingTest::told)
                .containsExactly(
                        "import-vat-postponed 2026-08-11 26GB0INVENTED04933 GB101747696000 postponed-statement 863.75 {STATEMENT_MONTH=2026-08} [VAT registration number: GB101747696; Port: Saltgate] row 1014",
                        "import-vat-postponed 2026-08-12 26GB0INVENTED04934 GB101747696000 postponed-statement 250.40 {STATEMENT_MONTH=2026-08} [VAT registration number: GB101747696; Port: Saltgate] row 1015",
                        "import-vat-postponed 2026-08-19 0711234567A GB101747696000 postponed-statement 60.00 {STATEMENT_MONTH=2026-08} [VAT registration number: GB101747696; Port: Norham Wharf] row 1018");
        assertThat(desk.entries().get(2).line().item().description()).isEqualTo("AIR 7 box");
        assertThat(desk.differences()).isEmpty();
    }

    @Test
    void anAmendedStatementSaysSo() {
        desk.enter(pdf(STATEMENT.replace("Part 1", "Amended statement, 14 September\nPart 1")));
        assertThat(desk.entries())
                .extracting(e -> e.line().particulars().stated().toString())
                .containsOnly("{STATEMENT_MONTH=2026-08, AMENDED=yes}");
    }

    /** Below the rows it would hold for none of them. */
    @Test
    void whatHoldsForRowsStandsAboveThem() throws IOException {
        assertThat(desk.problems(pdf(STATEMENT + "Amended statement")))
                .containsExactly(
                        "printed.pdf:page 1 line 20: found 'Amended statement'; expected such a line above the rows it holds for, as the first of them is above it");
    }

    /** Part 1 is the sum of its ports, and each port that of its entries. */
    @Test
    void eachTotalIsHeldAgainstItsRows() throws IOException {
        assertThat(desk.problems(pdf(STATEMENT.replace("863.75", "863.57"))))
                .containsExactly(
                        "printed.pdf:page 1 line 8 [Import VAT]: found '1,114.15'; expected the sum of the 2 rows of the file with Port 'Saltgate', 1113.97; are rows missing, or is one there twice?",
                        "printed.pdf:page 1 line 16 [Import VAT]: found '1,114.15'; expected the sum of the 2 rows of the file with Port 'Saltgate', 1113.97; are rows missing, or is one there twice?",
                        "printed.pdf:page 1 line 10 [Import VAT]: found '1,174.15'; expected the sum of the 3 rows of the file, 1173.97; are rows missing, or is one there twice?",
                        "printed.pdf:page 1 line 7 [Import VAT]: found '1,174.15'; expected the sum of the 3 rows of the file, 1173.97; are rows missing, or is one there twice?");
    }

    @Test
    void aPortWithoutItsTotalIsTold() throws IOException {
        assertThat(desk.problems(pdf(STATEMENT.replace("Port Norham Wharf:||60.00\n", ""))))
                .containsExactly(
                        "printed.pdf [Import VAT]: found 1 row of the file with Port 'Norham Wharf' and no line that states their total; expected one, such as 'Port {Port}: {Import VAT: -?£?[0-9,]+[.][0-9]{2}}'; is a page missing?");
    }

    @Test
    void aPageIsMissing() throws IOException {
        assertThat(desk.problems(pdf(CERTIFICATE)))
                .containsExactly(
                        "printed.pdf [VAT paid]: found 2 rows of the file and no line that states their total; expected one, such as '{}total{} {VAT paid: -?£?[0-9,]+[.][0-9]{2}}'; is a page missing?",
                        "printed.pdf:page 1: found the page number '1 of 2'; expected the file's pages in order and all there, page 1 of 1, as in '{}page {page: [0-9]+} of {pages: [0-9]+}'; is a page missing?");
    }

    /** Nothing is passed over in silence. */
    @Test
    void aLineNobodyKnows() throws IOException {
        String text =
                CERTIFICATE.replace(
                        "071 123456A|17/07/2026|£1,200.00", "071 123456A|17 July|£1,200.00");
        assertThat(desk.problems(pdf(text, SECOND_PAGE)))
                .containsExactly(
                        "printed.pdf:page 1 line 8: found '071 123456A 17 July £1,200.00'; expected a line that layout import-vat-certificate-pdf knows, such as the row '{Entry reference: [0-9A-Z][0-9A-Z -]*[0-9A-Z]} {Accounting date: [0-9]{2}/[0-9]{2}/[0-9]{4}} {VAT paid: -?£?[0-9,]+[.][0-9]{2}}'; give the layout a line for it under rows, totals, facts or other");
    }

    @Test
    void aDayThatIsNone() throws IOException {
        assertThat(desk.problems(pdf(CERTIFICATE.replace("17/07", "31/06"), SECOND_PAGE)))
                .containsExactly(
                        "printed.pdf:page 1 line 8 [Accounting date]: found '31/06/2026'; expected a date on the calendar written dd/MM/yyyy, such as 30/09/2026");
    }

    @Test
    void aFactThatIsNotStated() throws IOException {
        assertThat(
                        desk.problems(
                                pdf(
                                        CERTIFICATE.replace("EORI number: GB101747696000\n", ""),
                                        SECOND_PAGE)))
                .containsExactly(
                        "printed.pdf:page 1 line 6 [EORI]: found a row and no line above it that states this; expected one, such as '{}EORI{} {EORI: (GB|XI)[0-9 ]+}'");
    }

    @Test
    void noRow() throws IOException {
        assertThat(
                        desk.problems(
                                pdf(
                                        """
                                        Import VAT certificate
                                        EORI GB101747696000
                                        Month 2026-07
                                        Page 1 of 1
                                        Total 0.00
                                        """)))
                .containsExactly(
                        "printed.pdf: found no line that is a row of layout import-vat-certificate-pdf; expected at least one, such as '{Entry reference: [0-9A-Z][0-9A-Z -]*[0-9A-Z]} {Accounting date: [0-9]{2}/[0-9]{2}/[0-9]{4}} {VAT paid: -?£?[0-9,]+[.][0-9]{2}}'");
    }

    /** A picture of a page has no text. */
    @Test
    void aPageWithoutText() throws IOException {
        assertThat(desk.problems(pdf(CERTIFICATE, "")))
                .containsExactly(
                        "printed.pdf: found no text on page 2, as in a picture of a page; expected a PDF with a text layer, such as the one that was downloaded; or enter its rows in the plain sheet");
    }

    @Test
    void aPdfOfAnotherKind() throws IOException {
        assertThat(desk.problems(pdf("Dear customer,\nplease find enclosed")))
                .containsExactly(
                        "printed.pdf: found a PDF of which no layout knows the text, which begins with 'Dear customer,'; expected a line such as '{}duty deferment statement{}' or '{}import VAT certificate{}' or '{}postponed import VAT statement{}'; write a layout for it, or enter its rows in the plain sheet");
    }

    @Test
    void aPdfThatFitsTwoLayouts() throws IOException {
        assertThat(desk.problems(pdf(CERTIFICATE + "Postponed import VAT statement", SECOND_PAGE)))
                .containsExactly(
                        "printed.pdf: found lines that fit the layouts import-vat-certificate-pdf and postponed-import-statement-pdf; expected them to fit one; say which, such as --layout import-vat-certificate-pdf");
    }

    @Test
    void aLayoutThatDoesNotReadIt() throws IOException {
        Path file = pdf(CERTIFICATE, SECOND_PAGE);
        assertThat(desk.enter(file, "supplier-invoices").problems())
                .extracting(Problem::toString)
                .containsExactly(
                        "printed.pdf: found a PDF, which layout supplier-invoices does not read; expected a table, such as the same report downloaded as .csv");
        assertThat(desk.enter(file, "postponed-import-statement-pdf").problems())
                .extracting(Problem::toString)
                .containsExactly(
                        "printed.pdf: found no line '{}postponed import VAT statement{}'; expected one, as layout postponed-import-statement-pdf is known by it");
        assertThat(
                        desk.enter(desk.file("a.csv", "a,b\n1,2\n"), "import-vat-certificate-pdf")
                                .problems())
                .extracting(Problem::toString)
                .containsExactly(
                        "a.csv: found no PDF, which layout import-vat-certificate-pdf does not read; expected a PDF, such as the one that was downloaded");
    }
}
