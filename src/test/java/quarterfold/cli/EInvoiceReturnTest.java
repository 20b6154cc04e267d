package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import quarterfold.intake.MadeInvoice;

/** E-invoices from import to the boxes. */
class EInvoiceReturnTest {
    private static final MadeInvoice.Party IRISH =
            new MadeInvoice.Party("Adverts Abroad", "IE", "IE6388047V");
    private static final MadeInvoice.Party CUSTOMER =
            new MadeInvoice.Party("Harbour Tea", "GB", "GB000480437");

    private static final Pattern FIGURE = Pattern.compile(" {3}(-?\\d[\\d,]*(\\.\\d\\d)?)$");

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
        assertThat(run("queries", "2026-09").out()).isEqualTo("No query is open.\n");
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
                          The document for 120.00 is made out in another name than the business, so its VAT of 20.00 is not reclaimed. That it was seen does not change that. If it is the business's all the same, such as under a name it trades in: decide --entry 3 --state addressed=business. If it is not: ask the supplier for one made out to the business, or decide --entry 3 --disallow. One in an employee's name does for subsistence and motoring alone.
                          quarterfold decide --entry 3 --set-aside --why WHY --who NAME

                        S2/document-of-others/INV-1002  others.xml
                          invoice INV-1002 of Fernmoor Pottery Ltd (GB000472729), GBP 150.00, is made out to Harbour Tea (GB000480437), and neither is this business by VAT number or, where none is stated, by name. It is entered as a purchase made out to somebody else, whose VAT is not reclaimed. Whose is it? That it was seen does not answer that: if it is this business's all the same, such as under a name it trades in, decide --state addressed=business for each of its entries; if it is not, decide --disallow for them.
                          quarterfold decide --query S2/document-of-others/INV-1002 --set-aside --why WHY --who NAME

