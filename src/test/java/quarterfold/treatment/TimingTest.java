package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Schemes;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;

/** On which days an entry does something to a return: both sides of every day the law names. */
class TimingTest {

    private static final Treating STANDARD = Treating.gb();
    private static final Treating CASH = Treating.of(SampleSettings.scheme("cash", ""));

    private static SampleLine sale(String day) {
        return SampleLine.of("sale")
                .on(day)
                .rate("20")
                .gross("1200")
                .document("INV-1")
                .party("Customer", "GB", "");
    }

    private static SampleLine purchase(String day) {
        return SampleLine.of("purchase")
                .on(day)
                .printed("1000", "200")
                .rate("20")
                .document("B-1")
                .party("Supplier", "GB", "GB101747696")
                .evidence("invoice");
    }

    private static SampleLine received(String day, String money) {
        return SampleLine.of("customer-payment")
                .on(day)
                .gross(money)
                .document("INV-1")
                .party("Customer", "GB", "");
    }

    private static SampleLine paidOut(String day, String money) {
        return SampleLine.of("supplier-payment")
                .on(day)
                .gross(money)
                .document("B-1")
                .party("Supplier", "GB", "GB101747696");
    }

    private static List<String> without(String what, List<String> happens) {
        return happens.stream().filter(h -> !h.contains(what)).toList();
    }

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

