package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import quarterfold.ledger.Line;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Particulars;
import quarterfold.ledger.RaisedQuery;
import quarterfold.money.Amount;

/** E-invoices to the entries they make: the same whether UBL or CII says it. */
class EInvoiceTest {
    private static final MadeInvoice.Party IRISH =
            new MadeInvoice.Party("Adverts Abroad", "IE", "IE6388047V");

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

    private static MadeInvoice usual() {
        return new MadeInvoice("INV-1001")
                .line("Bowls", "100.00", "S", "20")
                .line("Mugs", "50.00", "S", "20")
                .line("Books", "30.00", "Z", "0");
    }

    /** Enters the document in both syntaxes, and gives what both came to. */
    private List<String> entered(MadeInvoice invoice) throws IOException {
        ImportResult ubl = desk.enter("ubl.xml", invoice.ubl());
        assertThat(ubl.problems()).isEmpty();
        assertThat(ubl.layout()).isEqualTo("e-invoice");
        List<Line> lines = desk.lines();
        ImportResult cii = desk.enter("cii.xml", invoice.cii());
        assertThat(cii.problems()).isEmpty();
        List<Line> both = desk.lines();
        assertThat(both.subList(lines.size(), both.size())).isEqualTo(lines);
        assertThat(questions(2)).isEqualTo(questions(1));
        return lines.stream().map(EInvoiceTest::said).toList();
    }

    private List<String> questions(long source) {
        return desk.raised().stream()
                .filter(q -> q.source() == source)
                .map((RaisedQuery q) -> q.code() + "/" + q.about() + ": " + q.question())
                .toList();
    }

    /** What a line says, but for what nothing was said of. */
    private static String said(Line line) {
        return LineFields.of(line).entrySet().stream()
                .filter(f -> !f.getValue().isEmpty() && !f.getValue().equals("unstated"))
                .filter(f -> !f.getKey().equals("channel_collects"))
                .filter(f -> !f.getKey().equals("business_use"))
                .map(f -> f.getKey() + "=" + f.getValue())
                .collect(Collectors.joining(" | "));
    }

    @Test
    void aPurchaseMakesAnEntryForEachLineOfTheBreakdown() throws IOException {
        assertThat(
                        entered(
                                usual().allowance("10.00", "S", "20")
                                        .charge("5.00", "S", "20")
                                        .with("BT-72", "2026-07-17")
                                        .with("BT-10", "Till 4")
                                        .with("BT-13", "PO-7")
                                        .with("BT-73", "2026-07-01")
                                        .with("BT-74", "2026-07-31")
                                        .with("BT-22", "With thanks")))
                .containsExactly(
                        "row=1 | date=2026-07-17 | kind=purchase | currency=GBP | net=145.00 | vat=29.00 | rate=20 | document=INV-1001 | description=Bowls; Mugs | party=Fernmoor Pottery Ltd | party_country=GB | party_vat=GB000472729 | customer=consumer | evidence=invoice | sent=2026-07-17 | invoiced=2026-07-20 | due=2026-08-19 | addressed=business | notes=buyer reference: Till 4; order: PO-7; period: 2026-07-01 2026-07-31; note: With thanks; type: 380; VAT category: S 20%",
                        "row=2 | date=2026-07-17 | kind=purchase | currency=GBP | net=30.00 | vat=0.00 | rate=0 | document=INV-1001 | description=Books | party=Fernmoor Pottery Ltd | party_country=GB | party_vat=GB000472729 | customer=consumer | evidence=invoice | sent=2026-07-17 | invoiced=2026-07-20 | due=2026-08-19 | addressed=business | notes=buyer reference: Till 4; order: PO-7; period: 2026-07-01 2026-07-31; note: With thanks; type: 380; VAT category: Z 0%");
        assertThat(questions(1)).isEmpty();
    }

    @Test
    void aCreditNoteIsPositiveInTheFileAndTakesBack() throws IOException {
        assertThat(
                        entered(
                                new MadeInvoice("CN-7")
                                        .credit()
                                        .line("Bowls", "40.00", "S", "20")
                                        .with("BT-25", "INV-0900")
                                        .with("BT-26", "2026-06-30")))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=purchase-credit | currency=GBP | net=40.00 | vat=8.00 | rate=20 | document=CN-7 | description=Bowls | party=Fernmoor Pottery Ltd | party_country=GB | party_vat=GB000472729 | customer=consumer | evidence=invoice | invoiced=2026-07-20 | addressed=business | notes=preceding invoice: INV-0900 2026-06-30; type: 381; VAT category: S 20%");
    }

    private Particulars particulars(MadeInvoice invoice) throws IOException {
        entered(invoice);
        return desk.lines().get(0).particulars();
    }

    private static String advanced(Particulars stated) {
        return Stream.of(Particular.ADVANCE, Particular.PREPAID, Particular.FOLLOWS)
                .map(p -> stated.word(p).orElse("-"))
                .collect(Collectors.joining(" "));
    }

