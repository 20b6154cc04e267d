package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.intake.PrintedPdf;

/** Certificates and statements, as PDF and as lists, from the file to the boxes. */
class ImportStatementsTest {

    /** Import VAT of 100.00 and 60.40 to account for. */
    private static final String STATEMENT =
            """
            Monthly postponed import VAT statement
            EORI: GB101747696000
            Month: August 2026
            Page 1 of 1
            Part 1 Summary
            Total import VAT to account for|||160.40
            Port Saltgate:|||160.40
            Part 2 Entries
            Port: Saltgate
            Date of import|Entry number|Declarant's reference|Import VAT
            11/08/2026|26GB0INVENTED04933|TW-SEA-31|100.00
            12/08/2026|26GB0INVENTED04934|TW-SEA-32|60.40
            """;

    private static final String DEFERMENT =
            """
            Duty deferment statement
            EORI: GB101747696000
            Deferment account: 1234567
            Period 1 to 31 August 2026
            Page 1 of 1
            Accounting date|Entry reference|Tax|Amount
            17/08/2026|071 123456A|Duty|38.50
            17/08/2026|071 123456A|VAT|207.70
            Total Duty|||38.50
            Total VAT|||207.70
            Total|||246.20
            """;

    @TempDir private Path folder;
    private Path book;

    @BeforeEach
    void open() {
        book = SmallBook.empty(folder);
    }

    private void pdf(String name, String text) {
        SmallBook.enter(book, PrintedPdf.write(folder.resolve(name), text));
    }

    private void csv(String name, String text) throws IOException {
        SmallBook.enter(book, SmallBook.file(folder, name, text));
    }

    /** Boxes 1 to 9, how many queries are open, and that verify finds nothing. */
    private String told() {
        Run verified = Run.of("--book", book, "verify");
        assertThat(verified.code()).as(verified.out()).isZero();
        String json = Run.of("--book", book, "return", "2026-09", "--json").out();
        return json.replaceAll(".*\"boxes\":\\{(.*?)\\}.*\"queries\":(\\d+).*\\n", "$1 $2")
                .replace("\"", "");
    }

    @Test
    void aStatementAndAListOfIt() throws IOException {
        pdf("statement.pdf", STATEMENT);
        assertThat(told())
                .isEqualTo("1:160.40,2:0.00,3:160.40,4:160.40,5:0.00,6:0,7:802,8:0,9:0 0");
        csv(
                "statements.csv",
                """
                Statement month,EORI,Port,Date of import,Entry number,Declarant's reference,Value for import VAT,Import VAT
                2026-08,GB101747696000,Saltgate,2026-08-11,26GB0INVENTED04933,TW-SEA-31,500.00,100.00
                2026-08,GB101747696000,Saltgate,2026-08-12,26GB0INVENTED04934,TW-SEA-32,302.00,60.40
                """);
        assertThat(told())
                .as("the same imports again")
                .isEqualTo("1:160.40,2:0.00,3:160.40,4:160.40,5:0.00,6:0,7:802,8:0,9:0 0");
        csv(
                "amended.csv",
                """
                Statement month,Amended,EORI,Port,Date of import,Entry number,Declarant's reference,Value for import VAT,Import VAT
                2026-08,yes,GB101747696000,Saltgate,2026-08-11,26GB0INVENTED04933,TW-SEA-31,500.00,100.00
                2026-08,yes,GB101747696000,Saltgate,2026-08-12,26GB0INVENTED04934,TW-SEA-32,252.00,50.40
                """);
        assertThat(told())
                .as("the second entry amended")
                .isEqualTo("1:150.40,2:0.00,3:150.40,4:150.40,5:0.00,6:0,7:752,8:0,9:0 0");
    }

