package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Profile;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;

/** Sales that wait for evidence of export, and what belongs to them: HMRC manual VEXP30300. */
class ExportEvidenceTest {

    private static final ExportEvidence EVIDENCE = new ExportEvidence(Treating.LAW);

    private static SampleLine export(String kind, String day, String gross) {
        return SampleLine.of(kind).on(day).gross(gross).goods("", "US");
    }

    private static SampleLine sale() {
        return export("sale", "2026-01-10", "600");
    }

    private static SampleLine refund() {
        return export("sale-refund", "2026-02-01", "300");
    }

    /** Goods that go to another country, by any line of the sale, without evidence yet. */
    @ParameterizedTest(name = "{0} to {1}, evidence {2}: {3}")
    @CsvSource({
        "sale, US, unstated, true",
        "sale, IE, unstated, true",
        "sale, US, missing, true",
        "sale, US, export, false",
        "sale, GB, unstated, false",
        "sale, XI, unstated, false",
        "sale, '', unstated, false",
        "delivery, US, unstated, true",
        "sale-refund, US, unstated, true",
        "purchase, US, unstated, false",
        "stock-moved, US, unstated, false",
    })
    void mayBeAwaited(String kind, String to, String evidence, boolean may) {
        SampleLine line = SampleLine.of(kind).goods("", to).evidence(evidence).gross("10");
        assertThat(EVIDENCE.mayBeAwaited(line.entry(1).profile())).isEqualTo(may);
    }

    /** Three months back, and three days, since months differ in length. */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({"2026-04-10, 2026-01-07", "2026-05-31, 2026-02-25", "1995-10-19, 1995-10-19"})
    void theFirstSaleWhoseTimeCanRunOut(LocalDate day, LocalDate first) {
        assertThat(EVIDENCE.earliestFor(day)).isEqualTo(first);
        for (int before = 0; before < 400; before++) {
            LocalDate sold = day.minusDays(before);
            boolean runsOut = !sold.plusMonths(3).isBefore(day);
            assertThat(sold.isBefore(first) && runsOut && day.isAfter(LocalDate.of(1995, 10, 19)))
                    .as("sold %s", sold)
                    .isFalse();
        }
    }

    /** What happens on the day the time runs out, in boxes. */
    private static List<String> due(Treating book, SampleLine... lines) {
        return book.happens(lines).stream().filter(h -> h.contains("export-time-up")).toList();
    }

    private static List<String> due(SampleLine... lines) {
        return due(Treating.gb(), lines);
    }

    private static final String OF_THE_SALE =
            "2026-04-10 export-time-up export-overdue: 1=100.00 6=-100.00";

    private static final String OF_THE_REFUND =
            "2026-04-10 export-time-up export-overdue-reduced: 1=-50.00 6=50.00";

    /** A refund belongs to the sale of its channel and order; else of its party and document. */
    @Test
    void aRefundFindsItsSale() {
        assertThat(
                        due(
                                sale().channel("Quaylark", "no").order("Q-1"),
                                refund().channel("Quaylark", "no").order("Q-1")))
                .containsExactly(OF_THE_SALE, OF_THE_REFUND);
        assertThat(
                        due(
                                sale().party("Buyer", "US", "").document("INV-1"),
                                refund().party("Buyer", "US", "").document("INV-1")))
                .containsExactly(OF_THE_SALE, OF_THE_REFUND);
        assertThat(due(sale().order("Q-1"), refund().order("Q-2"))).containsExactly(OF_THE_SALE);
        assertThat(
                        due(
                                sale().channel("Quaylark", "no").order("Q-1"),
                                refund().channel("Other", "no").order("Q-1")))
                .containsExactly(OF_THE_SALE);
        assertThat(
                        due(
                                sale().party("Buyer", "US", "").document("INV-1"),
                                refund().party("Another", "US", "").document("INV-1")))
                .containsExactly(OF_THE_SALE);
        assertThat(due(sale(), refund())).as("nothing names them").containsExactly(OF_THE_SALE);
        assertThat(due(sale().document("1"), refund().order("1")))
                .as("an order is no document")
                .containsExactly(OF_THE_SALE);
    }

    /** VATA 1994 s.6(2): the time runs from the removal of the goods, for the refund too. */
    @Test
    void theTimeRunsFromTheDayTheGoodsWereSent() {
        assertThat(
                        due(
                                sale().order("Q-1").particular(Particular.SENT, "2026-01-20"),
                                refund().order("Q-1")))
                .containsExactly(
                        "2026-04-20 export-time-up export-overdue: 1=100.00 6=-100.00",
                        "2026-04-20 export-time-up export-overdue-reduced: 1=-50.00 6=50.00");
    }

    /** Nothing falls due of a refund whose sale had its evidence in time or from the start. */
    @Test
    void aRefundOfAnEvidencedSale() {
        assertThat(due(sale().order("Q-1").evidence("export"), refund().order("Q-1"))).isEmpty();
        assertThat(
                        due(
                                sale().order("Q-1").particular(Particular.EVIDENCED, "2026-04-10"),
                                refund().order("Q-1")))
                .isEmpty();
        assertThat(
                        due(
                                sale().order("Q-1")
                                        .evidence("export")
                                        .particular(Particular.EVIDENCED, "2026-04-11"),
                                refund().order("Q-1")))
                .as("evidence that came a day late")
                .containsExactly(OF_THE_SALE, OF_THE_REFUND);
    }

