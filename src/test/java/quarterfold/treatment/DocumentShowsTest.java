package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;

/** What an entry states of its document, held against what the regulations have it show. */
class DocumentShowsTest {

    private static final String SEEN_ON_AN_INVOICE =
            "to be seen on the document: issue date, quantity, unit price";

    /** The reasons that say what is entered, what is not, and what is to be seen. */
    private static List<String> shows(SampleLine line) {
        return Treating.gb().one(line).evidence().orElseThrow().reasons().stream()
                .filter(
                        r ->
                                r.startsWith("entered: ")
                                        || r.startsWith("not entered: ")
                                        || r.startsWith("to be seen "))
                .toList();
    }

    private static SampleLine bill() {
        return SampleLine.of("purchase")
                .evidence("invoice")
                .document("S-1")
                .party("Example supplier", "GB", "GB101747696")
                .category("stock")
                .rate("20")
                .printed("100", "20")
                .particular(Particular.ADDRESSED, "business");
    }

    /** VAT Regulations 1995 reg 14(1): of a total alone nothing else is known. */
    @Test
    void ofATotalAloneTheRestIsNotEntered() {
        assertThat(shows(SampleLine.of("purchase").evidence("invoice").gross("120")))
                .containsExactly(
                        "entered: tax point",
                        "not entered: number, supplier, supplier VAT number, customer, description,"
                                + " rate, net, total net, total VAT",
                        SEEN_ON_AN_INVOICE);
    }

    /** Reg 14(1)(h), (i) and (l): the value without VAT is known from the total and the VAT. */
    @ParameterizedTest(name = "net {0}, VAT {1}, gross {2}: not entered: {3}")
    @CsvSource({
        "100, 20, , ''",
        ", 20, 120, ''",
        "100, , , total VAT",
        ", , 120, 'net, total net, total VAT'",
        ", 20, , 'net, total net'"
    })
    void amounts(String net, String vat, String gross, String missing) {
        SampleLine line = bill().without();
        if (net != null) {
            line.net(net);
        }
        if (vat != null) {
            line.vat(vat);
        }
        if (gross != null) {
            line.gross(gross);
        }
        assertThat(shows(line).stream().filter(r -> r.startsWith("not entered: ")))
                .isEqualTo(missing.isEmpty() ? List.of() : List.of("not entered: " + missing));
    }

    /** Reg 14(1)(h): a rate is known where it is stated, or from the VAT and the value. */
    @Test
    void theRateIsStatedOrFollowsFromTheVat() {
        assertThat(shows(bill().rate(""))).hasSize(2).first().asString().contains("rate");
        assertThat(shows(bill().rate("").without().gross("120")))
                .contains("not entered: rate, net, total net, total VAT");
    }

    /** Reg 14(1)(g): any word for what was supplied, be it a product or a category. */
    @Test
    void aProductOrACategoryDescribesTheSupply() {
        assertThat(shows(bill().category("")))
                .contains("not entered: description", SEEN_ON_AN_INVOICE);
        assertThat(shows(bill().category("").product("LENS-1"))).hasSize(2);
    }

    /** Reg 14(1)(c): the day of issue is known where it is stated. */
    @Test
    void theDayOfIssue() {
        assertThat(shows(bill().particular(Particular.INVOICED, "2026-08-01")))
                .containsExactly(
                        "entered: number, tax point, issue date, supplier, supplier VAT number,"
                                + " customer, description, rate, net, total net, total VAT",
                        "to be seen on the document: quantity, unit price");
    }

    /** A fee's invoice may name its supplier by the channel. */
    @Test
    void aChannelIsASupplier() {
        SampleLine fee =
                SampleLine.of("fee")
                        .evidence("invoice")
                        .document("S-1")
                        .category("channel-fee")
                        .rate("20")
                        .printed("100", "20");
        assertThat(shows(fee)).contains("not entered: supplier, supplier VAT number, customer");
        assertThat(shows(fee.channel("Quaylark", "no")))
                .contains("not entered: supplier VAT number, customer");
    }