    /** UNTDID 1001: 386 is a prepayment invoice, 380 a commercial one. */
    @ParameterizedTest(name = "{0} paid {1} after {2}: {3}")
    @CsvSource({
        "386, '', '', yes - -",
        "386, 10.00, INV-0900, yes - -",
        "380, '', '', - - -",
        "380, 10.00, '', - 10.00 -",
        "380, 10.00, INV 09/00, - 10.00 INV09/00",
        "380, 0.00, 'INV-0900, part 2', - - INV-0900part2",
        "381, 10.00, INV-0900, - - -"
    })
    void advancesAndWhatWasPaidBefore(String type, String paid, String preceding, String stated)
            throws IOException {
        MadeInvoice invoice = usual().with("BT-3", type);
        if (!paid.isEmpty()) {
            invoice.with("BT-113", paid);
        }
        if (!preceding.isEmpty()) {
            invoice.with("BT-25", preceding);
        }
        assertThat(advanced(particulars(invoice))).isEqualTo(stated);
    }

    /** UNTDID 1001: 384, a corrected invoice; EN 16931-1, BT-25: the invoice it is about. */
    @ParameterizedTest(name = "{0} after {1}")
    @CsvSource({
        "384, INV-0900, yes INV-0900",
        "380, INV-0900, - INV-0900",
        "384, '', - -",
        "386, INV-0900, - -"
    })
    void aCorrectedInvoice(String type, String preceding, String stated) throws IOException {
        MadeInvoice invoice = usual().with("BT-3", type);
        if (!preceding.isEmpty()) {
            invoice.with("BT-25", preceding);
        }
        Particulars particulars = particulars(invoice);
        assertThat(
                        Stream.of(Particular.AMENDED, Particular.FOLLOWS)
                                .map(p -> particulars.word(p).orElse("-"))
                                .collect(Collectors.joining(" ")))
                .isEqualTo(stated);
    }

    /** What it takes off before VAT was taken off the invoice it corrects too. */
    @Test
    void aCorrectedInvoiceWithAnAllowance() throws IOException {
        MadeInvoice invoice =
                usual().with("BT-3", "384").with("BT-25", "INV-0900").allowance("10.00", "S", "20");
        assertThat(particulars(invoice).word(Particular.FOLLOWS)).hasValue("INV-0900");
    }

    /** A particular has 400 characters: seven numbers of 50 with commas, and a shorter one. */
    @Test
    void asManyDocumentsAsThereIsRoomFor() throws IOException {
        List<String> numbers =
                IntStream.rangeClosed(1, 9).mapToObj(n -> n + "-".repeat(49)).toList();
        List<String> named = new ArrayList<>(numbers);
        named.add("INV-0900");
        String fitting = String.join(",", numbers.subList(0, 7)) + ",INV-0900";
        MadeInvoice invoice = usual().with("BT-25", String.join("\n", named));
        assertThat(advanced(particulars(invoice))).isEqualTo("- - " + fitting);
        assertThat(desk.lines().get(0).notes())
                .isEqualTo(
                        named.stream()
                                        .map(n -> "preceding invoice: " + n + "; ")
                                        .collect(Collectors.joining())
                                + "preceding invoices that follows has no room for: 2; type: 380; VAT"
                                + " category: S 20%");
    }

    /** What takes an advance off before VAT does not charge its VAT again. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void anAdvanceTakenOffBeforeVat(boolean byALine) throws IOException {
        MadeInvoice invoice = usual().with("BT-25", "INV-0900");
        assertThat(
                        advanced(
                                particulars(
                                        byALine
                                                ? invoice.line("Advance", "-50.00", "S", "20")
                                                : invoice.allowance("50.00", "S", "20"))))
                .isEqualTo("- - -");
    }

    @Test
    void aNegativeInvoiceIsAReversal() throws IOException {
        assertThat(entered(new MadeInvoice("INV-1002").line("Bowls", "-40.00", "S", "20")))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=purchase | currency=GBP | net=-40.00 | vat=-8.00 | rate=20 | document=INV-1002 | description=Bowls | party=Fernmoor Pottery Ltd | party_country=GB | party_vat=GB000472729 | customer=consumer | evidence=invoice | invoiced=2026-07-20 | addressed=business | notes=type: 380; VAT category: S 20%");
    }

    @Test
    void aSaleOfTheBusiness() throws IOException {
        MadeInvoice.Party customer = new MadeInvoice.Party("Harbour Tea", "GB", "GB000480437");
        assertThat(entered(usual().from(MadeInvoice.BUSINESS).to(customer)))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=sale | currency=GBP | net=150.00 | vat=30.00 | rate=20 | document=INV-1001 | description=Bowls; Mugs | party=Harbour Tea | party_country=GB | customer=business | customer_vat=GB000480437 | invoiced=2026-07-20 | due=2026-08-19 | notes=type: 380; VAT category: S 20%",
                        "row=2 | date=2026-07-20 | kind=sale | currency=GBP | net=30.00 | vat=0.00 | rate=0 | document=INV-1001 | description=Books | party=Harbour Tea | party_country=GB | customer=business | customer_vat=GB000480437 | invoiced=2026-07-20 | due=2026-08-19 | notes=type: 380; VAT category: Z 0%");
        assertThat(questions(1)).isEmpty();
    }

    @Test
    void aCreditNoteOfTheBusinessToAConsumer() throws IOException {
        MadeInvoice.Party customer = new MadeInvoice.Party("A. Customer", "GB", "");
        assertThat(
                        entered(
                                new MadeInvoice("CN-8")
                                        .credit()
                                        .from(MadeInvoice.BUSINESS)
                                        .to(customer)
                                        .line("Bowls", "40.00", "S", "20")))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=sale-refund | currency=GBP | net=40.00 | vat=8.00 | rate=20 | document=CN-8 | description=Bowls | party=A. Customer | party_country=GB | customer=consumer | invoiced=2026-07-20 | notes=type: 381; VAT category: S 20%");
    }

    /** BT-25 says which sale is credited: what is paid back of an export follows it. */
    @Test
    void aCreditNoteOfTheBusinessNamesItsInvoice() throws IOException {
        MadeInvoice credit =
                new MadeInvoice("CN-9")
                        .credit()
                        .from(MadeInvoice.BUSINESS)
                        .to(new MadeInvoice.Party("A. Customer", "GB", ""))
                        .line("Bowls", "40.00", "S", "20")
                        .with("BT-25", "INV 0900");
        assertThat(advanced(particulars(credit))).isEqualTo("- - INV0900");
    }

