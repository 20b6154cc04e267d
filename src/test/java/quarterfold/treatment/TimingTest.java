package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;
import static quarterfold.treatment.Invoices.paidOut;
import static quarterfold.treatment.Invoices.purchase;
import static quarterfold.treatment.Invoices.received;
import static quarterfold.treatment.Invoices.sale;
import static quarterfold.treatment.Invoices.without;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;

/** On which days an entry does something to a return: both sides of every day the law names. */
class TimingTest {

    private static final Treating STANDARD = Treating.gb();

    /** VATA 1994 s.6(2), (4) and (5): an invoice within 14 days after removal, or before it. */
    @ParameterizedTest(name = "sent 2026-06-25, invoiced {0}: {1}")
    @CsvSource({
        "2026-06-24, 2026-06-24",
        "2026-06-25, 2026-06-25",
        "2026-07-05, 2026-07-05",
        "2026-07-09, 2026-07-09", // the fourteenth day after
        "2026-07-10, 2026-06-25",
    })
    void anInvoiceMovesTheTaxPoint(String invoiced, String taxPoint) {
        SampleLine sale =
                sale("2026-06-20")
                        .particular(Particular.SENT, "2026-06-25")
                        .particular(Particular.INVOICED, invoiced);
        assertThat(STANDARD.happens(sale))
                .containsExactly(taxPoint + " supply uk-sale: 1=200.00 6=1000.00");
    }

    /** VATA 1994 s.6(4) and (5): never the part that was paid before. */
    @Test
    void theInvoiceLeavesWhatWasPaidBefore() {
        List<String> happens =
                STANDARD.happens(
                        sale("2026-06-20")
                                .particular(Particular.SENT, "2026-06-25")
                                .particular(Particular.INVOICED, "2026-07-05"),
                        received("2026-06-24", "300"),
                        received("2026-06-25", "600"), // on the basic tax point: not before it
                        received("2026-07-20", "300"));
        assertThat(without("money-only", happens))
                .containsExactly(
                        "2026-06-24 supply uk-sale: 1=50.00 6=250.00",
                        "2026-07-05 supply uk-sale: 1=150.00 6=750.00");
    }

    /** VATA 1994 s.6(4): paid in full before, nothing is left for the day of removal. */
    @Test
    void paidInFullBeforeItIsSent() {
        assertThat(
                        STANDARD.happens(
                                sale("2026-07-02")
                                        .particular(Particular.SENT, "2026-07-02")
                                        .paid("2026-06-30")))
                .containsExactly("2026-06-30 supply uk-sale: 1=200.00 6=1000.00");
        assertThat(
                        STANDARD.happens(
                                sale("2026-06-30")
                                        .channel("Quaylark", "no")
                                        .particular(Particular.SENT, "2026-07-02")
                                        .paid("2026-07-14"))) // the payout
                .containsExactly("2026-06-30 supply uk-sale: 1=200.00 6=1000.00");
    }

    /** VATA 1994 s.6(2)(c): adopted, or twelve months after removal; a payment is no tax point. */
    @ParameterizedTest(name = "adopted {0}: {1}")
    @CsvSource({
        "2026-04-20, 2026-04-20",
        "2027-03-01, 2027-03-01",
        "2027-03-02, 2027-03-01",
    })
    void goodsOnApproval(String adopted, String taxPoint) {
        SampleLine sale =
                sale("2026-02-25")
                        .particular(Particular.SENT, "2026-03-01")
                        .particular(Particular.APPROVAL, "yes")
                        .paid("2026-03-05");
        assertThat(STANDARD.happens(sale))
                .containsExactly("2027-03-01 supply uk-sale: 1=200.00 6=1000.00");
        assertThat(STANDARD.happens(sale.particular(Particular.ADOPTED, adopted)))
                .containsExactly(taxPoint + " supply uk-sale: 1=200.00 6=1000.00");
    }

    /** VATA 1994 s.2 and s.6: the rate is that of each tax point; 20 per cent from 4 Jan 2011. */
    @Test
    void theRateIsThatOfTheTaxPoint() {
        List<String> happens =
                STANDARD.happens(
                        SampleLine.of("sale")
                                .on("2011-01-10")
                                .gross("1070")
                                .document("INV-1")
                                .party("Customer", "GB", "")
                                .particular(Particular.SENT, "2011-01-04"),
                        received("2011-01-03", "470"));
        assertThat(without("money-only", happens))
                .containsExactly(
                        "2011-01-03 supply uk-sale: 1=70.00 6=400.00",
                        "2011-01-04 supply uk-sale: 1=100.00 6=500.00");
    }

    /** VAT Regulations 1995 reg 29(1): the day the invoice is held, if later. */
    @ParameterizedTest(name = "held {0}: {1}")
    @CsvSource({
        "2026-03-19, 2026-03-20",
        "2026-03-20, 2026-03-20",
        "2026-04-08, 2026-04-08",
    })
    void claimedWhenTheInvoiceIsHeld(String held, String claimed) {
        assertThat(STANDARD.happens(purchase("2026-03-20").particular(Particular.HELD, held)))
                .containsExactly(claimed + " supply uk-purchase: 4=200.00 7=1000.00");
    }