    /** Rows that two amended lists share are rows of both. */
    @Test
    void anAmendedListAndAnother() throws IOException {
        String header = "Statement month,Amended,EORI,Port,Date of import,Entry number,";
        header += "Declarant's reference,Value for import VAT,Import VAT\n";
        String first = "2026-08,%s,GB101747696000,Saltgate,2026-08-11,E1,,500.00,100.00\n";
        String second = "2026-08,%s,GB101747696000,Saltgate,2026-08-12,E2,,250.00,50.00\n";
        String third = "2026-08,%s,GB101747696000,Saltgate,2026-08-13,E3,,50.00,10.00\n";
        csv("list.csv", header + first.formatted("no") + third.formatted("no"));
        csv("amended.csv", header + (first + second).replace("%s", "yes"));
        assertThat(told()).startsWith("1:150.00,");
        csv("again.csv", header + (first + second + third).replace("%s", "yes"));
        assertThat(told())
                .isEqualTo("1:160.00,2:0.00,3:160.00,4:160.00,5:0.00,6:0,7:800,8:0,9:0 0");
    }

    @Test
    void anAmendedPlainSheetAndAnother() throws IOException {
        String header = "date,kind,document,party_vat,vat,evidence,statement_month,amended\n";
        String first =
                "2026-08-11,import-vat-postponed,E1,GB101747696000,100.00,postponed-statement,2026-08,";
        String second =
                "2026-08-12,import-vat-postponed,E2,GB101747696000,50.00,postponed-statement,August 2026,";
        csv("list.csv", header + first + "\n");
        csv("amended.csv", header + first + "yes\n");
        csv("again.csv", header + first + "yes\n" + second + "yes\n");
        assertThat(told())
                .isEqualTo("1:150.00,2:0.00,3:150.00,4:150.00,5:0.00,6:0,7:750,8:0,9:0 0");
    }

    @Test
    void anAmendedPdf() {
        pdf("statement.pdf", STATEMENT);
        pdf(
                "amended.pdf",
                STATEMENT
                        .replace("Part 1", "Amended statement\nPart 1")
                        .replace("60.40", "50.40")
                        .replace("160.40", "150.40"));
        assertThat(told())
                .isEqualTo("1:150.40,2:0.00,3:150.40,4:150.40,5:0.00,6:0,7:752,8:0,9:0 0");
    }

    /** The deferment statement is no evidence: the certificate of the same entry is. */
    @Test
    void aDefermentStatementClaimsNothing() throws IOException {
        pdf("deferment.pdf", DEFERMENT);
        assertThat(told()).isEqualTo("1:0.00,2:0.00,3:0.00,4:0.00,5:0.00,6:0,7:0,8:0,9:0 0");
        csv(
                "certificates.csv",
                """
                Certificate month,EORI,Entry reference,Accounting date,VAT paid
                August 2026,GB101747696000,071-123456A,2026-08-17,207.70
                """);
        assertThat(told()).isEqualTo("1:0.00,2:0.00,3:0.00,4:207.70,5:207.70,6:0,7:1038,8:0,9:0 0");
        assertThat(Run.of("--book", book, "ledger").out())
                .contains("import-duty", "money-only", "import-paid");
    }

    @Test
    void linesOfDefermentStatements() throws IOException {
        csv(
                "deferment.csv",
                """
                Accounting date,Entry reference,Tax,Amount,Deferment account
                2026-08-17,071 123456A,Duty,38.50,1234567
                2026-08-17,071 123456A,VAT,207.70,1234567
                2026-08-18,071 123457B,Excise,12.00,1234567
                """);
        assertThat(Run.of("--book", book, "ledger", "--json").out())
                .contains("\"kind\":\"import-duty\",\"date\":\"2026-08-18\"");
        assertThat(told()).isEqualTo("1:0.00,2:0.00,3:0.00,4:0.00,5:0.00,6:0,7:0,8:0,9:0 0");
    }

    @Test
    void aMonthThatIsNone() throws IOException {
        Run refused =
                Run.of(
                        "--book",
                        book,
                        "import",
                        SmallBook.file(
                                folder,
                                "certificates.csv",
                                """
                                Certificate month,EORI,Entry reference,Accounting date,VAT paid
                                2026-13,GB101747696000,071-123456A,2026-08-17,207.70
                                """));
        assertThat(refused.code()).isEqualTo(65);
        assertThat(refused.err())
                .contains(
                        "certificates.csv:2 [Certificate month]: found '2026-13'; expected a month such as 2026-09");
    }
}