    /**
     * VAT Notice 731: what is paid is paid with its VAT, also where only net and rate are printed.
     */
    @Test
    void aPaymentIsHeldAgainstThePriceWithItsVat() {
        List<String> happens =
                CASH.happens(
                        SampleLine.of("purchase")
                                .on("2026-06-01")
                                .net("1000")
                                .rate("20")
                                .document("B-1")
                                .party("Supplier", "GB", "GB101747696")
                                .evidence("invoice"),
                        paidOut("2026-06-30", "300"),
                        paidOut("2026-07-01", "900"));
        assertThat(without("money-only", happens))
                .containsExactly(
                        "2026-06-01 awaiting-payment awaiting-payment: no box",
                        "2026-06-30 supply uk-purchase: 4=50.00 7=250.00",
                        "2026-07-01 supply uk-purchase: 4=150.00 7=750.00");
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

    private static SampleLine export(String day) {
        return SampleLine.of("sale").on(day).gross("600").goods("", "US").order("Q-1");
    }

    /** HMRC manual VEXP30300: evidence within three months of the time of supply. */
    @ParameterizedTest(name = "sold {0}: the time ends on {1}")
    @CsvSource({"2026-01-10, 2026-04-10", "2025-11-30, 2026-02-28", "2026-01-31, 2026-04-30"})
    void exportEvidence(String sold, String end) {
        LocalDate dayAfter = LocalDate.parse(end).plusDays(1);
        assertThat(STANDARD.happens(export(sold)))
                .containsExactly(
                        sold + " supply export-awaited: 6=600.00",
                        end + " export-time-up export-overdue: 1=100.00 6=-100.00");
        assertThat(STANDARD.happens(export(sold).particular(Particular.EVIDENCED, end)))
                .containsExactly(sold + " supply export: 6=600.00");
        assertThat(
                        STANDARD.happens(
                                export(sold).particular(Particular.EVIDENCED, dayAfter.toString())))
                .containsExactly(
                        sold + " supply export-awaited: 6=600.00",
                        end + " export-time-up export-overdue: 1=100.00 6=-100.00",
                        dayAfter + " export-evidenced export-evidenced: 1=-100.00 6=100.00");
        assertThat(STANDARD.happens(export(sold).evidence("export")))
                .containsExactly(sold + " supply export: 6=600.00");
    }

    /** The question goes away with evidence in time, and only then. */
    @Test
    void evidenceInTimeAnswersTheQuestion() {
        assertThat(STANDARD.told(export("2026-01-10")))
                .contains("export-awaited S14")
                .endsWith("asks export-evidence");
        assertThat(
                        STANDARD.told(
                                export("2026-01-10")
                                        .particular(Particular.EVIDENCED, "2026-04-10")))
                .contains("export S13a")
                .endsWith("asks nothing");
        assertThat(
                        STANDARD.told(
                                export("2026-01-10")
                                        .evidence("export")
                                        .particular(Particular.EVIDENCED, "2026-04-11")))
                .contains("export-awaited S14");
    }

    /** Evidence that a person saw counts from the day it was seen. */
    @Test
    void evidenceSeenByDecision() {
        assertThat(seenOn("2026-04-10").happens(export("2026-01-10")))
                .containsExactly("2026-01-10 supply export: 6=600.00");
        assertThat(seenOn("2026-08-05").happens(export("2026-01-10")))
                .containsExactly(
                        "2026-01-10 supply export-awaited: 6=600.00",
                        "2026-04-10 export-time-up export-overdue: 1=100.00 6=-100.00",
                        "2026-08-05 export-evidenced export-evidenced: 1=-100.00 6=100.00");
    }

    private static Treating seenOn(String day) {
        return STANDARD.deciding(
                new Decision(
                        1,
                        Decision.Target.ENTRY,
                        "1",
                        Decision.Action.EVIDENCE_SEEN,
                        "export",
                        "the waybill came",
                        "a person",
                        LocalDate.parse(day)));
    }

    /** What was paid back before or after the time ran out is not charged: reg 38(3)(b). */
    @Test
    void aRefundFollowsItsExport() {
        SampleLine early = refund("2026-02-01");
        assertThat(STANDARD.happens(export("2026-01-10"), early))
                .containsExactly(
                        "2026-01-10 supply export-awaited: 6=600.00",
                        "2026-04-10 export-time-up export-overdue: 1=100.00 6=-100.00",
                        "2026-02-01 supply export-awaited-reduced: 6=-300.00",
                        "2026-04-10 export-time-up export-overdue-reduced: 1=-50.00 6=50.00");
        assertThat(STANDARD.happens(export("2026-01-10"), refund("2026-05-01")))
                .endsWith(
                        "2026-05-01 supply export-awaited-reduced: 6=-300.00",
                        "2026-05-01 export-time-up export-overdue-reduced: 1=-50.00 6=50.00");
        SampleLine evidenced = export("2026-01-10").particular(Particular.EVIDENCED, "2026-08-05");
        assertThat(STANDARD.happens(evidenced, refund("2026-05-01")))
                .endsWith(
                        "2026-05-01 export-time-up export-overdue-reduced: 1=-50.00 6=50.00",
                        "2026-08-05 export-evidenced export-evidenced-reduced: 1=50.00 6=-50.00");
        assertThat(STANDARD.happens(evidenced, refund("2026-09-01")))
                .endsWith("2026-09-01 supply export-awaited-reduced: 6=-300.00");
        assertThat(STANDARD.happens(refund("2026-09-01")))
                .containsExactly("2026-09-01 supply export-awaited-reduced: 6=-300.00");
    }

    private static SampleLine refund(String day) {
        return SampleLine.of("sale-refund").on(day).gross("300").goods("", "US").order("Q-1");
    }

    /** Zero-rated goods are zero-rated at home too; exempt ones bear no VAT. */
    @ParameterizedTest
    @CsvSource({"0, export-overdue", "exempt, no-vat-later"})
    void nothingIsDueOnGoodsWithoutVatAtHome(String rate, String treatment) {
        assertThat(STANDARD.happens(export("2026-01-10").rate(rate)))
                .endsWith("2026-04-10 export-time-up " + treatment + ": no box");
    }

    /** HMRC manual VEXP30300: three months for removals from Northern Ireland too. */
    @Test
    void fromNorthernIreland() {
        Treating ni = Treating.of(SampleSettings.established("XI", "XI"));
        SampleLine sale =
                SampleLine.of("sale")
                        .on("2026-01-10")
                        .gross("600")
                        .goods("", "IE")
                        .customer("business", "IE1234567T");
        assertThat(ni.happens(sale))
                .containsExactly(
                        "2026-01-10 supply ni-dispatch-awaited: 6=600.00 8=600.00",
                        "2026-04-10 export-time-up export-overdue: 1=100.00 6=-100.00");
        assertThat(ni.happens(sale.particular(Particular.EVIDENCED, "2026-04-10")))
                .containsExactly("2026-01-10 supply ni-dispatch: 6=600.00 8=600.00");
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

    /** VAT Regulations 1995 reg 57: by payment, rates sharing in each fairly. */
    @Test
    void cashAccountingByPayment() {
        List<String> happens =
                CASH.happens(
                        sale("2026-01-15").gross("600"),
                        sale("2026-01-15").gross("600").rate("0"),
                        received("2026-02-20", "400"),
                        received("2026-05-20", "800"));
        assertThat(without("money-only", happens))
                .containsExactly(
                        "2026-01-15 awaiting-payment awaiting-payment: no box",
                        "2026-02-20 supply uk-sale: 1=33.3333 6=166.6667",
                        "2026-05-20 supply uk-sale: 1=66.6667 6=333.3333",
                        "2026-01-15 awaiting-payment awaiting-payment: no box",
                        "2026-02-20 supply uk-sale: 6=200.00",
                        "2026-05-20 supply uk-sale: 6=400.00");
    }

    @Test
    void cashAccountingByTheDayPaid() {
        assertThat(CASH.happens(purchase("2026-01-15").paid("2026-04-02")))
                .containsExactly(
                        "2026-01-15 awaiting-payment awaiting-payment: no box",
                        "2026-04-02 supply uk-purchase: 4=200.00 7=1000.00");
        assertThat(
                        CASH.happens(
                                purchase("2026-01-15")
                                        .paid("2026-04-02")
                                        .particular(Particular.HELD, "2026-07-01")))
                .endsWith("2026-07-01 supply uk-purchase: 4=200.00 7=1000.00");
        assertThat(CASH.happens(purchase("2026-01-15")))
                .containsExactly("2026-01-15 awaiting-payment awaiting-payment: no box");
        assertThat(CASH.happens(sale("2026-01-15").document("")))
                .as("a sale without an invoice is paid when it is made")
                .containsExactly("2026-01-15 supply uk-sale: 1=200.00 6=1000.00");
    }

    /** A dishonoured cheque: its payment is taken back, and comes again. */
    @Test
    void aPaymentTakenBack() {
        List<String> happens =
                CASH.happens(
                        sale("2026-01-15"),
                        received("2026-01-15", "1200"),
                        received("2026-02-01", "-1200"),
                        received("2026-05-01", "1200"));
        assertThat(without("money-only", happens))
                .containsExactly(
                        "2026-01-15 supply uk-sale: 1=200.00 6=1000.00",
                        "2026-02-01 supply uk-sale: 1=-200.00 6=-1000.00",
                        "2026-05-01 supply uk-sale: 1=200.00 6=1000.00");
    }

    /** HMRC manual VCAS5150: in full, when the customer paid the collector. */
    @Test
    void aChannelCollectsForItsSeller() {
        SampleLine order = sale("2026-03-30").document("").channel("Quaylark", "no");
        assertThat(CASH.happens(order.paid("2026-04-14")))
                .containsExactly("2026-03-30 supply uk-sale: 1=200.00 6=1000.00");
    }

    /** VAT Regulations 1995 reg 58(2)(e): payment due more than six months from the invoice. */
    @ParameterizedTest(name = "due {0}")
    @CsvSource({"2026-07-15, awaiting-payment", "2026-07-16, supply"})
    void longTermsAreOutsideTheScheme(String due, String cause) {
        assertThat(CASH.happens(sale("2026-01-15").particular(Particular.DUE, due)).get(0))
                .startsWith("2026-01-15 " + cause);
    }

    /** VAT Regulations 1995 reg 58(2)(f): an invoice before the goods go. */
    @Test
    void invoicesInAdvanceAreOutsideTheScheme() {
        assertThat(
                        CASH.happens(
                                sale("2026-01-15")
                                        .particular(Particular.INVOICED, "2026-01-15")
                                        .particular(Particular.SENT, "2026-01-16")))
                .containsExactly("2026-01-15 supply uk-sale: 1=200.00 6=1000.00");
    }

    /** VAT Regulations 1995 reg 58(2)(g) and import VAT: on the ordinary days. */
    @Test
    void reverseChargeAndImportsAreOutsideTheScheme() {
        assertThat(
                        CASH.happens(
                                SampleLine.of("expense")
                                        .on("2026-01-15")
                                        .net("100")
                                        .gross("100")
                                        .party("Adverts", "IE", "IE1234567T")
                                        .evidence("invoice"),
                                SampleLine.of("import-vat-paid")
                                        .on("2026-01-16")
                                        .vat("200")
                                        .evidence("import-certificate")))
                .containsExactly(
                        "2026-01-15 supply reverse-charge: 1=20.00 4=20.00 6=100.00 7=100.00",
                        "2026-01-16 supply import-paid: 4=200.00 7=1000.00");
    }

    /** VATA 1994 s.26A does not bite under the scheme: reg 172H(5). */
    @Test
    void noSupplierGoesUnpaidUnderCashAccounting() {
        assertThat(CASH.happens(purchase("2026-01-16").particular(Particular.DUE, "2026-02-15")))
                .containsExactly("2026-01-16 awaiting-payment awaiting-payment: no box");
    }

    private static Settings changing(Map<String, String> choices) {
        return SampleSettings.of(
                SampleSettings.choosing(choices),
                SampleSettings.GB.periods(),
                new Schemes(
                        new TreeMap<>(
                                Map.of(
                                        LocalDate.of(2003, 1, 1), "standard",
                                        LocalDate.of(2025, 1, 1), "cash",
                                        LocalDate.of(2026, 1, 1), "standard")),
                        Optional.empty()));
    }

    /** A supply belongs to the scheme of its tax point, whenever it is paid. */
    @Test
    void joiningTheScheme() {
        Treating book = Treating.of(changing(Map.of()));
        assertThat(book.happens(sale("2024-12-31").paid("2025-02-01")))
                .containsExactly("2024-12-31 supply uk-sale: 1=200.00 6=1000.00");
        assertThat(book.happens(sale("2025-01-01").paid("2025-02-01")))
                .endsWith("2025-02-01 supply uk-sale: 1=200.00 6=1000.00");
    }

    /** Reg 61 as substituted by SI 2004/767: what is unpaid counts in the last period under it. */
    @Test
    void leavingTheScheme() {
        Treating book = Treating.of(changing(Map.of()));
        List<String> happens =
                book.happens(
                        sale("2025-11-01"),
                        received("2025-12-01", "300"),
                        received("2026-02-01", "300"));
        assertThat(without("money-only", happens))
                .containsExactly(
                        "2025-11-01 awaiting-payment awaiting-payment: no box",
                        "2025-12-01 supply uk-sale: 1=50.00 6=250.00",
                        "2025-12-31 supply uk-sale: 1=150.00 6=750.00");
        assertThat(book.happens(sale("2026-01-01").paid("2026-05-01")))
                .containsExactly("2026-01-01 supply uk-sale: 1=200.00 6=1000.00");
    }

    /** HMRC manual VCAS6250: six more months for what is paid in them, the rest at their end. */
    @Test
    void leavingTheSchemeInSixMonths() {
        Treating book = Treating.of(changing(Map.of("leaving-cash-accounting", "six-months")));
        List<String> happens =
                book.happens(
                        sale("2025-11-01"),
                        received("2026-06-30", "300"),
                        received("2026-07-01", "300"));
        assertThat(without("money-only", happens))
                .containsExactly(
                        "2025-11-01 awaiting-payment awaiting-payment: no box",
                        "2026-06-30 supply uk-sale: 1=200.00 6=1000.00");
        List<String> before = book.happens(sale("2025-11-01"), received("2026-06-29", "300"));
        assertThat(without("money-only", before))
                .endsWith(
                        "2026-06-29 supply uk-sale: 1=50.00 6=250.00",
                        "2026-06-30 supply uk-sale: 1=150.00 6=750.00");
    }

    /** Every way of paying: what happens adds up to the whole, to the last ten-thousandth. */
    @ParameterizedTest
    @CsvSource({"17, 333.33, 21.99", "11, 0.01, 1199.98", "13, 599.99, 600"})
    void partsAddUp(String day, String first, String second) {
        SampleLine bill =
                SampleLine.of("sale")
                        .on("2026-01-05")
                        .gross("1199.99")
                        .document("INV-1")
                        .party("Customer", "GB", "");
        Treated whole = STANDARD.one(bill);
        Map<String, Amount> sums = new TreeMap<>();
        CASH.treated(
                        bill,
                        received("2026-02-" + day, first),
                        received("2026-03-01", second),
                        received("2026-04-01", "1200"))
                .forEach(
                        t ->
                                t.boxes()
                                        .forEach(
                                                (box, amount) ->
                                                        sums.merge(box, amount, Amount::plus)));
        assertThat(sums).isEqualTo(new TreeMap<>(whole.boxes()));
    }
}
