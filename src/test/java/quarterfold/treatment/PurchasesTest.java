package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;

/** Purchases, expenses and fees: what is reclaimed, what is not and why, and the reverse charge. */
class PurchasesTest {

    private static SampleLine home(String kind) {
        return SampleLine.of(kind).party("Example supplier", "GB", "GB101747696").rate("20");
    }

    private static SampleLine invoice(String kind) {
        return home(kind).evidence("invoice").printed("100", "20");
    }

    private static SampleLine overseas(String kind) {
        return SampleLine.of(kind)
                .party("Example platform", "IE", "IE1234567T")
                .net("800")
                .gross("800")
                .evidence("invoice");
    }

    static Stream<Arguments> athome() {
        return Stream.of(
                Arguments.of(
                        "with its invoice",
                        invoice("purchase").category("stock"),
                        "uk-purchase U15a 20%: 100.00 + 20.00, claim 20.00; 4=20.00 7=100.00; asks nothing",
                        "VATA 1994 ss.24 to 26; VAT Regulations 1995 reg 29"),
                Arguments.of(
                        "a fee billed from here, by its document",
                        invoice("fee").category("channel-fee"),
                        "uk-purchase U15a 20%: 100.00 + 20.00, claim 20.00; 4=20.00 7=100.00; asks nothing",
                        "VAT Regulations 1995 reg 29(2)"),
                Arguments.of(
                        "a supplier's credit",
                        invoice("purchase-credit"),
                        "uk-purchase-credit U15b 20%: 100.00 + 20.00, claim 20.00; 4=-20.00 7=-100.00; asks nothing",
                        "VAT Regulations 1995 reg 38(4)(b): a minus in box 4"),
                Arguments.of(
                        "the gross and a rate on a simplified invoice",
                        home("expense").gross("120").evidence("simplified"),
                        "uk-purchase U15a 20%: 100.00 + 20.00, claim 20.00; 4=20.00 7=100.00; asks nothing",
                        "VAT Regulations 1995 reg 16A: it shows the total and the rate"),
                Arguments.of(
                        "self-billed",
                        home("purchase").printed("100", "20").evidence("self-billed"),
                        "uk-purchase U15a 20%: 100.00 + 20.00, claim 20.00; 4=20.00 7=100.00; asks nothing",
                        "HMRC manual VIT31000"),
                Arguments.of(
                        "VAT printed, no rate stated",
                        invoice("purchase").rate(""),
                        "uk-purchase U15a no rate: 100.00 + 20.00, claim 20.00; 4=20.00 7=100.00; asks nothing",
                        "taken as printed: VATREC12010"),
                Arguments.of(
                        "zero-rated",
                        home("purchase").gross("50").rate("0").evidence("invoice"),
                        "no-vat-purchase U02a no rate: 50.00 + 0.00, claim 0.00; 7=50.00; asks nothing",
                        "Isle of Man return help: box 7 takes zero-rated and exempt inputs"),
                Arguments.of(
                        "exempt postage",
                        home("expense").gross("150").rate("exempt").evidence("invoice"),
                        "no-vat-purchase U02a no rate: 150.00 + 0.00, claim 0.00; 7=150.00; asks nothing",
                        "VATA 1994 s.31; T-106"),
                Arguments.of(
                        "exempt, credited",
                        home("expense-credit").gross("150").rate("exempt").evidence("invoice"),
                        "no-vat-purchase-credit U02b no rate: 150.00 + 0.00, claim 0.00; 7=-150.00; asks nothing",
                        "VAT Regulations 1995 reg 38(4)(b)"),
                Arguments.of(
                        "street parking, outside the scope",
                        home("expense").gross("4").rate("outside"),
                        "outside-purchase R07 no rate: 4.00 + 0.00, claim 0.00; no box; asks nothing",
                        "VATA 1994 s.4"),
                Arguments.of(
                        "a supplier who is not registered",
                        SampleLine.of("purchase")
                                .gross("100")
                                .party("A neighbour", "GB", "")
                                .evidence("invoice"),
                        "unregistered-supplier U03a no rate: 100.00 + 0.00, claim 0.00; 7=100.00; asks nothing",
                        "VATA 1994 s.24(1); HMRC manual VAEC9670"),
                Arguments.of(
                        "client entertaining",
                        invoice("expense").category("client-entertaining"),
                        "blocked U05a 20%: 100.00 + 20.00, claim 0.00; 7=100.00; asks nothing",
                        "VAT (Input Tax) Order 1992 art 5; VIT43300"),
                Arguments.of(
                        "client entertaining, credited",
                        invoice("expense-credit").category("client-entertaining"),
                        "blocked-credit U05b 20%: 100.00 + 20.00, claim 0.00; 7=-100.00; asks nothing",
                        "VAT Regulations 1995 reg 38(4)(b)"),
                Arguments.of(
                        "T-402, a car on lease: half",
                        home("expense")
                                .printed("300", "60")
                                .evidence("invoice")
                                .category("car-hire"),
                        "part-blocked U14a 20%: 300.00 + 60.00, claim 30.00; 4=30.00 7=300.00; asks nothing",
                        "VATGPB4740; VIT50000"),
                Arguments.of(
                        "T-402, a car hired for eight days: all",
                        home("expense")
                                .printed("200", "40")
                                .evidence("invoice")
                                .category("car-hire-short"),
                        "uk-purchase U15a 20%: 200.00 + 40.00, claim 40.00; 4=40.00 7=200.00; asks nothing",
                        "VATGPB4740: ten days or fewer for one trip"),
                Arguments.of(
                        "a phone used half for the business",
                        invoice("expense").category("phone").businessUse("50"),
                        "uk-purchase U15a 20%: 100.00 + 20.00, claim 10.00; 4=10.00 7=100.00; asks nothing",
                        "gov.uk, Reclaiming VAT, the mobile phone example"),
                Arguments.of(
                        "a fifth of the home is the office",
                        invoice("expense").category("home-office").businessUse("20"),
                        "uk-purchase U15a 20%: 100.00 + 20.00, claim 4.00; 4=4.00 7=100.00; asks nothing",
                        "gov.uk, Reclaiming VAT, the home office example"),
                Arguments.of(
                        "half of a half-blocked car",
                        invoice("expense").category("car-hire").businessUse("50"),
                        "part-blocked U14a 20%: 100.00 + 20.00, claim 5.00; 4=5.00 7=100.00; asks nothing",
                        "VIT50000; VATA 1994 s.24(5)"),
                Arguments.of(
                        "nothing held",
                        home("expense").gross("120").evidence("missing"),
                        "unclaimed U07a 20%: 100.00 + 20.00, claim 0.00; 7=100.00; asks evidence-missing",
                        "VAT Regulations 1995 reg 29(2)"),
                Arguments.of(
                        "nothing said of a document",
                        home("expense").printed("100", "20"),
                        "unclaimed U07a 20%: 100.00 + 20.00, claim 0.00; 7=100.00; asks evidence-missing",
                        "VAT Regulations 1995 reg 29(2)"),
                Arguments.of(
                        "nothing held, credited",
                        home("expense-credit").gross("120").evidence("missing"),
                        "unclaimed-credit U07b 20%: 100.00 + 20.00, claim 0.00; 7=-100.00; asks credit-unevidenced",
                        "VAT Regulations 1995 reg 38(4)(b): asked, since what was reclaimed must be taken away"),
                Arguments.of(
                        "a category that is in no table",
                        invoice("expense").category("helicopter"),
                        "unclaimed U10a 20%: 100.00 + 20.00, claim 0.00; 7=100.00; asks category-unknown",
                        "VAT (Input Tax) Order 1992"),
                Arguments.of(
                        "T-410, the supplier's number fails",
                        SampleLine.of("purchase")
                                .printed("200", "40")
                                .rate("20")
                                .party("Example supplier", "GB", "GB123456789")
                                .evidence("invoice"),
                        "unclaimed U11a 20%: 200.00 + 40.00, claim 0.00; 7=200.00; asks supplier-number-fails",
                        "HMRC manuals VAEC9630 and VAEC9670"),
                Arguments.of(
                        "VAT charged, no number stated",
                        SampleLine.of("purchase")
                                .printed("200", "40")
                                .rate("20")
                                .party("Example supplier", "GB", "")
                                .evidence("invoice"),
                        "unclaimed U12a 20%: 200.00 + 40.00, claim 0.00; 7=200.00; asks supplier-number-missing",
                        "VAT Regulations 1995 reg 14(1)"),
                Arguments.of(
                        "neither VAT nor rate stated",
                        home("expense").gross("120").rate("").evidence("invoice"),
                        "unclaimed U13a no rate: 120.00 + 0.00, claim 0.00; 7=120.00; asks vat-not-stated",
                        "VAT Regulations 1995 reg 16A"),
                Arguments.of(
                        "T-206, a nought printed at a rate",
                        home("purchase").printed("100", "0").evidence("invoice"),
                        "unclaimed U01a no rate: 100.00 + 0.00, claim 0.00; 7=100.00; asks vat-nil-at-rate",
                        "VAT Notice 700 para 17.5.2: never nil on a taxable line"),
                Arguments.of(
                        "goods bought and kept abroad",
                        SampleLine.of("purchase")
                                .gross("100")
                                .party("Werk", "DE", "")
                                .goods("DE", "DE"),
                        "goods-bought-abroad G06 no rate: 100.00 + 0.00, claim 0.00; 7=100.00; asks nothing",
                        "VATA 1994 s.7(2); VATPOSG3300"));
    }

