package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static quarterfold.intake.MadeStatement.balance;
import static quarterfold.intake.MadeStatement.entry;
import static quarterfold.intake.MadeStatement.message;
import static quarterfold.intake.MadeStatement.messageOf;
import static quarterfold.intake.MadeStatement.ofVersion;
import static quarterfold.intake.MadeStatement.statement;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Bank statements that are refused: nothing of them is entered, and the fault has its line. */
class BankStatementFaultsTest {
    private static final String BROKEN =
            "found XML that breaks off, breaks the rules of XML, or has a document type; expected the whole file as it was issued, every element closed; get it again";

    @TempDir private Path folder;
    private Desk desk;

    @BeforeEach
    void open() {
        desk = new Desk(folder);
    }

    @AfterEach
    void close() {
        desk.close();
    }

    private List<String> problemsOf(String entry) throws IOException {
        return desk.problems(
                "a.xml", message(statement("S", balance("OPBD", "0"), entry, entry("1", ""))));
    }

    /** An entry with one text in another's place. */
    private static String with(String text, String other) {
        return entry("18600.00", "<ValDt><Dt>2026-10-01</Dt></ValDt>").replace(text, other);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
                    18600.00           | 1.23456          | [Ntry/Amt]: found '1.23456'; expected an amount that is not negative, with at most 4 decimals, such as 18600.00
                    18600.00           | -5.00            | [Ntry/Amt]: found '-5.00'; expected an amount that is not negative, with at most 4 decimals, such as 18600.00
                    18600.00           | 18,600.00        | [Ntry/Amt]: found '18,600.00'; expected an amount that is not negative, with at most 4 decimals, such as 18600.00
                    18600.00           | ``               | [Ntry/Amt]: found ''; expected an amount that is not negative, with at most 4 decimals, such as 18600.00
                    "GBP"              | "XQQ"            | [Ntry/Amt@Ccy]: found 'XQQ'; expected a currency code of ISO 4217, such as GBP
                    CRDT               | CREDIT           | [Ntry/CdtDbtInd]: found 'CREDIT'; expected CRDT or DBIT, such as CRDT
                    <Cd>BOOK</Cd>      | ``               | [Ntry/Sts]: found ''; expected the status of the entry, such as BOOK
                    <Dt>2026-09-30</Dt>| <Dt>30/09/2026</Dt> | [Ntry/BookgDt]: found '30/09/2026'; expected a date such as 2026-09-30
                    <Dt>2026-10-01</Dt>| <DtTm>2026-10-01</DtTm> | [Ntry/ValDt]: found '2026-10-01'; expected a date such as 2026-09-30
                    <Sts>              | <RvslInd>ja</RvslInd><Sts> | [Ntry/RvslInd]: found 'ja'; expected true or false, such as true
                    """)
    void whatAnEntryStatesMustBeSound(String text, String other, String problem)
            throws IOException {
        assertThat(problemsOf(with(text, other))).containsExactly("a.xml:14 " + problem);
    }

    @Test
    void aBookedEntryHasADay() throws IOException {
        assertThat(problemsOf(entry("1", "").replace("<BookgDt><Dt>2026-09-30</Dt></BookgDt>", "")))
                .containsExactly(
                        "a.xml:14 [Ntry/BookgDt]: found ''; expected the day the entry was booked, such as 2026-09-30");
    }

    @Test
    void balancesAndAccountsMustBeSound() throws IOException {
        String statement =
                statement("S", balance("OPBD", "0"), entry("1", ""))
                        .replace("<Amt Ccy=\"GBP\">0<", "<Amt Ccy=\"GBP\">nil<")
                        .replace(MadeStatement.ACCOUNT, "0".repeat(71));
        assertThat(desk.problems("a.xml", message(statement)))
                .containsExactly(
                        "a.xml:7 [Stmt/Acct/Id]: found '%s…'; expected the number of an account without spaces, such as GB24QFLD00000012345678"
                                .formatted("0".repeat(60)),
                        "a.xml:8 [Stmt/Bal/Amt]: found 'nil'; expected an amount that is not negative, with at most 4 decimals, such as 18600.00");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    camt.052.001.08 | found an account report of the running day (camt.052.001.08), which is not final; expected the statement, camt.053, of the same account
                    camt.054.001.02 | found a notification of single entries (camt.054.001.02), which states no balance; expected the statement, camt.053, of the same account
                    camt.053.001.01 | found a bank statement in the form camt.053.001.01; expected a version from 2 to 14, such as camt.053.001.08
                    camt.053.001.15 | found a bank statement in the form camt.053.001.15; expected a version from 2 to 14, such as camt.053.001.08
                    camt.053.002.02 | found a bank statement in the form camt.053.002.02; expected a version from 2 to 14, such as camt.053.001.08
                    """)
    void otherMessagesAreTold(String kind, String fault) throws IOException {
        assertThat(desk.problems("a.xml", messageOf(kind, statement("S", entry("1", "")))))
                .containsExactly("a.xml: " + fault);
    }

