package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;

/** The three months for evidence that goods left: both sides of their last day. */
class ExportTimeTest {

    private static final Treating STANDARD = Treating.gb();

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

    /**
     * VATA 1994 s.19(2): the VAT is inside what is paid. An export is invoiced without VAT, so that
     * its net value is the whole price, with a printed nought or without.
     */
    @Test
    void theWholePriceHoldsTheVat() {
        SampleLine sold = SampleLine.of("sale").on("2026-01-10").goods("", "US").order("Q-1");
        for (SampleLine line : List.of(sold.printed("600", "0"), sold.net("600"))) {
            assertThat(STANDARD.happens(line.particular(Particular.EVIDENCED, "2026-08-05")))
                    .containsExactly(
                            "2026-01-10 supply export-awaited: 6=600.00",
                            "2026-04-10 export-time-up export-overdue: 1=100.00 6=-100.00",
                            "2026-08-05 export-evidenced export-evidenced: 1=-100.00 6=100.00");
        }
    }

    /** A credit note has a number of its own, and names the invoice it takes from. */
    @Test
    void aCreditNoteThatNamesItsInvoice() {
        SampleLine sold =
                SampleLine.of("sale")
                        .on("2026-01-10")
                        .printed("106", "0")
                        .goods("", "US")
                        .party("A. Customer", "US", "")
                        .document("INV 1");
        SampleLine credit =
                SampleLine.of("sale-refund")
                        .on("2026-01-20")
                        .printed("106", "0")
                        .goods("", "US")
                        .party("A. Customer", "US", "")
                        .document("CN-1");
        assertThat(STANDARD.happens(sold, credit.particular(Particular.FOLLOWS, "INV-0,INV1")))
                .containsExactly(
                        "2026-01-10 supply export-awaited: 6=106.00",
                        "2026-04-10 export-time-up export-overdue: 1=17.6667 6=-17.6667",
                        "2026-01-20 supply export-awaited-reduced: 6=-106.00",
                        "2026-04-10 export-time-up export-overdue-reduced: 1=-17.6667 6=17.6667");
        assertThat(STANDARD.happens(sold, credit.particular(Particular.FOLLOWS, "INV-2")))
                .endsWith("2026-01-20 supply export-awaited-reduced: 6=-106.00");
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

    /** VAT Regulations 1995 reg 38(3)(b): the VAT that is due is that on what is left. */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({
        "2026-04-10, ', less that in what was credited by then (entry 2 of 300.00 GBP)'",
        "2026-04-11, ''"
    })
    void theQuestionNamesWhatWasCredited(String day, String less) {
        assertThat(STANDARD.treated(export("2026-01-10"), refund(day)))
                .flatExtracting(Treated::queries)
                .filteredOn(q -> q.id().equals("E1/export-overdue"))
                .extracting(Query::question)
                .containsExactly(
                        "Evidence that goods of 600.00 left was not held within 3 months of 2026-01-10, so"
                                + " their VAT of 100.00 is due now"
                                + less
                                + ". When the evidence comes, enter its day as evidenced: the VAT is then"
                                + " taken back.");
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
}