    static Stream<Arguments> fromAbroad() {
        return Stream.of(
                Arguments.of(
                        "T-106, advertising from abroad",
                        overseas("expense").category("advertising"),
                        "reverse-charge R10 20%: 800.00 + 160.00, claim 160.00; 1=160.00 4=160.00 6=800.00 7=800.00; asks nothing",
                        "VATA 1994 ss.7A and 8; VAT Notice 741A section 5"),
                Arguments.of(
                        "T-111, of which 60% may be deducted",
                        overseas("expense").net("100").gross("100").businessUse("60"),
                        "reverse-charge R10 20%: 100.00 + 20.00, claim 12.00; 1=20.00 4=12.00 6=100.00 7=100.00; asks nothing",
                        "VATA 1994 s.8"),
                Arguments.of(
                        "a fee billed from abroad, by its document",
                        overseas("fee").category("channel-fee"),
                        "reverse-charge R10 20%: 800.00 + 160.00, claim 160.00; 1=160.00 4=160.00 6=800.00 7=800.00; asks nothing",
                        "VATA 1994 s.8"),
                Arguments.of(
                        "a credit for it",
                        overseas("fee-refund").category("channel-fee"),
                        "reverse-charge-credit R11 20%: 800.00 + 160.00, claim 160.00; 1=-160.00 4=-160.00 6=-800.00 7=-800.00; asks nothing",
                        "VAT Regulations 1995 reg 38"),
                Arguments.of(
                        "its document missing",
                        overseas("expense").evidence("missing"),
                        "reverse-charge-unevidenced R08 20%: 800.00 + 160.00, claim 0.00; 1=160.00 6=800.00 7=800.00; asks evidence-missing",
                        "VATA 1994 s.8; VAT Regulations 1995 reg 29(2)"),
                Arguments.of(
                        "blocked",
                        overseas("expense").category("client-entertaining"),
                        "reverse-charge-blocked R09 20%: 800.00 + 160.00, claim 0.00; 1=160.00 6=800.00 7=800.00; asks nothing",
                        "VAT (Input Tax) Order 1992"),
                Arguments.of(
                        "exempt there as here",
                        overseas("expense").rate("exempt"),
                        "no-vat-purchase R05 no rate: 800.00 + 0.00, claim 0.00; 7=800.00; asks nothing",
                        "VATA 1994 s.8(1)"),
                Arguments.of(
                        "a foreign tax on an expense",
                        overseas("expense").printed("100", "23").gross("123"),
                        "undecided R01 no rate: 100.00 + 0.00, claim 0.00; no box; asks foreign-vat-charged",
                        "VATA 1994 s.24(1): only VAT charged under the Act"),
                Arguments.of(
                        "a foreign tax on a fee",
                        overseas("fee").printed("100", "23").gross("123"),
                        "reverse-charge R02 20%: 100.00 + 20.00, claim 20.00; 1=20.00 4=20.00 6=100.00 7=100.00; asks foreign-vat-charged",
                        "VATA 1994 ss.7A, 8 and 24(1)"),
                Arguments.of(
                        "a foreign tax on a fee's credit",
                        overseas("fee-refund").printed("100", "23").gross("123"),
                        "reverse-charge-credit R03 20%: 100.00 + 20.00, claim 20.00; 1=-20.00 4=-20.00 6=-100.00 7=-100.00; asks foreign-vat-charged",
                        "VATA 1994 s.8; VAT Regulations 1995 reg 38"),
                Arguments.of(
                        "UK VAT on a bill from a supplier abroad who is registered here",
                        SampleLine.of("fee")
                                .printed("100", "20")
                                .rate("20")
                                .party("Example platform", "LU", "GB101747696")
                                .evidence("invoice"),
                        "uk-purchase U15a 20%: 100.00 + 20.00, claim 20.00; 4=20.00 7=100.00; asks nothing",
                        "decided by the document: VATA 1994 s.24(1)"),
                Arguments.of(
                        "a hotel abroad",
                        overseas("expense").category("travel"),
                        "undecided R04 no rate: 800.00 + 0.00, claim 0.00; no box; asks place-of-supply",
                        "VATA 1994 s.7A and Sch 4A"),
                Arguments.of(
                        "a fee of nobody knows whom",
                        SampleLine.of("fee").gross("30").evidence("invoice"),
                        "undecided R12 no rate: 30.00 + 0.00, claim 0.00; no box; asks supplier-country-missing",
                        "VATA 1994 ss.7A and 8"),
                Arguments.of(
                        "a fee on a settlement",
                        SampleLine.of("fee").gross("30").settlement("QL-0001"),
                        "fee-on-settlement F01 no rate: 30.00 + 0.00, claim 0.00; no box; asks nothing",
                        "VAT Regulations 1995 reg 29(2): the invoice is the evidence"),
                Arguments.of(
                        "imported goods' invoice: the value comes with the import entry",
                        SampleLine.of("purchase").gross("5000").party("Factory", "CN", ""),
                        "imported-goods-invoice G03 no rate: 5000.00 + 0.00, claim 0.00; no box; asks nothing",
                        "gov.uk, Complete your VAT Return to account for import VAT: once in box 7"),
                Arguments.of(
                        "goods from abroad with United Kingdom VAT charged",
                        SampleLine.of("purchase")
                                .printed("100", "20")
                                .party("Factory", "CN", "GB101747696"),
                        "undecided G10 no rate: 100.00 + 0.00, claim 0.00; no box; asks uk-vat-on-goods-from-abroad",
                        "VATA 1994 s.7: goods here when sold, or a small consignment"),
                Arguments.of(
                        "the same goods, here when they were sold",
                        SampleLine.of("purchase")
                                .printed("100", "20")
                                .goods("GB", "GB")
                                .evidence("invoice")
                                .party("Factory", "CN", "GB101747696"),
                        "uk-purchase U15a no rate: 100.00 + 20.00, claim 20.00; 4=20.00 7=100.00; asks nothing",
                        "VATA 1994 s.24(1)"),
                Arguments.of(
                        "goods from abroad with another tax charged",
                        SampleLine.of("purchase")
                                .printed("100", "19")
                                .party("Factory", "DE", "DE123456788"),
                        "undecided G11 no rate: 100.00 + 0.00, claim 0.00; no box; asks foreign-vat-charged",
                        "VATA 1994 s.24(1): only VAT charged under the Act is input tax"));
    }