    /**
     * VAT Regulations 1995 reg 14 binds suppliers registered here, and of a supply without VAT
     * there is none to show. The words of 14(1)(n) and (o) are to be seen where they are owed.
     */
    @ParameterizedTest(name = "from {0} at {1}")
    @CsvSource({
        "GB, 20, true, ''",
        "XI, 20, true, ''",
        "'', 20, true, ''",
        "GB, 5, true, ''",
        "GB, 0, false, ''",
        "GB, exempt, false, ''",
        "IE, 20, false, ''",
        "US, 20, false, ''",
        "GB, reverse-charge, false, ', reverse charge'",
        "IE, reverse-charge, false, ', reverse charge'",
        "GB, margin, false, ', margin scheme'"
    })
    void vatIsShownWhereItMayBeCharged(String country, String rate, boolean shown, String words) {
        SampleLine line =
                SampleLine.of("purchase")
                        .evidence("invoice")
                        .document("S-1")
                        .party("Example supplier", country, "")
                        .category("stock")
                        .rate(rate)
                        .gross("100")
                        .particular(Particular.ADDRESSED, "business");
        assertThat(shows(line))
                .containsExactly(
                        "entered: number, tax point, supplier, customer, description"
                                + (shown ? ", rate" : ""),
                        "not entered: "
                                + (shown ? "supplier VAT number, " : "")
                                + "net, total net"
                                + (shown ? ", total VAT" : ""),
                        SEEN_ON_AN_INVOICE + words);
    }

    /** VAT Regulations 1995 reg 16A. */
    @Test
    void aSimplifiedInvoice() {
        SampleLine receipt =
                SampleLine.of("expense")
                        .evidence("simplified")
                        .party("Example shop", "GB", "GB101747696")
                        .category("stationery")
                        .rate("20");
        assertThat(shows(receipt.gross("12")))
                .containsExactly(
                        "entered: supplier, supplier VAT number, tax point, description, total"
                                + " gross, rate, gross by rate");
        assertThat(shows(receipt.without().gross("0")))
                .contains("not entered: total gross, gross by rate");
    }

    /**
     * VAT Notice 700 para 19.7.5 (from memory): proof of the spending, and a registered supplier.
     */
    @Test
    void withoutAnInvoiceTheSpendingIsShown() {
        SampleLine toll =
                SampleLine.of("expense")
                        .evidence("none-needed")
                        .category("toll")
                        .rate("20")
                        .gross("6");
        assertThat(shows(toll)).containsExactly("not entered: spent, supplier registered");
        assertThat(shows(toll.paid("2026-08-01").party("A bridge", "GB", "GB101747696")))
                .containsExactly("entered: spent, supplier registered");
    }

    /** VAT Regulations 1995 reg 29(2)(c); the importer's number stands for the claimant. */
    @Test
    void anImportCertificate() {
        SampleLine paid =
                SampleLine.of("import-vat-paid").evidence("import-certificate").net("1000");
        assertThat(shows(paid))
                .containsExactly(
                        "entered: accounting date", "not entered: importer, VAT, entry reference");
        assertThat(shows(paid.vat("200").document("26GB01").party("", "CN", "GB101747641000")))
                .containsExactly("entered: importer, VAT, entry reference, accounting date");
    }

    /** GOV.UK, Understanding your monthly postponed import VAT statements. */
    @Test
    void aPostponedStatement() {
        SampleLine line =
                SampleLine.of("import-vat-postponed").evidence("postponed-statement").net("1000");
        assertThat(shows(line))
                .containsExactly(
                        "entered: month, entry date",
                        "not entered: importer VAT number, importer EORI, total VAT, entry number",
                        "to be seen on the document: port VAT");
        assertThat(shows(line.vat("200").document("26GB01").party("", "CN", "GB101747641000")))
                .containsExactly(
                        "entered: month, importer VAT number, importer EORI, total VAT, entry date,"
                                + " entry number",
                        "to be seen on the document: port VAT");
    }

    /** VAT Regulations 1995 reg 15C as inserted by SI 2019/1048, from 1 September 2019. */
    @ParameterizedTest(name = "{0} of {1}")
    @CsvSource({
        "purchase-credit, 2019-08-31, false",
        "purchase-credit, 2019-09-01, true",
        "expense-credit, 2019-09-01, true",
        "fee-refund, 2019-09-01, true"
    })
    void aCreditIsHeldAgainstWhatACreditNoteShows(String kind, String day, boolean listed) {
        SampleLine credit =
                SampleLine.of(kind)
                        .on(day)
                        .evidence("invoice")
                        .document("C-1")
                        .party("Example supplier", "GB", "GB101747696")
                        .category("stock")
                        .rate("20")
                        .printed("100", "20");
        assertThat(shows(credit))
                .isEqualTo(
                        listed
                                ? List.of(
                                        "entered: number, supplier, supplier VAT number,"
                                                + " description, net, VAT",
                                        "not entered: customer",
                                        "to be seen on the document: issue date, invoice number,"
                                                + " invoice date")
                                : List.of());
    }
}
