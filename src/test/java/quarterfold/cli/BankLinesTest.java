package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.intake.MadeStatement;

/** A bank statement beside a channel's payout: the same money once, and no part of the return. */
class BankLinesTest {

    @TempDir private static Path folder;
    private static Path book = Path.of("");
    private static String imported = "";

    @BeforeAll
    static void makesTheBook() throws IOException {
        book = SmallBook.empty(folder);
        Run.of("--book", book, "import", SmallBook.file(folder, "quarter.csv", SmallBook.QUARTER));
        imported =
                Run.of(
                                "--book",
                                book,
                                "import",
                                SmallBook.file(
                                        folder,
                                        "september.xml",
                                        MadeStatement.message(
                                                MadeStatement.statement(
                                                        "2026-09",
                                                        MadeStatement.balance("OPBD", "10.00"),
                                                        MadeStatement.balance("CLBD", "60.00"),
                                                        MadeStatement.entry(
                                                                "45.00",
                                                                "<ValDt><Dt>2026-10-01</Dt></ValDt><AcctSvcrRef>HB-9</AcctSvcrRef>"
                                                                        + MadeStatement
                                                                                .transactions(
                                                                                        "<Refs><EndToEndId>QL-1</EndToEndId></Refs><RltdPties><Dbtr><Pty><Nm>Quaylark</Nm></Pty></Dbtr></RltdPties><RmtInf><Ustrd>Payout QL-1</Ustrd></RmtInf>"))))))
                        .out();
    }

    @Test
    void theImportDoesNotSayThatItTies() {
        assertThat(imported)
                .isEqualTo(
                        """
                        file           kind  layout    rows  entries  set aside  money
                        september.xml  bank  camt.053     1        1          0  45.00  does not tie: asked
                        """);
    }

    @Test
    void itsStory() {
        String digest = digest();
        assertThat(Run.of("--book", book, "vouch", "7").out())
                .isEqualTo(
                        """
                        Entry 7: bank-line of 30 September 2026

                          From                   september.xml, row 1
                          Read as                camt.053
                          SHA-256                %s
                          Document               QL-1
                          Party                  Quaylark
                          Order                  HB-9
                          Description            Payout QL-1
                          Evidence               unstated
                          Printed                net -, VAT -, gross 45.00, GBP
                          Paid                   1 October 2026
                          Account                GB24QFLD00000012345678

                        Treated as bank-line by rule M10: A line of a bank statement: the money of what other entries state, so it makes no supply and is in no box.
                          Authority              VATA 1994 s.4; VAT Notice 700/12 boxes 6 and 7 (from memory)
                          Value without VAT      45.00
                          VAT                    0.00
                          It is in no box.
                          Period                 2026-09, open
                        """
                                .formatted(digest));
    }

    @Test
    void asJson() {
        String digest = digest();
        assertThat(Run.of("--book", book, "ledger", "--json").out().lines().skip(6))
                .containsExactly(
                        """
                        {"number":7,"kind":"bank-line","date":"2026-09-30","document":"QL-1","party":"Quaylark",\
                        "order":"HB-9","account":"GB24QFLD00000012345678","description":"Payout QL-1",\
                        "evidence":"unstated","currency":"GBP","net":"45.00","vat":"0.00","gross":"45.00","claim":"0.00",\
                        "treatment":"bank-line","rule":"M10","boxes":{},\
                        "source":{"file":"september.xml","sha256":"%s","row":1}}"""
                                .formatted(digest));
    }

    @Test
    void whatDoesNotTieIsAskedInThePeriod() {
        assertThat(Run.of("--book", book, "queries", "2026-09").out())
                .isEqualTo(
                        """
                        E4/evidence-missing  quarter.csv row 5
                          No document is held for 24.00, so its VAT of 4.00 is not reclaimed. Find the invoice, or leave it out.
                          quarterfold decide --entry 4 --evidence-seen invoice --why WHY --who NAME

                        S2/statement-does-not-tie/2026-09  september.xml
                          statement 2026-09 of account GB24QFLD00000012345678 opens with 10.00; with its booked entries (1, 45.00 in all) that makes 55.00, but it closes with 60.00; the difference is 5.00: which entries are missing, or which are not of this statement?
                          quarterfold decide --query S2/statement-does-not-tie/2026-09 --set-aside --why WHY --who NAME

                        2 queries are open.
                        """);
    }

    private static String digest() {
        String ledger = Run.of("--book", book, "ledger", "--json").out();
        return ledger.replaceAll("(?s).*\"sha256\":\"(\\w+)\".*", "$1");
    }
}