    @ParameterizedTest(name = "{0} [{3}]")
    @MethodSource({"athome", "fromAbroad"})
    void purchases(String what, SampleLine line, String told, String source) {
        assertThat(Treating.gb().told(line)).as("%s [%s]", what, source).isEqualTo(told);
    }

    /** What sources leave open about box 7, as the book may choose it. */
    @Test
    void boxSevenByChoice() {
        Treating book =
                Treating.of(
                        SampleSettings.choosing(
                                Map.of(
                                        "unregistered-supplier-in-box-7", "no",
                                        "blocked-in-box-7", "no",
                                        "import-value-from", "supplier-invoice")));
        assertThat(
                        book.told(
                                SampleLine.of("purchase")
                                        .gross("100")
                                        .party("A neighbour", "GB", "")
                                        .evidence("invoice")))
                .isEqualTo(
                        "unregistered-supplier-outside-boxes U04a no rate: 100.00 + 0.00, claim"
                                + " 0.00; no box; asks nothing");
        assertThat(book.told(invoice("expense").category("client-entertaining")))
                .isEqualTo(
                        "blocked-outside-boxes U06a 20%: 100.00 + 20.00, claim 0.00; no box; asks"
                                + " nothing");
        assertThat(book.told(SampleLine.of("purchase").gross("5000").party("Factory", "CN", "")))
                .isEqualTo(
                        "imported-goods-in-box-7 G04 no rate: 5000.00 + 0.00, claim 0.00; 7=5000.00;"
                                + " asks nothing");
        assertThat(
                        book.told(
                                SampleLine.of("import-vat-paid")
                                        .printed("5000", "1000")
                                        .evidence("import-certificate")))
                .isEqualTo(
                        "import-paid-value-elsewhere I02 20%: 5000.00 + 1000.00, claim 1000.00;"
                                + " 4=1000.00; asks nothing");
        assertThat(
                        book.told(
                                SampleLine.of("import-vat-postponed")
                                        .printed("5000", "1000")
                                        .evidence("postponed-statement")))
                .isEqualTo(
                        "import-postponed-value-elsewhere I05 20%: 5000.00 + 1000.00, claim 1000.00;"
                                + " 1=1000.00 4=1000.00; asks nothing");
    }