                        2 queries are open.
                        """);
    }

    private void decide(String... what) {
        List<String> words = new ArrayList<>(List.of("decide"));
        words.addAll(List.of(what));
        words.addAll(List.of("--why", "looked at it", "--who", "A. Clerk"));
        Run decided = run(words.toArray());
        assertThat(decided.code()).as(decided.err()).isZero();
    }

    private String queries() {
        return run("queries", "2026-09").out();
    }

    /** A person who says that it is made out to the business has answered whose it is. */
    @Test
    void aDocumentOfOthersThatIsOurs() throws IOException {
        enter("others.xml", usual().to(CUSTOMER).ubl());
        assertThat(queries()).contains("S1/document-of-others/INV-1001");
        decide("--entry", "1", "--state", "addressed=business");
        assertThat(boxes().get(3)).isEqualTo("20.00");
        assertThat(queries()).isEqualTo("No query is open.\n");
    }

    /** VAT Regulations 1995 reg 14(1)(e): in whose name it is does not change by seeing it. */
    @Test
    void aDocumentOfOthersThatWasSeen() throws IOException {
        enter("others.xml", usual().to(CUSTOMER).ubl());
        decide("--entry", "1", "--evidence-seen", "invoice");
        assertThat(boxes().get(3)).isEqualTo("0.00");
        assertThat(queries())
                .contains("S1/document-of-others/INV-1001", "E1/made-out-to-another")
                .contains("decide --entry 1 --state addressed=business");
    }

    /** What the file's reading and the entry ask is one question: either decision answers both. */
    @ParameterizedTest
    @CsvSource({"--entry, 1", "--query, S1/document-of-others/INV-1001"})
    void aDocumentOfOthersThatIsLeft(String what, String about) throws IOException {
        enter("others.xml", usual().to(CUSTOMER).ubl());
        decide(what, about, "--set-aside");
        assertThat(boxes().get(3)).isEqualTo("0.00");
        assertThat(queries()).contains("No query is open.");
        assertThat(run("close", "2026-09").code()).isZero();
    }

    @ParameterizedTest
    @CsvSource({"--entry, 1", "--query, S1/credit-below-nothing/CN-7"})
    void aCreditNoteOfLessThanNothingThatIsLeft(String what, String about) throws IOException {
        enter(
                "credit.xml",
                new MadeInvoice("CN-7").credit().line("Bowls", "-40.00", "S", "20").ubl());
        decide(what, about, "--set-aside");
        assertThat(boxes().get(3)).isEqualTo("0.00");
        assertThat(queries()).contains("No query is open.");
        assertThat(run("close", "2026-09").code()).isZero();
    }

    /** What was decided of the supplier is no answer about this document. */
    @Test
    void aDecisionOnTheSupplierIsNoAnswer() throws IOException {
        enter("invoice.xml", usual().with("BT-115", "151.00").ubl());
        decide("--party", "Fernmoor Pottery Ltd", "--evidence-seen", "invoice");
        assertThat(queries()).contains("S1/document-does-not-tie/INV-1001 BR-CO-16");
    }

    /** VAT Regulations 1995 reg 38: what a supplier's credit takes back is taken off box 4. */
    @Test
    void aCreditNoteOfLessThanNothing() throws IOException {
        enter(
                "credit.xml",
                new MadeInvoice("CN-7").credit().line("Bowls", "-40.00", "S", "20").ubl());
        assertThat(boxes().get(3)).isEqualTo("0.00");
        assertThat(queries()).contains("S1/credit-below-nothing/CN-7");
        enter(
                "sheet.csv",
                """
                date,kind,document,party,party_country,party_vat,net,vat,rate,evidence
                2026-07-20,purchase-credit,CN-7,Fernmoor Pottery Ltd,GB,GB000472729,40.00,8.00,20,invoice
                """);
        decide("--entry", "1", "--duplicate-of", "2");
        assertThat(boxes().get(3)).isEqualTo("-8.00");
        assertThat(queries()).isEqualTo("No query is open.\n");
    }

    @Test
    void aCreditNoteOfLessThanNothingThatCharges() throws IOException {
        enter(
                "credit.xml",
                new MadeInvoice("CN-7").credit().line("Bowls", "-40.00", "S", "20").ubl());
        decide("--entry", "1", "--evidence-seen", "invoice");
        assertThat(boxes().get(3)).isEqualTo("8.00");
        assertThat(queries()).isEqualTo("No query is open.\n");
    }

    /** Each answer that the question names: no reverse charge (VATA 1994 s.8) on either. */
    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"goods", "exempt", "service"})
    void goodsOrAServiceFromAbroad(String answer) throws IOException {
        enter(
                "abroad.xml",
                new MadeInvoice("A-3").from(IRISH).line("Thing", "30.00", "Z", "0").ubl());
        assertThat(boxes().get(0)).isEqualTo("6.00");
        switch (answer) {
            case "goods" -> {
                enter(
                        "sheet.csv",
                        """
                        date,kind,document,party,party_country,party_vat,net,vat,from,to,evidence
                        2026-07-20,purchase,A-3,Adverts Abroad,IE,IE6388047V,30.00,0,IE,GB,invoice
                        """);
                decide("--entry", "1", "--duplicate-of", "2");
            }
            case "exempt" -> decide("--entry", "1", "--treat-as", "no-vat-purchase");
            default -> decide("--query", "S1/goods-or-service/A-3", "--set-aside");
        }
        assertThat(boxes().get(0)).isEqualTo(answer.equals("service") ? "6.00" : "0.00");
        assertThat(boxes().get(6)).isEqualTo(answer.equals("goods") ? "0" : "30");
        assertThat(queries())
                .endsWith(
                        answer.equals("service")
                                ? "No query is open. 1 is set aside.\n"
                                : "No query is open.\n")
                .doesNotContain("  quarterfold decide");
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
                          Document INV-1001 seems to charge fees of 120.00, and fees of the same channel are claimed on its settlements too, such as entry 1. Input tax is claimed once, so the document is in no box, and what a closed return claimed on it is taken back. If it is for those fees: decide --entry 2 --duplicate-of 1. If it is for others: decide --entry 2 --treat-as uk-purchase.
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
                          Document INV-1001 for 120.00 and entry 1 seem to be an advance and the invoice for the whole, which charges the VAT of the advance again. Input tax is claimed once, so this one is in no box. If it does: decide --entry 1 --duplicate-of 2; where a closed return has claimed the advance, enter that as a purchase-credit and decide --entry 2 --treat-as uk-purchase. If the invoice leaves it out: decide --entry 2 --treat-as uk-purchase.
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