    @Test
    void goodsSoldAbroad() throws IOException {
        MadeInvoice.Party customer = new MadeInvoice.Party("Harbour Tea", "US", "");
        assertThat(
                        entered(
                                new MadeInvoice("INV-9")
                                        .from(MadeInvoice.BUSINESS)
                                        .to(customer)
                                        .line("Bowls", "40.00", "G", "0")))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=sale | currency=GBP | net=40.00 | vat=0.00 | document=INV-9 | description=Bowls | party=Harbour Tea | party_country=US | to=US | customer=consumer | invoiced=2026-07-20 | due=2026-08-19 | notes=type: 380; VAT category: G 0% Export");
    }

    @Test
    void aServiceSoldAbroadIsOutsideTheScope() throws IOException {
        assertThat(
                        entered(
                                new MadeInvoice("INV-9")
                                        .from(MadeInvoice.BUSINESS)
                                        .to(IRISH)
                                        .line("Advice", "40.00", "AE", "0")))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=sale | currency=GBP | net=40.00 | vat=0.00 | rate=outside | document=INV-9 | description=Advice | party=Adverts Abroad | party_country=IE | customer=business | customer_vat=IE6388047V | invoiced=2026-07-20 | due=2026-08-19 | notes=type: 380; VAT category: AE 0% Reverse charge");
    }

    @Test
    void aServiceFromAbroadStatesNoRateOfHere() throws IOException {
        assertThat(
                        entered(
                                new MadeInvoice("INV-9")
                                        .from(IRISH)
                                        .line("Adverts", "30.00", "AE", "0")))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=expense | currency=GBP | net=30.00 | vat=0.00 | document=INV-9 | description=Adverts | party=Adverts Abroad | party_country=IE | party_vat=IE6388047V | customer=consumer | evidence=invoice | invoiced=2026-07-20 | due=2026-08-19 | addressed=business | notes=type: 380; VAT category: AE 0% Reverse charge");
        assertThat(questions(1)).isEmpty();
    }

    @Test
    void goodsFromAbroad() throws IOException {
        assertThat(entered(new MadeInvoice("INV-9").from(IRISH).line("Linen", "90.00", "G", "0")))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=purchase | currency=GBP | net=90.00 | vat=0.00 | document=INV-9 | description=Linen | party=Adverts Abroad | party_country=IE | party_vat=IE6388047V | customer=consumer | evidence=invoice | invoiced=2026-07-20 | due=2026-08-19 | addressed=business | notes=type: 380; VAT category: G 0% Export");
    }

    @Test
    void vatOfAnotherCountryIsPrintedButNoRateOfHere() throws IOException {
        assertThat(entered(new MadeInvoice("INV-9").from(IRISH).line("Linen", "90.00", "S", "23")))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=purchase | currency=GBP | net=90.00 | vat=20.70 | document=INV-9 | description=Linen | party=Adverts Abroad | party_country=IE | party_vat=IE6388047V | customer=consumer | evidence=invoice | invoiced=2026-07-20 | due=2026-08-19 | addressed=business | notes=type: 380; VAT category: S 23%");
    }

    @Test
    void anExemptChargeFromAbroadIsAsked() throws IOException {
        assertThat(entered(new MadeInvoice("INV-9").from(IRISH).line("Cover", "80.00", "E", "0")))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=expense | currency=GBP | net=80.00 | vat=0.00 | document=INV-9 | description=Cover | party=Adverts Abroad | party_country=IE | party_vat=IE6388047V | customer=consumer | evidence=invoice | invoiced=2026-07-20 | due=2026-08-19 | addressed=business | notes=type: 380; VAT category: E 0% Exempt supply");
        assertThat(questions(1))
                .containsExactly(
                        "goods-or-service/INV-9: invoice INV-9 of Adverts Abroad (IE6388047V), GBP 80.00, comes from IE and charges 80.00 in category E, which is zero-rated or exempt there. It is entered as a service from abroad, so the reverse charge applies. Was it goods, or is it exempt here too? For goods enter it as a purchase, and decide --duplicate-of that entry for each of these; if it is exempt here too, decide --treat-as no-vat-purchase for each of its entries; if it is a service that is taxed here, set this query aside.");
    }