    /** T-107: VATA 1994 Sch 9ZA since 1 January 2021. */
    @Test
    void goodsBroughtIntoNorthernIreland() {
        Treating ni = Treating.of(SampleSettings.established("XI", "XI"));
        SampleLine goods =
                SampleLine.of("purchase")
                        .net("10200")
                        .gross("10200")
                        .party("Werk", "DE", "DE123456788")
                        .evidence("invoice");
        assertThat(ni.told(goods.on("2021-01-01")))
                .isEqualTo(
                        "ni-acquisition G01 20%: 10200.00 + 2040.00, claim 2040.00; 2=2040.00"
                                + " 4=2040.00 7=10200.00 9=10200.00; asks nothing");
        assertThat(ni.told(goods.on("2020-12-31")))
                .isEqualTo(
                        "undecided G08 no rate: 10200.00 + 0.00, claim 0.00; no box; asks"
                                + " eu-before-2021");
        assertThat(
                        ni.told(
                                SampleLine.of("purchase-credit")
                                        .net("200")
                                        .party("Werk", "DE", "DE123456788")
                                        .evidence("invoice")))
                .isEqualTo(
                        "ni-acquisition-credit G02 20%: 200.00 + 40.00, claim 40.00; 2=-40.00"
                                + " 4=-40.00 7=-200.00 9=-200.00; asks nothing");
    }