    /** VAT Regulations 1995 regs 172G to 172I: six months from the later of supply and due. */
    @Test
    void aSupplierUnpaid() {
        SampleLine later = purchase("2026-01-16").particular(Particular.DUE, "2026-02-15");
        assertThat(STANDARD.happens(later))
                .containsExactly(
                        "2026-01-16 supply uk-purchase: 4=200.00 7=1000.00",
                        "2026-08-15 unpaid supplier-unpaid: 4=-200.00");
        assertThat(
                        STANDARD.happens(
                                purchase("2026-01-16").particular(Particular.DUE, "2026-01-01")))
                .endsWith("2026-07-16 unpaid supplier-unpaid: 4=-200.00");
        assertThat(STANDARD.happens(purchase("2026-01-16")))
                .as("nothing says when it was due")
                .containsExactly("2026-01-16 supply uk-purchase: 4=200.00 7=1000.00");
    }

    /** A decided treatment is the supply's; what goes back is still only what is unpaid. */
    @Test
    void aDecidedTreatmentIsOfTheSupplyAlone() {
        Treating book =
                STANDARD.deciding(
                        new Decision(
                                1,
                                Decision.Target.ENTRY,
                                "1",
                                Decision.Action.TREAT_AS,
                                "uk-purchase",
                                "the invoice was seen",
                                "a person",
                                LocalDate.of(2026, 9, 1)));
        assertThat(
                        book.happens(
                                purchase("2026-01-16")
                                        .evidence("missing")
                                        .particular(Particular.DUE, "2026-02-15")))
                .containsExactly(
                        "2026-01-16 supply uk-purchase: 4=200.00 7=1000.00",
                        "2026-08-15 unpaid supplier-unpaid: 4=-200.00");
    }

    /** Both sides of the last day for paying. */
    @ParameterizedTest(name = "paid {0}")
    @CsvSource({"2026-08-15, false", "2026-08-16, true"})
    void paidInTimeOrAfterAll(String paid, boolean late) {
        SampleLine bill =
                purchase("2026-01-16").particular(Particular.DUE, "2026-02-15").paid(paid);
        String supply = "2026-01-16 supply uk-purchase: 4=200.00 7=1000.00";
        if (late) {
            assertThat(STANDARD.happens(bill))
                    .containsExactly(
                            supply,
                            "2026-08-15 unpaid supplier-unpaid: 4=-200.00",
                            paid + " paid-after-all supplier-paid-late: 4=200.00");
        } else {
            assertThat(STANDARD.happens(bill)).containsExactly(supply);
        }
    }

    /** Part payments, by rows: what goes back and comes again adds up. */
    @Test
    void aSupplierPaidInParts() {
        List<String> happens =
                STANDARD.happens(
                        purchase("2026-01-16").particular(Particular.DUE, "2026-02-15"),
                        paidOut("2026-03-01", "600"),
                        paidOut("2026-09-01", "200"),
                        paidOut("2026-10-01", "400"));
        assertThat(without("money-only", happens))
                .containsExactly(
                        "2026-01-16 supply uk-purchase: 4=200.00 7=1000.00",
                        "2026-08-15 unpaid supplier-unpaid: 4=-100.00",
                        "2026-09-01 paid-after-all supplier-paid-late: 4=33.3333",
                        "2026-10-01 paid-after-all supplier-paid-late: 4=66.6667");
    }

    /** HMRC manual VBDR6100: not imports or acquisitions; nor what was never reclaimed. */
    @Test
    void onlyWhatWasReclaimedHereGoesBack() {
        SampleLine blocked =
                purchase("2026-01-16")
                        .category("client-entertaining")
                        .particular(Particular.DUE, "2026-02-15");
        assertThat(STANDARD.happens(blocked)).hasSize(1);
        assertThat(
                        STANDARD.happens(
                                SampleLine.of("import-vat-paid")
                                        .on("2026-01-16")
                                        .vat("200")
                                        .evidence("import-certificate")
                                        .particular(Particular.DUE, "2026-02-15")))
                .hasSize(1);
    }

    /** VATA 1994 s.26A is of supplies made on or after 1 January 2003: reg 172F. */
    @ParameterizedTest
    @CsvSource({"2002-12-31, 1", "2003-01-01, 2"})
    void suppliersUnpaidSince2003(String day, int occasions) {
        Treating early =
                Treating.of(SampleSettings.registered(LocalDate.of(2000, 1, 1), "3 6 9 12"));
        assertThat(
                        early.happens(
                                purchase(day)
                                        .printed("1000", "175")
                                        .rate("17.5")
                                        .particular(Particular.DUE, "2003-01-15")))
                .hasSize(occasions);
    }