    @Test
    void theCustomerAccountsForTheVatAtHome() throws IOException {
        assertThat(entered(new MadeInvoice("INV-9").line("Chips", "90.00", "AE", "0")))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=purchase | currency=GBP | net=90.00 | vat=0.00 | rate=reverse-charge | document=INV-9 | description=Chips | party=Fernmoor Pottery Ltd | party_country=GB | party_vat=GB000472729 | customer=consumer | evidence=invoice | invoiced=2026-07-20 | due=2026-08-19 | addressed=business | notes=type: 380; VAT category: AE 0% Reverse charge");
    }

    @Test
    void exemptAtHome() throws IOException {
        assertThat(entered(new MadeInvoice("INV-9").line("Cover", "80.00", "E", "0")))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=purchase | currency=GBP | net=80.00 | vat=0.00 | rate=exempt | document=INV-9 | description=Cover | party=Fernmoor Pottery Ltd | party_country=GB | party_vat=GB000472729 | customer=consumer | evidence=invoice | invoiced=2026-07-20 | due=2026-08-19 | addressed=business | notes=type: 380; VAT category: E 0% Exempt supply");
    }

    @Test
    void notSubjectToVatAndFoundByName() throws IOException {
        assertThat(
                        entered(
                                new MadeInvoice("INV-9")
                                        .from(new MadeInvoice.Party("Corner Shop", "GB", ""))
                                        .to(new MadeInvoice.Party("ALDER and WREN", "GB", ""))
                                        .line("Paper", "12.00", "O", "")))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=purchase | currency=GBP | net=12.00 | vat=0.00 | rate=outside | document=INV-9 | description=Paper | party=Corner Shop | party_country=GB | customer=consumer | evidence=invoice | invoiced=2026-07-20 | due=2026-08-19 | addressed=business | notes=type: 380; VAT category: O Not subject to VAT");
    }

    @Test
    void aStatedTaxPointStands() throws IOException {
        assertThat(entered(usual().with("BT-7", "2026-07-18").with("BT-72", "2026-07-17")))
                .containsExactly(
                        "row=1 | date=2026-07-18 | kind=purchase | currency=GBP | net=150.00 | vat=30.00 | rate=20 | document=INV-1001 | description=Bowls; Mugs | party=Fernmoor Pottery Ltd | party_country=GB | party_vat=GB000472729 | customer=consumer | evidence=invoice | due=2026-08-19 | addressed=business | notes=type: 380; VAT category: S 20%; issued: 2026-07-20; delivered: 2026-07-17",
                        "row=2 | date=2026-07-18 | kind=purchase | currency=GBP | net=30.00 | vat=0.00 | rate=0 | document=INV-1001 | description=Books | party=Fernmoor Pottery Ltd | party_country=GB | party_vat=GB000472729 | customer=consumer | evidence=invoice | due=2026-08-19 | addressed=business | notes=type: 380; VAT category: Z 0%; issued: 2026-07-20; delivered: 2026-07-17");
    }