    /** T-403: VAT Regulations 1995 reg 16A, consideration up to 250; 100 before 2004. */
    @ParameterizedTest(name = "simplified invoice of {2} on {0}: {3}")
    @CsvSource({
        "2026-08-01, 20, 250.00, uk-purchase",
        "2026-08-01, 20, 250.01, unclaimed",
        "2026-08-01, 20, -250.00, uk-purchase",
        "2026-08-01, 20, -250.01, unclaimed",
        "2003-12-31, 17.5, 100.00, uk-purchase",
        "2003-12-31, 17.5, 100.01, unclaimed",
        "2004-01-01, 17.5, 100.01, uk-purchase"
    })
    void simplifiedInvoiceLimit(String day, String rate, String gross, String treatment) {
        Treated treated =
                Treating.gb()
                        .one(
                                home("expense")
                                        .rate(rate)
                                        .gross(gross)
                                        .evidence("simplified")
                                        .on(day));
        assertThat(treated.treatment()).isEqualTo(treatment);
        assertThat(treated.claim().isZero()).isEqualTo(treatment.equals("unclaimed"));
    }

    /** Reg 16A counts what is paid, VAT included, also where only net and rate are printed. */
    @ParameterizedTest(name = "simplified invoice of {0} and VAT on top: {1}")
    @CsvSource({"208.33, uk-purchase", "208.34, unclaimed", "-208.34, unclaimed"})
    void simplifiedInvoiceLimitCountsTheVat(String net, String treatment) {
        assertThat(
                        Treating.gb()
                                .one(home("expense").rate("20").net(net).evidence("simplified"))
                                .treatment())
                .isEqualTo(treatment);
    }