    /** VATA 1994 s.36: a debt six months old; not where it was paid or relief is entered. */
    @Test
    void aCustomerUnpaid() {
        SampleLine sale = sale("2026-01-16").particular(Particular.DUE, "2026-02-15");
        assertThat(STANDARD.happens(sale))
                .containsExactly(
                        "2026-01-16 supply uk-sale: 1=200.00 6=1000.00",
                        "2026-08-15 unpaid debt-unpaid: no box");
        SampleLine relief =
                SampleLine.of("other-money")
                        .on("2026-08-20")
                        .category("bad-debt-relief")
                        .gross("1200")
                        .rate("20")
                        .document("INV-1")
                        .party("Customer", "GB", "")
                        .particular(Particular.DUE, "2026-02-15");
        assertThat(STANDARD.happens(sale, relief))
                .containsExactly(
                        "2026-01-16 supply uk-sale: 1=200.00 6=1000.00",
                        "2026-08-20 supply bad-debt-relief: 4=200.00");
        assertThat(STANDARD.happens(sale.paid("2026-08-15"))).hasSize(1);
    }

    /** VATA 1994 s.36 and HMRC manual VR7420: from six months to four years and six months. */
    @ParameterizedTest(name = "claimed {0}: {1}")
    @CsvSource({
        "2010-08-13, undecided",
        "2010-08-14, bad-debt-relief",
        "2014-08-14, bad-debt-relief",
        "2014-08-15, undecided",
    })
    void reliefInItsTime(String claimed, String treatment) {
        SampleLine relief =
                SampleLine.of("other-money")
                        .on(claimed)
                        .category("bad-debt-relief")
                        .gross("117.50")
                        .rate("17.5")
                        .particular(Particular.SENT, "2010-01-25")
                        .particular(Particular.DUE, "2010-02-14");
        assertThat(STANDARD.one(relief).treatment()).isEqualTo(treatment);
    }

    /** What a person says later of an entry that states no days moves it as well. */
    @Test
    void aDayStatedByDecision() {
        Treating book =
                STANDARD.deciding(
                        new Decision(
                                1,
                                Decision.Target.ENTRY,
                                "1",
                                Decision.Action.STATE,
                                "held=2026-04-08",
                                "it came by post",
                                "a person",
                                LocalDate.of(2026, 9, 1)));
        assertThat(book.happens(purchase("2026-03-20")))
                .containsExactly("2026-04-08 supply uk-purchase: 4=200.00 7=1000.00");
    }

    /** VATA 1994 s.6: a line that states none of its days has the one it is dated. */
    @Test
    void aPaymentAloneMovesNoTaxPointThatIsNotStated() {
        SampleLine sale = sale("2026-06-20").particular(Particular.DUE, "2027-06-20");
        assertThat(without("money-only", STANDARD.happens(sale, received("2026-06-01", "1200"))))
                .containsExactly("2026-06-20 supply uk-sale: 1=200.00 6=1000.00");
    }

    /** Each of the two days moves it alone: s.6(2)(a) and s.6(5). */
    @Test
    void sentOrInvoicedAlone() {
        assertThat(STANDARD.happens(sale("2026-06-20").particular(Particular.SENT, "2026-06-25")))
                .containsExactly("2026-06-25 supply uk-sale: 1=200.00 6=1000.00");
        assertThat(
                        STANDARD.happens(
                                sale("2026-06-20").particular(Particular.INVOICED, "2026-06-30")))
                .containsExactly("2026-06-30 supply uk-sale: 1=200.00 6=1000.00");
        assertThat(
                        STANDARD.happens(
                                SampleLine.of("customer-payment")
                                        .on("2026-06-20")
                                        .gross("1200")
                                        .particular(Particular.SENT, "2026-06-25")))
                .as("a payment is no supply")
                .containsExactly("2026-06-20 supply money-only: no box");
    }

    /** VAT Regulations 1995 reg 29(2): a day of holding matters for what is reclaimed alone. */
    @Test
    void holdingADocumentMovesNoSale() {
        assertThat(STANDARD.happens(sale("2026-06-20").particular(Particular.HELD, "2026-07-05")))
                .containsExactly("2026-06-20 supply uk-sale: 1=200.00 6=1000.00");
        assertThat(
                        STANDARD.happens(
                                SampleLine.of("import-vat-paid")
                                        .on("2026-06-20")
                                        .vat("200")
                                        .evidence("import-certificate")
                                        .particular(Particular.HELD, "2026-07-05")))
                .containsExactly("2026-07-05 supply import-paid: 4=200.00 7=1000.00");
        assertThat(
                        STANDARD.happens(
                                SampleLine.of("import-vat-postponed")
                                        .on("2026-06-20")
                                        .vat("200")
                                        .evidence("postponed-statement")
                                        .particular(Particular.HELD, "2026-07-05")))
                .as("boxes 1 and 4 of a postponed import go together")
                .containsExactly("2026-06-20 supply import-postponed: 1=200.00 4=200.00 7=1000.00");
    }

    /** A debt paid after its six months is not claimed again: what comes in is no input tax. */
    @Test
    void aCustomerWhoPaysAfterAll() {
        assertThat(
                        STANDARD.happens(
                                sale("2026-01-16")
                                        .particular(Particular.DUE, "2026-02-15")
                                        .paid("2026-08-16")))
                .containsExactly(
                        "2026-01-16 supply uk-sale: 1=200.00 6=1000.00",
                        "2026-08-15 unpaid debt-unpaid: no box");
    }
}
