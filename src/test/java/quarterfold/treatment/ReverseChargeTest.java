package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Decision;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;

/** VAT that the customer accounts for, and what is left of it where nothing may be reclaimed. */
class ReverseChargeTest {

    private static SampleLine sold(String day) {
        return SampleLine.of("sale")
                .on(day)
                .rate("reverse-charge")
                .net("6000")
                .customer("business", "GB101747696");
    }

    /** VATA 1994 s.55A: on goods since 1 June 2007 (secondary source); box 6 (secondary source). */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "2007-05-31, 'undecided S38 no rate: 6000.00 + 0.00, claim 0.00; no box; asks"
                + " reverse-charge-customer'",
        "2007-06-01, 'reverse-charge-supplied S37a no rate: 6000.00 + 0.00, claim 0.00; 6=6000.00;"
                + " asks nothing'"
    })
    void asSupplier(String day, String told) {
        assertThat(Treating.gb().told(sold(day))).isEqualTo(told);
    }

    @Test
    void theCustomerMustBeRegistered() {
        assertThat(Treating.gb().told(sold("2026-08-01").customer("business", "")))
                .endsWith("asks reverse-charge-customer");
        assertThat(Treating.gb().told(sold("2026-08-01").customer("business", "GB123456789")))
                .endsWith("asks reverse-charge-customer");
        assertThat(Treating.gb().told(sold("2026-08-01").vat("1200")))
                .as("VAT shown is owed: VATA 1994 Sch 11 para 5")
                .endsWith("asks sale-vat-untaxed");
    }

    private static SampleLine bought(String kind) {
        return SampleLine.of(kind)
                .rate("reverse-charge")
                .net("6000")
                .party("Example supplier", "GB", "GB101747696")
                .evidence("invoice");
    }

    /** Boxes 1, 4 and 7, not 6 (secondary source: two professional accounts of March 2021). */
    @Test
    void asCustomer() {
        assertThat(Treating.gb().told(bought("purchase")))
                .isEqualTo(
                        "customer-accounts U27a 20%: 6000.00 + 1200.00, claim 1200.00; 1=1200.00"
                                + " 4=1200.00 7=6000.00; asks nothing");
        assertThat(Treating.gb().told(bought("purchase-credit")))
                .endsWith("1=-1200.00 4=-1200.00 7=-6000.00; asks nothing");
        assertThat(Treating.gb().told(bought("expense").category("car-hire")))
                .as("half blocked")
                .endsWith("1=1200.00 4=600.00 7=6000.00; asks nothing");
        assertThat(Treating.gb().told(bought("expense").businessUse("60")))
                .endsWith("1=1200.00 4=720.00 7=6000.00; asks nothing");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({"2007-05-31, rate-not-in-force", "2007-06-01, nothing"})
    void asCustomerSince2007(String day, String asks) {
        assertThat(Treating.gb().told(bought("purchase").on(day))).endsWith("asks " + asks);
    }

    @Test
    void nothingIsReclaimedWithoutAGoodInvoice() {
        String due = "1=1200.00 7=6000.00; asks ";
        assertThat(Treating.gb().told(bought("purchase").evidence("missing")))
                .endsWith(due + "evidence-missing");
        assertThat(Treating.gb().told(bought("purchase").party("A", "GB", "")))
                .endsWith(due + "supplier-number-missing");
        assertThat(Treating.gb().told(bought("purchase").party("A", "GB", "GB123456789")))
                .endsWith(due + "supplier-number-fails");
        assertThat(Treating.gb().told(bought("purchase").category("client-entertaining")))
                .endsWith(due + "nothing");
        assertThat(Treating.gb().told(bought("purchase").category("helicopter")))
                .endsWith(due + "category-unknown");
        assertThat(Treating.gb().told(bought("purchase").vat("1200")))
                .startsWith("undecided U21")
                .endsWith("asks reverse-charge-vat-printed");
    }

    private static Decision disallowed() {
        return new Decision(
                1,
                Decision.Target.ENTRY,
                "1",
                Decision.Action.DISALLOW,
                "",
                "private",
                "a person",
                LocalDate.of(2026, 8, 2));
    }

    private static String disallowed(SampleLine line) {
        return Treating.of(SampleSettings.established("GB", "XI"))
                .deciding(disallowed())
                .told(line);
    }

    /** VATA 1994 s.8 and Sch 9ZA: the VAT is due whether or not any of it may be reclaimed. */
    @Test
    void whatIsDisallowedIsStillDue() {
        assertThat(disallowed(bought("expense")))
                .isEqualTo(
                        "customer-accounts-unclaimed D05a 20%: 6000.00 + 1200.00, claim 0.00;"
                                + " 1=1200.00 7=6000.00; asks nothing");
        SampleLine abroad = SampleLine.of("fee").gross("100").party("Example supplier", "IE", "");
        assertThat(disallowed(abroad.evidence("invoice")))
                .isEqualTo(
                        "reverse-charge-disallowed D03c 20%: 100.00 + 20.00, claim 0.00; 1=20.00"
                                + " 6=100.00 7=100.00; asks nothing");
        assertThat(
                        disallowed(
                                SampleLine.of("fee-refund")
                                        .gross("100")
                                        .party("Example supplier", "IE", "")))
                .endsWith("1=-20.00 6=-100.00 7=-100.00; asks nothing");
        assertThat(
                        disallowed(
                                SampleLine.of("purchase")
                                        .gross("100")
                                        .goods("DE", "XI")
                                        .party("Example supplier", "DE", "DE123456788")
                                        .evidence("invoice")))
                .isEqualTo(
                        "ni-acquisition-disallowed D04a 20%: 100.00 + 20.00, claim 0.00; 2=20.00"
                                + " 7=100.00 9=100.00; asks nothing");
        assertThat(disallowed(SampleLine.of("stock-moved").net("100").goods("GB", "XI")))
                .endsWith("claim 0.00; 1=20.00; asks nothing");
    }

    @Test
    void disallowedImports() {
        assertThat(
                        disallowed(
                                SampleLine.of("import-vat-postponed")
                                        .printed("100", "20")
                                        .evidence("postponed-statement")))
                .isEqualTo(
                        "import-postponed-disallowed D07c 20%: 100.00 + 20.00, claim 0.00; 1=20.00"
                                + " 7=100.00; asks nothing");
        assertThat(
                        disallowed(
                                SampleLine.of("import-vat-paid")
                                        .printed("100", "20")
                                        .evidence("import-certificate")))
                .endsWith("claim 0.00; 7=100.00; asks nothing");
    }
}