    /**
     * VATA 1994 s.8(2)(a), HMRC manual VATPOSS14200: the reverse charge is for a recipient who
     * belongs in the United Kingdom.
     */
    @Test
    void noReverseChargeForABusinessThatBelongsAbroad() {
        Treating overseas = Treating.of(SampleSettings.established("US", "GB"));
        assertThat(
                        overseas.told(
                                SampleLine.of("fee")
                                        .gross("800")
                                        .party("Werbung", "DE", "")
                                        .evidence("invoice")))
                .isEqualTo(
                        "outside-purchase R20 no rate: 800.00 + 0.00, claim 0.00; no box; asks"
                                + " nothing");
        assertThat(
                        overseas.told(
                                SampleLine.of("fee")
                                        .printed("800", "152")
                                        .party("Werbung", "DE", "DE123456788")
                                        .evidence("invoice")))
                .isEqualTo(
                        "outside-purchase R21 no rate: 800.00 + 0.00, claim 0.00; no box; asks"
                                + " foreign-vat-charged");
    }

    /** T-404: VAT Notice 700 para 19.7.5, up to 25 with VAT, for four small costs. */
    @Test
    void purchasesWithoutADocument() {
        SampleLine parking =
                SampleLine.of("expense")
                        .rate("20")
                        .party("Example car park", "GB", "")
                        .category("parking-off-street")
                        .evidence("none-needed");
        assertThat(Treating.gb().told(parking.gross("25.00")))
                .isEqualTo(
                        "uk-purchase U15a 20%: 20.8333 + 4.1667, claim 4.1667; 4=4.1667 7=20.8333;"
                                + " asks nothing");
        assertThat(Treating.gb().told(parking.gross("25.01")))
                .isEqualTo(
                        "unclaimed U16a 20%: 20.8417 + 4.1683, claim 0.00; 7=20.8417; asks"
                                + " document-needed");
        assertThat(Treating.gb().told(parking.gross("24").category("postage")))
                .isEqualTo(
                        "unclaimed U09a 20%: 20.00 + 4.00, claim 0.00; 7=20.00; asks"
                                + " evidence-not-for-category");
    }

