package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.intake.MadeInvoice;

/** E-invoices from import to the boxes. */
class EInvoiceReturnTest {
    private static final MadeInvoice.Party IRISH =
            new MadeInvoice.Party("Adverts Abroad", "IE", "IE6388047V");
    private static final MadeInvoice.Party CUSTOMER =
            new MadeInvoice.Party("Harbour Tea", "GB", "GB000480437");

    private static final Pattern FIGURE = Pattern.compile(" {3}(\\d[\\d,]*(\\.\\d\\d)?)$");

    @TempDir private Path folder;
    private Path book = Path.of("");

    @BeforeEach
    void aBook() {
        book = SmallBook.empty(folder);
    }

    private void enter(String name, String xml) throws IOException {
        Run entered = run("import", SmallBook.file(folder, name, xml));
        assertThat(entered.code()).as(entered.err()).isZero();
    }

    private Run run(Object... arguments) {
        Object[] all = new Object[arguments.length + 2];
        all[0] = "--book";
        all[1] = book;
        System.arraycopy(arguments, 0, all, 2, arguments.length);
        return Run.of(all);
    }

    /** The nine figures of the quarter's return, as it prints them. */
    private List<String> boxes() {
        return run("return", "2026-09")
                .out()
                .lines()
                .map(FIGURE::matcher)
                .filter(Matcher::find)
                .map(m -> m.group(1))
                .limit(9)
                .toList();
    }

    private static MadeInvoice usual() {
        return new MadeInvoice("INV-1001")
                .line("Bowls", "100.00", "S", "20")
                .line("Books", "30.00", "Z", "0");
    }

    /**
     * Box 4: 20.00 on the bowls, less 8.00 of the credit note, and 6.00 of the reverse charge,
     * which is box 1 (VATA 1994 s.8). Box 7: 100.00 + 30.00 - 40.00 + 30.00.
     */
    @Test
    void aPurchaseItsCreditAndAServiceFromAbroad() throws IOException {
        enter("invoice.xml", usual().ubl());
        enter(
                "credit.xml",
                new MadeInvoice("CN-7").credit().line("Bowls", "40.00", "S", "20").cii());
        enter(
                "adverts.xml",
                new MadeInvoice("A-3").from(IRISH).line("Adverts", "30.00", "AE", "0").cii());
        assertThat(boxes())
                .containsExactly("6.00", "0.00", "6.00", "18.00", "12.00", "30", "120", "0", "0");
        assertThat(run("queries", "2026-09").out()).isEqualTo("No query is open.\n");
        assertThat(run("verify").code()).isZero();
    }

    /** A document whose totals do not tie claims nothing until a person has seen it. */
    @Test
    void aDocumentThatDoesNotTie() throws IOException {
        enter("invoice.xml", usual().with("BT-115", "151.00").ubl());
        assertThat(boxes())
                .containsExactly("0.00", "0.00", "0.00", "0.00", "0.00", "0", "130", "0", "0");
        assertThat(run("queries", "2026-09").out())
                .isEqualTo(
                        """
                        E1/evidence-missing  invoice.xml row 1
                          No document is held for 120.00, so its VAT of 20.00 is not reclaimed. Find the invoice, or leave it out.
                          quarterfold decide --entry 1 --evidence-seen invoice --why WHY --who NAME

                        S1/document-does-not-tie/INV-1001 BR-CO-16  invoice.xml
                          invoice INV-1001 of Fernmoor Pottery Ltd (GB000472729), GBP 150.00, breaks rule BR-CO-16 of EN 16931: the amount due (BT-115) is stated as 151.00; the total less what was paid plus the rounding comes to 150.00. Its VAT is not reclaimed until a person says that the document was seen. Which figure is right? Ask the supplier.
                          quarterfold decide --query "S1/document-does-not-tie/INV-1001 BR-CO-16" --set-aside --why WHY --who NAME

                        2 queries are open.
                        """);
        assertThat(run("close", "2026-09").code()).isEqualTo(1);

        Run seen =
                run(
                        "decide",
                        "--entry",
                        "1",
                        "--evidence-seen",
                        "invoice",
                        "--why",
                        "the paper says 150.00",
                        "--who",
                        "A. Clerk");
        assertThat(seen.code()).as(seen.err()).isZero();
        SmallBook.setAside(book, "S1/document-does-not-tie/INV-1001 BR-CO-16");
        assertThat(boxes())
                .containsExactly("0.00", "0.00", "0.00", "20.00", "20.00", "0", "130", "0", "0");
        assertThat(run("close", "2026-09").code()).isZero();
        assertThat(run("verify").code()).isZero();
    }