    @Test
    void whatIsPaidInFullIsNotDue() throws IOException {
        assertThat(entered(usual().with("BT-113", "210.00")))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=purchase | currency=GBP | net=150.00 | vat=30.00 | rate=20 | document=INV-1001 | description=Bowls; Mugs | party=Fernmoor Pottery Ltd | party_country=GB | party_vat=GB000472729 | customer=consumer | evidence=invoice | invoiced=2026-07-20 | addressed=business | prepaid=210.00 | notes=type: 380; VAT category: S 20%",
                        "row=2 | date=2026-07-20 | kind=purchase | currency=GBP | net=30.00 | vat=0.00 | rate=0 | document=INV-1001 | description=Books | party=Fernmoor Pottery Ltd | party_country=GB | party_vat=GB000472729 | customer=consumer | evidence=invoice | invoiced=2026-07-20 | addressed=business | prepaid=210.00 | notes=type: 380; VAT category: Z 0%");
    }

    @Test
    void aSupplierInNorthernIreland() throws IOException {
        assertThat(
                        entered(
                                new MadeInvoice("INV-9")
                                        .from(
                                                new MadeInvoice.Party(
                                                        "Lagan Linen", "GB", "XI000472729"))
                                        .line("Linen", "90.00", "S", "20")))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=purchase | currency=GBP | net=90.00 | vat=18.00 | rate=20 | document=INV-9 | description=Linen | party=Lagan Linen | party_country=XI | party_vat=XI000472729 | customer=consumer | evidence=invoice | invoiced=2026-07-20 | due=2026-08-19 | addressed=business | notes=type: 380; VAT category: S 20%");
    }

    @Test
    void aDocumentOfOthersIsAsked() throws IOException {
        assertThat(
                        entered(
                                new MadeInvoice("INV-9")
                                        .to(
                                                new MadeInvoice.Party(
                                                        "Harbour Tea", "GB", "GB000480437"))
                                        .line("Bowls", "40.00", "S", "20")))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=purchase | currency=GBP | net=40.00 | vat=8.00 | rate=20 | document=INV-9 | description=Bowls | party=Fernmoor Pottery Ltd | party_country=GB | party_vat=GB000472729 | customer=consumer | evidence=invoice | invoiced=2026-07-20 | due=2026-08-19 | addressed=other | notes=type: 380; VAT category: S 20%");
        assertThat(questions(1))
                .containsExactly(
                        "document-of-others/INV-9: invoice INV-9 of Fernmoor Pottery Ltd (GB000472729), GBP 48.00, is made out to Harbour Tea (GB000480437), and neither is this business by VAT number or, where none is stated, by name. It is entered as a purchase made out to somebody else, whose VAT is not reclaimed. Whose is it? That it was seen does not answer that: if it is this business's all the same, such as under a name it trades in, decide --state addressed=business for each of its entries; if it is not, decide --disallow for them.");
    }

    @Test
    void aDocumentThatDoesNotTieIsNoEvidenceUntilItIsSeen() throws IOException {
        assertThat(
                        entered(
                                new MadeInvoice("INV-9")
                                        .line("Bowls", "40.00", "S", "20")
                                        .vat("S", "20", "8.02")
                                        .with("BT-112", "48.00")))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=purchase | currency=GBP | net=40.00 | vat=8.02 | rate=20 | document=INV-9 | description=Bowls | party=Fernmoor Pottery Ltd | party_country=GB | party_vat=GB000472729 | customer=consumer | invoiced=2026-07-20 | due=2026-08-19 | addressed=business | notes=type: 380; VAT category: S 20%");
        assertThat(questions(1))
                .containsExactly(
                        "document-does-not-tie/INV-9 BR-CO-15: invoice INV-9 of Fernmoor Pottery Ltd (GB000472729), GBP 48.00, breaks rule BR-CO-15 of EN 16931: the total with VAT (BT-112) is stated as 48.00; net and VAT come to 48.02. Its VAT is not reclaimed until a person says that the document was seen. Which figure is right? Ask the supplier.",
                        "document-does-not-tie/INV-9 BR-CO-16: invoice INV-9 of Fernmoor Pottery Ltd (GB000472729), GBP 48.00, breaks rule BR-CO-16 of EN 16931: the amount due (BT-115) is stated as 48.02; the total less what was paid plus the rounding comes to 48.00. Its VAT is not reclaimed until a person says that the document was seen. Which figure is right? Ask the supplier.",
                        "document-does-not-tie/INV-9 BR-CO-17: invoice INV-9 of Fernmoor Pottery Ltd (GB000472729), GBP 48.00, breaks rule BR-CO-17 of EN 16931: the VAT in category S 20% (BT-117) is stated as 8.02; 40.00 at 20% is 8.00, and rounding each of 1 line moves it by 0.01 at most. Its VAT is not reclaimed until a person says that the document was seen. Which figure is right? Ask the supplier.");
    }

    /**
     * One penny a line is how far rounding line by line may move the VAT; a penny more is asked.
     */
    @Test
    void vatMayDifferByAPennyALine() throws IOException {
        entered(usual().vat("S", "20", "30.02"));
        assertThat(questions(1)).isEmpty();
    }

    @Test
    void vatMayNotDifferByMoreThanAPennyALine() throws IOException {
        entered(usual().vat("S", "20", "29.97"));
        assertThat(questions(1))
                .containsExactly(
                        "document-does-not-tie/INV-1001 BR-CO-17: invoice INV-1001 of Fernmoor Pottery Ltd (GB000472729), GBP 209.97, breaks rule BR-CO-17 of EN 16931: the VAT in category S 20% (BT-117) is stated as 29.97; 150.00 at 20% is 30.00, and rounding each of 2 lines moves it by 0.02 at most. Its VAT is not reclaimed until a person says that the document was seen. Which figure is right? Ask the supplier.");
    }

    @Test
    void everyRuleNamesItsTwoFigures() throws IOException {
        entered(
                usual().allowance("10.00", "S", "20")
                        .charge("5.00", "S", "20")
                        .with("BT-106", "181.00")
                        .with("BT-107", "11.00")
                        .with("BT-108", "6.00")
                        .with("BT-109", "182.00")
                        .with("BT-110", "31.00")
                        .with("BT-112", "214.00")
                        .with("BT-115", "215.00")
                        .with("BT-116 S20", "146.00")
                        .vat("Z", "0", "1.00"));
        assertThat(questions(1))
                .containsExactly(
                        "document-does-not-tie/INV-1001 BR-CO-10: invoice INV-1001 of Fernmoor Pottery Ltd (GB000472729), GBP 214.00, breaks rule BR-CO-10 of EN 16931: the sum of the lines (BT-106) is stated as 181.00; the lines sum to 180.00. Its VAT is not reclaimed until a person says that the document was seen. Which figure is right? Ask the supplier.",
                        "document-does-not-tie/INV-1001 BR-CO-11: invoice INV-1001 of Fernmoor Pottery Ltd (GB000472729), GBP 214.00, breaks rule BR-CO-11 of EN 16931: the sum of the allowances (BT-107) is stated as 11.00; the allowances sum to 10.00. Its VAT is not reclaimed until a person says that the document was seen. Which figure is right? Ask the supplier.",
                        "document-does-not-tie/INV-1001 BR-CO-12: invoice INV-1001 of Fernmoor Pottery Ltd (GB000472729), GBP 214.00, breaks rule BR-CO-12 of EN 16931: the sum of the charges (BT-108) is stated as 6.00; the charges sum to 5.00. Its VAT is not reclaimed until a person says that the document was seen. Which figure is right? Ask the supplier.",
                        "document-does-not-tie/INV-1001 BR-CO-13: invoice INV-1001 of Fernmoor Pottery Ltd (GB000472729), GBP 214.00, breaks rule BR-CO-13 of EN 16931: the total without VAT (BT-109) is stated as 182.00; lines less allowances plus charges come to 176.00. Its VAT is not reclaimed until a person says that the document was seen. Which figure is right? Ask the supplier.",
                        "document-does-not-tie/INV-1001 BR-CO-14: invoice INV-1001 of Fernmoor Pottery Ltd (GB000472729), GBP 214.00, breaks rule BR-CO-14 of EN 16931: the total of VAT (BT-110) is stated as 31.00; the VAT breakdown sums to 30.00. Its VAT is not reclaimed until a person says that the document was seen. Which figure is right? Ask the supplier.",
                        "document-does-not-tie/INV-1001 BR-CO-15: invoice INV-1001 of Fernmoor Pottery Ltd (GB000472729), GBP 214.00, breaks rule BR-CO-15 of EN 16931: the total with VAT (BT-112) is stated as 214.00; net and VAT come to 213.00. Its VAT is not reclaimed until a person says that the document was seen. Which figure is right? Ask the supplier.",
                        "document-does-not-tie/INV-1001 BR-CO-16: invoice INV-1001 of Fernmoor Pottery Ltd (GB000472729), GBP 214.00, breaks rule BR-CO-16 of EN 16931: the amount due (BT-115) is stated as 215.00; the total less what was paid plus the rounding comes to 214.00. Its VAT is not reclaimed until a person says that the document was seen. Which figure is right? Ask the supplier.",
                        "document-does-not-tie/INV-1001 BR-S-08: invoice INV-1001 of Fernmoor Pottery Ltd (GB000472729), GBP 214.00, breaks rule BR-S-08 of EN 16931: the amount VAT is charged on in category S 20% (BT-116) is stated as 146.00; its lines less allowances plus charges come to 145.00. Its VAT is not reclaimed until a person says that the document was seen. Which figure is right? Ask the supplier.",
                        "document-does-not-tie/INV-1001 BR-CO-17: invoice INV-1001 of Fernmoor Pottery Ltd (GB000472729), GBP 214.00, breaks rule BR-CO-17 of EN 16931: the VAT in category S 20% (BT-117) is stated as 29.00; 146.00 at 20% is 29.20, and rounding each of 2 lines moves it by 0.02 at most. Its VAT is not reclaimed until a person says that the document was seen. Which figure is right? Ask the supplier.",
                        "document-does-not-tie/INV-1001 BR-Z-09: invoice INV-1001 of Fernmoor Pottery Ltd (GB000472729), GBP 214.00, breaks rule BR-Z-09 of EN 16931: the VAT in category Z (BT-117) is stated as 1.00; the category has a VAT of 0.00. Its VAT is not reclaimed until a person says that the document was seen. Which figure is right? Ask the supplier.");
    }

    @Test
    void aSaleThatDoesNotTieIsTaxedAsStated() throws IOException {
        MadeInvoice.Party customer = new MadeInvoice.Party("Harbour Tea", "GB", "GB000480437");
        entered(usual().from(MadeInvoice.BUSINESS).to(customer).with("BT-115", "211.00"));
        assertThat(questions(1))
                .containsExactly(
                        "document-does-not-tie/INV-1001 BR-CO-16: invoice INV-1001 of Alder & Wren (GB101747696), GBP 210.00, breaks rule BR-CO-16 of EN 16931: the amount due (BT-115) is stated as 211.00; the total less what was paid plus the rounding comes to 210.00. Its VAT is entered as the VAT breakdown states it. Which figure is right? Ask who made it out.");
    }

    @Test
    void aCreditThatDoesNotTieStillTakesFromTheClaim() throws IOException {
        assertThat(
                        entered(
                                new MadeInvoice("CN-7")
                                        .credit()
                                        .line("Bowls", "40.00", "S", "20")
                                        .with("BT-115", "49.00")))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=purchase-credit | currency=GBP | net=40.00 | vat=8.00 | rate=20 | document=CN-7 | description=Bowls | party=Fernmoor Pottery Ltd | party_country=GB | party_vat=GB000472729 | customer=consumer | evidence=invoice | invoiced=2026-07-20 | addressed=business | notes=type: 381; VAT category: S 20%");
        assertThat(questions(1))
                .containsExactly(
                        "document-does-not-tie/CN-7 BR-CO-16: credit note CN-7 of Fernmoor Pottery Ltd (GB000472729), GBP 48.00, breaks rule BR-CO-16 of EN 16931: the amount due (BT-115) is stated as 49.00; the total less what was paid plus the rounding comes to 48.00. It takes from the claim as the VAT breakdown states it. Which figure is right? Ask the supplier.");
    }

    /** It would add to the claim: VAT Regulations 1995 reg 29(2), evidence is held before. */
    @Test
    void aCreditNoteOfLessThanNothing() throws IOException {
        assertThat(entered(new MadeInvoice("CN-7").credit().line("Bowls", "-40.00", "S", "20")))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=purchase-credit | currency=GBP | net=-40.00 | vat=-8.00 | rate=20 | document=CN-7 | description=Bowls | party=Fernmoor Pottery Ltd | party_country=GB | party_vat=GB000472729 | customer=consumer | invoiced=2026-07-20 | addressed=business | notes=type: 381; VAT category: S 20%");
        assertThat(questions(1))
                .containsExactly(
                        "credit-below-nothing/CN-7: credit note CN-7 of Fernmoor Pottery Ltd (GB000472729), GBP -48.00, is a credit note of less than nothing, so it would add to the claim. Its VAT is not reclaimed until a person says that the document was seen. Does it charge 48.00? If it takes that back, enter it as a purchase-credit with positive amounts, and decide duplicate-of that entry for each of these.");
    }

    /** The business's own credit note of less than nothing adds to what is due: box 1. */
    @Test
    void aCreditNoteOfTheBusinessOfLessThanNothing() throws IOException {
        MadeInvoice.Party customer = new MadeInvoice.Party("Harbour Tea", "GB", "GB000480437");
        entered(
                new MadeInvoice("CN-8")
                        .credit()
                        .from(MadeInvoice.BUSINESS)
                        .to(customer)
                        .line("Bowls", "-40.00", "S", "20"));
        assertThat(questions(1)).isEmpty();
    }

    @Test
    void aDocumentWithoutLinesIsAsked() throws IOException {
        MadeInvoice without =
                new MadeInvoice("INV-9")
                        .with("BT-24", "urn:factur-x.eu:1p0:basicwl")
                        .charge("40.00", "S", "20");
        assertThat(entered(without))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=purchase | currency=GBP | net=40.00 | vat=8.00 | rate=20 | document=INV-9 | party=Fernmoor Pottery Ltd | party_country=GB | party_vat=GB000472729 | customer=consumer | invoiced=2026-07-20 | due=2026-08-19 | addressed=business | notes=type: 380; VAT category: S 20%");
        assertThat(questions(1))
                .containsExactly(
                        "document-not-whole/INV-9: invoice INV-9 of Fernmoor Pottery Ltd (GB000472729), GBP 48.00, has no lines (profile 'urn:factur-x.eu:1p0:basicwl'). It is no VAT invoice by itself: what was supplied, how much, and each price and rate are not shown (VAT Regulations 1995 reg 14(1)). Its VAT is not reclaimed until a person says that the document was seen. Is the document itself held?");
    }

    @Test
    void informationForAccountingIsNoInvoice() throws IOException {
        assertThat(entered(usual().with("BT-3", "751")).get(0))
                .isEqualTo(
                        "row=1 | date=2026-07-20 | kind=purchase | currency=GBP | net=150.00 | vat=30.00 | rate=20 | document=INV-1001 | description=Bowls; Mugs | party=Fernmoor Pottery Ltd | party_country=GB | party_vat=GB000472729 | customer=consumer | invoiced=2026-07-20 | due=2026-08-19 | addressed=business | notes=type: 751; VAT category: S 20%");
        assertThat(questions(1))
                .containsExactly(
                        "document-not-whole/INV-1001: invoice INV-1001 of Fernmoor Pottery Ltd (GB000472729), GBP 210.00, is information for accounting (type 751). It is no VAT invoice by itself: what was supplied, how much, and each price and rate are not shown (VAT Regulations 1995 reg 14(1)). Its VAT is not reclaimed until a person says that the document was seen. Is the document itself held?");
    }

    @Test
    void aSelfBilledInvoiceIsSuchEvidence() throws IOException {
        assertThat(entered(usual().with("BT-3", "389")).get(0))
                .contains("evidence=self-billed", "type: 389");
    }

    @Test
    void theTaxOfAnIslandIsNoVat() throws IOException {
        MadeInvoice.Party island = new MadeInvoice.Party("Costa Tiles", "ES", "ESB58378431");
        assertThat(entered(new MadeInvoice("INV-9").from(island).line("Tiles", "100.00", "L", "7")))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=purchase | currency=GBP | net=100.00 | vat=7.00 | document=INV-9 | description=Tiles | party=Costa Tiles | party_country=ES | party_vat=ESB58378431 | customer=consumer | evidence=invoice | invoiced=2026-07-20 | due=2026-08-19 | addressed=business | notes=type: 380; VAT category: L 7%");
        assertThat(questions(1))
                .containsExactly(
                        "document-tax-not-vat/INV-9: invoice INV-9 of Costa Tiles (ESB58378431), GBP 107.00, charges 7.00 of the tax of the Canary Islands (category L), which is no VAT. Is it a cost without VAT?");
    }

    /**
     * The figures of the published example: repository eInvoicing-EN16931 of ConnectingEurope,
     * ubl-tc434-example1.xml and CII_example1.xml. 183.23 at 6% is 10.99, 46.37 at 21% is 9.74;
     * together 229.60 and 20.73, 250.33.
     */
    @Test
    void publishedBreakdown() throws IOException {
        MadeInvoice made =
                new MadeInvoice("INV-9")
                        .with("BT-5", "EUR")
                        .with("BT-106", "229.60")
                        .with("BT-109", "229.60")
                        .with("BT-110", "20.73")
                        .with("BT-112", "250.33")
                        .with("BT-115", "250.33")
                        .from(new MadeInvoice.Party("Linnet Foods", "NL", "NL809561074B01"))
                        .line("Cheese", "183.23", "S", "6")
                        .line("Crates", "46.37", "S", "21");
        entered(made);
        assertThat(desk.lines().subList(0, 2))
                .extracting(line -> line.amounts().net().orElseThrow().toString())
                .containsExactly("183.23", "46.37");
        assertThat(desk.lines().subList(0, 2))
                .extracting(line -> line.amounts().vat().orElseThrow().toString())
                .containsExactly("10.99", "9.74");
        assertThat(
                        desk.lines().subList(0, 2).stream()
                                .map(Line::signedMoney)
                                .reduce(Amount.ZERO, Amount::plus))
                .hasToString("-250.33");
        assertThat(questions(1)).isEmpty();
        assertThat(PublishedRules.broken(made.ubl())).isEmpty();
        assertThat(PublishedRules.broken(made.cii())).isEmpty();
    }

    /** VAT Regulations 1995 reg 14(1)(l): the total of VAT in sterling; it is not converted. */
    @Test
    void vatStatedInSterlingIsSharedOverTheBreakdown() throws IOException {
        MadeInvoice made =
                new MadeInvoice("INV-9")
                        .with("BT-5", "EUR")
                        .with("BT-6", "GBP")
                        .with("BT-111", "25.61")
                        .line("Bowls", "100.00", "S", "20")
                        .line("Seats", "200.00", "S", "5")
                        .line("Books", "30.00", "Z", "0");
        assertThat(entered(made))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=purchase | currency=EUR | net=100.00 | vat=20.00 | rate=20 | document=INV-9 | description=Bowls | party=Fernmoor Pottery Ltd | party_country=GB | party_vat=GB000472729 | customer=consumer | evidence=invoice | invoiced=2026-07-20 | due=2026-08-19 | sterling_vat=17.07 | addressed=business | notes=type: 380; VAT category: S 20%; total of VAT in GBP: 25.61",
                        "row=2 | date=2026-07-20 | kind=purchase | currency=EUR | net=200.00 | vat=10.00 | rate=5 | document=INV-9 | description=Seats | party=Fernmoor Pottery Ltd | party_country=GB | party_vat=GB000472729 | customer=consumer | evidence=invoice | invoiced=2026-07-20 | due=2026-08-19 | sterling_vat=8.54 | addressed=business | notes=type: 380; VAT category: S 5%; total of VAT in GBP: 25.61",
                        "row=3 | date=2026-07-20 | kind=purchase | currency=EUR | net=30.00 | vat=0.00 | rate=0 | document=INV-9 | description=Books | party=Fernmoor Pottery Ltd | party_country=GB | party_vat=GB000472729 | customer=consumer | evidence=invoice | invoiced=2026-07-20 | due=2026-08-19 | addressed=business | notes=type: 380; VAT category: Z 0%; total of VAT in GBP: 25.61");
    }

    @Test
    void vatStatedInAnotherCurrencyIsANote() throws IOException {
        MadeInvoice made =
                new MadeInvoice("INV-9")
                        .with("BT-6", "EUR")
                        .with("BT-111", "23.40")
                        .line("Bowls", "100.00", "S", "20");
        assertThat(entered(made))
                .containsExactly(
                        "row=1 | date=2026-07-20 | kind=purchase | currency=GBP | net=100.00 | vat=20.00 | rate=20 | document=INV-9 | description=Bowls | party=Fernmoor Pottery Ltd | party_country=GB | party_vat=GB000472729 | customer=consumer | evidence=invoice | invoiced=2026-07-20 | due=2026-08-19 | addressed=business | notes=type: 380; VAT category: S 20%; total of VAT in EUR: 23.40");
    }

    @Test
    void longNotesAreCutAndControlsAreSpaces() throws IOException {
        MadeInvoice made =
                new MadeInvoice("INV\u0085\n9")
                        .with("BT-22", "\uD83E\uDD63".repeat(301))
                        .line("Bowls", "100.00", "S", "20");
        entered(made);
        assertThat(desk.lines().get(0).document()).isEqualTo("INV 9");
        assertThat(desk.lines().get(0).notes())
                .isEqualTo(
                        "note: "
                                + "\uD83E\uDD63".repeat(300)
                                + "\u2026; type: 380; VAT category: S 20%");
    }
}