    /** VATREC12010: a penny a document either way is lawful; more is a question, VAEC0180. */
    @ParameterizedTest(name = "{0} printed on 19.99: asks {1}")
    @CsvSource({
        "3.98, vat-differs",
        "3.99, nothing",
        "4.00, nothing",
        "3.988, nothing",
        "3.9879, vat-differs",
        "4.008, nothing"
    })
    void printedVatIsTakenAsPrinted(String printed, String asks) {
        assertThat(
                        Treating.gb()
                                .told(
                                        home("purchase")
                                                .evidence("invoice")
                                                .printed("19.99", printed)))
                .startsWith("uk-purchase U15a 20%: 19.99 + " + printed + ", claim " + printed)
                .endsWith("asks " + asks);
    }

    /**
     * HMRC manual VAEC0180: VAT charged beyond what is due is no input tax. The value printed stays
     * in box 7.
     */
    @ParameterizedTest(name = "{0} printed on 19.99")
    @ValueSource(strings = {"4.0081", "4.20"})
    void overchargedVatIsReclaimedAsFarAsItIsDue(String printed) {
        assertThat(
                        Treating.gb()
                                .told(
                                        home("purchase")
                                                .evidence("invoice")
                                                .printed("19.99", printed)))
                .isEqualTo(
                        "uk-purchase U15a 20%: 19.99 + "
                                + printed
                                + ", claim 4.00; 4=4.00 7=19.99; asks vat-overcharged");
        assertThat(
                        Treating.gb()
                                .told(
                                        home("purchase-credit")
                                                .evidence("invoice")
                                                .printed("-19.99", "-" + printed)))
                .endsWith("claim -4.00; 4=4.00 7=19.99; asks vat-overcharged");
    }