    /** The first sale of an order stands for the order; a decision may state its day. */
    @Test
    void decisionsAndSeveralSalesOfOneOrder() {
        assertThat(
                        due(
                                sale().order("Q-1"),
                                export("sale", "2026-01-20", "60").order("Q-1"),
                                refund().order("Q-1")))
                .containsExactly(
                        OF_THE_SALE,
                        "2026-04-20 export-time-up export-overdue: 1=10.00 6=-10.00",
                        OF_THE_REFUND);
        Treating decided =
                Treating.gb()
                        .deciding(
                                new Decision(
                                        1,
                                        Decision.Target.ENTRY,
                                        "1",
                                        Decision.Action.STATE,
                                        "evidenced=2026-03-01",
                                        "the waybill came",
                                        "A. Keeper",
                                        LocalDate.of(2026, 10, 5)));
        assertThat(due(decided, sale().order("Q-1"), refund().order("Q-1"))).isEmpty();
    }

    /** A delivery charge and a discount stand or fall with the goods. */
    @Test
    void deliveryAndDiscountOfAnExport() {
        assertThat(
                        due(
                                sale().order("Q-1"),
                                export("delivery", "2026-01-10", "12").order("Q-1"),
                                export("discount", "2026-01-10", "24").order("Q-1")))
                .containsExactly(
                        OF_THE_SALE,
                        "2026-04-10 export-time-up export-overdue: 1=2.00 6=-2.00",
                        "2026-04-10 export-time-up export-overdue-reduced: 1=-4.00 6=4.00");
    }

    /** VATA 1994 s.6(4): a deposit is a supply of its own day, and waits for the same evidence. */
    @Test
    void aDepositOnAnExport() {
        SampleLine sale =
                sale().document("INV-1")
                        .party("Buyer", "US", "")
                        .particular(Particular.SENT, "2026-01-20");
        SampleLine deposit =
                SampleLine.of("customer-payment")
                        .on("2026-01-05")
                        .gross("150")
                        .document("INV-1")
                        .party("Buyer", "US", "");
        assertThat(without(Treating.gb().happens(sale, deposit)))
                .containsExactly(
                        "2026-01-05 supply export-awaited: 6=150.00",
                        "2026-01-20 supply export-awaited: 6=450.00",
                        "2026-04-20 export-time-up export-overdue: 1=100.00 6=-100.00");
        assertThat(
                        without(
                                Treating.gb()
                                        .happens(
                                                sale.particular(Particular.EVIDENCED, "2026-04-21"),
                                                deposit)))
                .endsWith(
                        "2026-04-20 export-time-up export-overdue: 1=100.00 6=-100.00",
                        "2026-04-21 export-evidenced export-evidenced: 1=-100.00 6=100.00");
    }

    /** Under cash accounting only what was paid has been zero-rated and can fall due. */
    @Test
    void underCashAccountingWhatWasPaidFallsDue() {
        Treating cash = Treating.of(SampleSettings.scheme("cash", ""));
        SampleLine sale = sale().document("INV-1").party("Buyer", "US", "");
        SampleLine[] lines = {
            sale, received("2026-02-01", "150"), received("2026-05-01", "450"),
        };
        assertThat(without(cash.happens(lines)))
                .containsExactly(
                        "2026-01-10 awaiting-payment awaiting-payment: no box",
                        "2026-02-01 supply export-awaited: 6=150.00",
                        "2026-04-10 export-time-up export-overdue: 1=25.00 6=-25.00",
                        "2026-05-01 supply export-awaited: 6=450.00",
                        "2026-05-01 export-time-up export-overdue: 1=75.00 6=-75.00");
        lines[0] = sale.particular(Particular.EVIDENCED, "2026-04-20");
        assertThat(without(cash.happens(lines)))
                .as("what is paid after the evidence came never falls due")
                .containsExactly(
                        "2026-01-10 awaiting-payment awaiting-payment: no box",
                        "2026-02-01 supply export-awaited: 6=150.00",
                        "2026-04-10 export-time-up export-overdue: 1=25.00 6=-25.00",
                        "2026-04-20 export-evidenced export-evidenced: 1=-25.00 6=25.00",
                        "2026-05-01 supply export-awaited: 6=450.00");
    }

    private static SampleLine received(String day, String money) {
        return SampleLine.of("customer-payment")
                .on(day)
                .gross(money)
                .document("INV-1")
                .party("Buyer", "US", "");
    }

    private static List<String> without(List<String> happens) {
        return happens.stream().filter(h -> !h.contains("money-only")).toList();
    }

    /** Without sales of that kind nothing waits, whatever a refund says of its country. */
    @Test
    void whetherThereIsAnySale() {
        assertThat(timing(refund()).mayReachFromAnyTime(profile(refund()))).isFalse();
        Timing timing = timing(sale().order("Q-1"), refund().order("Q-1"));
        assertThat(timing.mayReachFromAnyTime(profile(refund()))).isTrue();
        assertThat(timing.mayReachFromAnyTime(profile(sale()))).isFalse();
        assertThat(timing.mayReachFromMonthsBefore(profile(sale()))).isTrue();
        assertThat(timing.mayReachFromMonthsBefore(profile(refund()))).isFalse();
        assertThat(timing.mayReachFromMonthsBefore(profile(SampleLine.of("sale")))).isFalse();
        assertThat(timing.earliestExport(LocalDate.of(2026, 4, 10)))
                .isEqualTo(LocalDate.of(2026, 1, 7));
    }

    private static Profile profile(SampleLine line) {
        return line.entry(1).profile();
    }

    private static Timing timing(SampleLine... lines) {
        return new Timing(
                Treating.gb()
                        .context(
                                IntStream.range(0, lines.length)
                                        .mapToObj(i -> lines[i].entry(i + 1))
                                        .toList()));
    }
}