    @Test
    void xmlOfAnotherKindIsNoStatement() throws IOException {
        Path file = desk.file("a.xml", "<rates xmlns=\"urn:rates\"/>");
        assertThat(desk.enter(file, "camt.053").problems().stream().map(Problem::toString))
                .containsExactly(
                        "a.xml: found the namespace 'urn:rates'; expected that of a bank statement, such as urn:iso:std:iso:20022:tech:xsd:camt.053.001.08");
        Path other =
                desk.file("b.xml", message().replace("BkToCstmrStmt", "BkToCstmrDbtCdtNtfctn"));
        assertThat(desk.problems(other))
                .containsExactly(
                        "b.xml:3: found the element 'BkToCstmrDbtCdtNtfctn'; expected BkToCstmrStmt, as a camt.053 has it");
        assertThat(desk.problems("c.xml", message()))
                .containsExactly("c.xml: found no statement (Stmt) in it; expected at least one");
        assertThat(
                        desk.problems(
                                "d.xml",
                                "<Document xmlns=\"urn:iso:std:iso:20022:tech:xsd:camt.053.001.08\"/>"))
                .containsExactly(
                        "d.xml:1: found nothing in the root element; expected BkToCstmrStmt");
    }

    @Test
    void aFileThatBreaksOffIsRefusedWithItsLine() throws IOException {
        String whole = ofVersion(8);
        String half = whole.substring(0, whole.indexOf("<AcctSvcrRef>HB-77121"));
        long lines = half.lines().count();
        assertThat(desk.problems("a.xml", half)).containsExactly("a.xml:" + lines + ": " + BROKEN);
        String late = whole.replace("</Document>", "</Dokument>");
        assertThat(desk.problems("b.xml", late))
                .containsExactly("b.xml:" + late.lines().count() + ": " + BROKEN);
        assertThat(desk.problems("c.xml", whole + "<more/>"))
                .containsExactly("c.xml:" + (whole.lines().count() + 1) + ": " + BROKEN);
        String bytes = whole.replace("Harbour", "H\u00e4fen");
        assertThat(desk.problems(desk.file("d.xml", bytes, StandardCharsets.ISO_8859_1)))
                .containsExactly(
                        "d.xml: found bytes that are not of the file's encoding; expected UTF-8, or the encoding its first line declares, such as encoding=\"windows-1252\"; get the file again");
    }

    @Test
    void aDocumentTypeIsRefused() throws IOException {
        String xml =
                ofVersion(8)
                        .replace(
                                "<Document ",
                                "<!DOCTYPE Document [<!ENTITY x SYSTEM \"file:///etc/hostname\">]>\n<Document ")
                        .replace("Quaylark Payments", "&x;");
        Path file = desk.file("a.xml", xml);
        assertThat(desk.enter(file, "camt.053").problems().stream().map(Problem::toString))
                .containsExactly("a.xml:2: " + BROKEN);
        assertThat(desk.enter(file).problems().stream().map(Problem::toString))
                .containsExactly(
                        "a.xml: found a document type (<!DOCTYPE), as web pages have; expected XML without one, or a table, such as the same report downloaded as .csv");
        assertThat(desk.entries()).isEmpty();
    }

    @Test
    void depthAndLengthHaveLimits() throws IOException {
        String deep =
                entry(
                        "1",
                        "<SplmtryData>"
                                + "<x>".repeat(200)
                                + "</x>".repeat(200)
                                + "</SplmtryData>");
        assertThat(problemsOf(deep))
                .containsExactly(
                        "a.xml:19: found elements within elements more than 100 deep; expected fewer");
        assertThat(
                        problemsOf(
                                entry(
                                        "1",
                                        "<AddtlNtryInf>"
                                                + "x".repeat(100_001)
                                                + "</AddtlNtryInf>")))
                .containsExactly(
                        "a.xml:19: found a text of more than 100,000 characters; expected a shorter one");
        String much = "<AddtlInf>" + "x".repeat(99_999) + "</AddtlInf>";
        assertThat(problemsOf(entry("1", much.repeat(21))))
                .containsExactly(
                        "a.xml:19: found an element with more than 2,000,000 characters in it; expected fewer");
    }
}