    /** VAT on goods that by their document have none is no input tax until a person has looked. */
    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"0", "exempt", "outside"})
    void vatPrintedAtNought(String rate) {
        assertThat(
                        Treating.gb()
                                .told(
                                        home("purchase")
                                                .rate(rate)
                                                .evidence("invoice")
                                                .printed("100", "20")))
                .isEqualTo(
                        "unclaimed U17a no rate: 100.00 + 0.00, claim 0.00; 7=100.00; asks"
                                + " vat-at-no-rate");
    }

    /** VATA 1994 s.24(1): VAT is charged at no rate above the standard one. */
    @Test
    void vatPrintedWithoutARate() {
        SampleLine bill = home("purchase").rate("").evidence("invoice");
        assertThat(Treating.gb().told(bill.printed("100", "20.01"))).endsWith("asks nothing");
        assertThat(Treating.gb().told(bill.printed("100", "2"))).endsWith("asks nothing");
        assertThat(Treating.gb().told(bill.printed("100", "20.02")))
                .isEqualTo(
                        "uk-purchase U15a no rate: 100.00 + 20.02, claim 20.00; 4=20.00 7=100.00;"
                                + " asks vat-above-every-rate");
    }

    /** VATA 1994 s.7A and s.8: a service that may be from abroad is not taken for one from here. */
    @Test
    void aServiceOfNobodyKnowsWhere() {
        SampleLine advert =
                SampleLine.of("expense").evidence("invoice").category("advertising").gross("600");
        assertThat(Treating.gb().told(advert))
                .isEqualTo(
                        "undecided R13 no rate: 600.00 + 0.00, claim 0.00; no box; asks"
                                + " supplier-country-missing");
        assertThat(Treating.gb().told(advert.party("Example adverts", "GB", "")))
                .startsWith("unregistered-supplier U03a");
        assertThat(Treating.gb().told(advert.party("Example adverts", "IE", "")))
                .startsWith("reverse-charge R10");
    }

    /** VATA 1994 Sch 9ZA: box 2 is owed whatever the document lacks; box 4 waits for it. */
    @Test
    void acquisitionsInNorthernIreland() {
        Treating book = Treating.of(SampleSettings.established("XI", "XI"));
        SampleLine goods =
                SampleLine.of("purchase").goods("DE", "XI").evidence("invoice").gross("1000");
        assertThat(book.told(goods))
                .isEqualTo(
                        "undecided G12 no rate: 1000.00 + 0.00, claim 0.00; no box; asks"
                                + " ni-acquisition-unclear");
        assertThat(book.told(goods.party("Werk", "DE", "DE123456788").evidence("missing")))
                .isEqualTo(
                        "ni-acquisition-unevidenced G15 20%: 1000.00 + 200.00, claim 0.00; 2=200.00"
                                + " 7=1000.00 9=1000.00; asks evidence-missing");
        assertThat(
                        book.told(
                                SampleLine.of("purchase")
                                        .goods("DE", "XI")
                                        .party("Werk", "DE", "DE123456788")
                                        .evidence("invoice")
                                        .printed("1000", "190")))
                .isEqualTo(
                        "ni-acquisition G13 20%: 1000.00 + 200.00, claim 200.00; 2=200.00 4=200.00"
                                + " 7=1000.00 9=1000.00; asks foreign-vat-charged");
    }

    /** A number without a prefix is the supplier's own country's. */
    @ParameterizedTest(name = "from {0}: {1}")
    @CsvSource({
        "GB, uk-purchase U15a",
        "XI, uk-purchase U15a",
        "DE, undecided R01",
        "US, undecided R01",
        "'', uk-purchase U15a"
    })
    void aNumberWithoutPrefix(String country, String decided) {
        assertThat(
                        Treating.gb()
                                .told(
                                        SampleLine.of("expense")
                                                .party("Example supplier", country, "101747696")
                                                .evidence("invoice")
                                                .printed("100", "20")))
                .startsWith(decided);
    }

    /** One question an entry: what already asks is not asked again for its printed VAT. */
    @Test
    void oneQuestionIsEnough() {
        assertThat(Treating.gb().told(home("purchase").evidence("missing").printed("100", "35")))
                .endsWith("asks evidence-missing");
    }

    /**
     * VAT Regulations 1995 reg 38(4)(b) and (4A), inserted by SI 2019/1048 reg 8: a document is a
     * condition of an increase alone, so a credit waits for a person, and the close for both.
     */
    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"missing", "alternative", "simplified", "none-needed"})
    void aCreditWithoutItsDocument(String evidence) {
        SampleLine credit =
                home("purchase-credit").category("stock").evidence(evidence).printed("300", "60");
        Treated asked = Treating.gb().one(credit);
        assertThat(Treating.told(asked))
                .startsWith("unclaimed-credit ")
                .endsWith("7=-300.00; asks credit-unevidenced");
        assertThat(asked.queries().get(0).holdsClose()).isTrue();
        Treated decided =
                Treating.gb()
                        .deciding(
                                new Decision(
                                        1,
                                        Decision.Target.ENTRY,
                                        "1",
                                        Decision.Action.TREAT_AS,
                                        "uk-purchase-credit",
                                        "the supplier paid it back",
                                        "A. Keeper",
                                        LocalDate.of(2026, 10, 5)))
                        .one(credit);
        assertThat(Treating.told(decided)).endsWith("; 4=-60.00 7=-300.00; asks nothing");
    }

    /** What is wrong with the document of a reverse charge is said: reg 29(2), and 14 and 16A. */
    @ParameterizedTest(name = "{0}, {1}: {2}")
    @CsvSource({
        "missing, '', No document is held for 300.00",
        "simplified, '', the whole of it is above the limit of its kind",
        "none-needed, '', it does for other costs alone",
        "invoice, other, it is made out in another name than the business"
    })
    void whatIsWrongWithTheDocument(String evidence, String addressed, String told) {
        SampleLine line =
                SampleLine.of("expense")
                        .party("Example platform", "IE", "IE1234567T")
                        .gross("300")
                        .category("advertising")
                        .evidence(evidence);
        Treated treated =
                Treating.gb()
                        .one(
                                addressed.isEmpty()
                                        ? line
                                        : line.particular(Particular.ADDRESSED, addressed));
        assertThat(treated.boxes()).containsOnlyKeys("1", "6", "7");
        assertThat(treated.queries())
                .hasSize(1)
                .first()
                .extracting(Query::question)
                .asString()
                .contains(told);
    }
}