    /** Somebody else's document claims nothing; the business's own sale is taxed. */
    @Test
    void aSaleAndADocumentOfOthers() throws IOException {
        enter("sale.xml", usual().from(MadeInvoice.BUSINESS).to(CUSTOMER).cii());
        enter("others.xml", usual().with("BT-1", "INV-1002").to(CUSTOMER).ubl());
        assertThat(boxes())
                .containsExactly("20.00", "0.00", "20.00", "0.00", "20.00", "130", "130", "0", "0");
        assertThat(run("queries", "2026-09").out())
                .isEqualTo(
                        """
                        E3/made-out-to-another  others.xml row 1
                          The document for 120.00 is made out in another name than the business, so its VAT of 20.00 is not reclaimed. Ask the supplier to make it out to the business. One in an employee's name does for subsistence and motoring alone.
                          quarterfold decide --entry 3 --set-aside --why WHY --who NAME

                        S2/document-of-others/INV-1002  others.xml
                          invoice INV-1002 of Fernmoor Pottery Ltd (GB000472729), GBP 150.00, is made out to Harbour Tea (GB000480437), and neither is this business by VAT number or, where none is stated, by name. It is entered as a purchase made out to somebody else, whose VAT is not reclaimed. Whose is it?
                          quarterfold decide --query S2/document-of-others/INV-1002 --set-aside --why WHY --who NAME

                        2 queries are open.
                        """);
    }

    /** The channel's own invoice, for fees its settlement claims too: reg 29(4). */
    @Test
    void anInvoiceOfTheChannel() throws IOException {
        enter(
                "settlement.csv",
                """
                date,kind,net,vat,rate,party,party_country,party_vat,channel,settlement,evidence,document
                2026-07-05,fee,10.00,2.00,20,Fernmoor Pottery Ltd,GB,GB000472729,Fernmoor,ST-1,invoice,F-1
                """);
        enter("invoice.xml", usual().ubl());
        assertThat(run("queries", "2026-09").out())
                .isEqualTo(
                        """
                        E2/fees-claimed-twice  invoice.xml row 1
                          Document INV-1001 seems to charge fees of 120.00, and fees of the same channel are claimed on its settlements too, such as entry 1. Input tax is claimed once, so the document is in no box, and what a closed return claimed on it is taken back. Decide duplicate-of 1 if it is for those fees, or treat-as if it is for others.
                          quarterfold decide --entry 2 --set-aside --why WHY --who NAME

                        1 query is open.
                        """);
        assertThat(boxes().get(3)).isEqualTo("2.00");
    }

    /** An advance in CII and the invoice for the whole in UBL, in either order. */
    @Test
    void anAdvanceAndTheInvoiceForTheWhole() throws IOException {
        enter(
                "advance.xml",
                new MadeInvoice("A-1")
                        .with("BT-3", "386")
                        .line("Advance", "50.00", "S", "20")
                        .cii());
        enter("whole.xml", usual().with("BT-113", "60.00").with("BT-25", "A-1").ubl());
        assertThat(run("queries", "2026-09").out())
                .isEqualTo(
                        """
                        E2/advance-claimed-twice  whole.xml row 1
                          Document INV-1001 for 120.00 and entry 1 seem to be an advance and the invoice for the whole, which charges the VAT of the advance again. Input tax is claimed once, so this one is in no box. If it does, decide duplicate-of on the advance; where a closed return has claimed that, enter it as a purchase-credit and decide treat-as on the invoice. If the invoice leaves it out, decide treat-as.
                          quarterfold decide --entry 2 --set-aside --why WHY --who NAME

                        1 query is open.
                        """);
        assertThat(boxes().get(3)).isEqualTo("10.00");
        assertThat(run("close", "2026-09").code()).isEqualTo(1);
        Run decided =
                run(
                        "decide",
                        "--entry",
                        "1",
                        "--duplicate-of",
                        "2",
                        "--why",
                        "the invoice has all of it",
                        "--who",
                        "A. Clerk");
        assertThat(decided.code()).as(decided.err()).isZero();
        assertThat(boxes().get(3)).isEqualTo("20.00");
        assertThat(run("close", "2026-09").code()).isZero();
        assertThat(run("verify").code()).isZero();
    }
}
