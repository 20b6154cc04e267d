package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;
import static quarterfold.treatment.Invoices.paidOut;
import static quarterfold.treatment.Invoices.received;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Decision;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;

/**
 * Payment rows and the documents they pay, under cash accounting, where VAT follows the money: VAT
 * Regulations 1995 reg 57 and VAT Notice 731.
 */
class PaymentsTest {

    private static final Treating CASH = Treating.of(SampleSettings.scheme("cash", ""));

    private static SampleLine sold(String kind, String gross) {
        return SampleLine.of(kind)
                .on("2026-01-15")
                .rate("20")
                .gross(gross)
                .document("INV-1")
                .party("Customer", "GB", "");
    }

    private static SampleLine bought(String kind, String net, String vat) {
        return SampleLine.of(kind)
                .on("2026-01-15")
                .printed(net, vat)
                .rate("20")
                .document("B-1")
                .party("Supplier", "GB", "GB101747696")
                .evidence("invoice");
    }

    private static Decision duplicate(String entry, String of) {
        return new Decision(
                1,
                Decision.Target.ENTRY,
                entry,
                Decision.Action.DUPLICATE_OF,
                of,
                "the same line",
                "A. Keeper",
                LocalDate.of(2026, 10, 5));
    }

    /** What happens but for payments themselves and what waits. */
    private static List<String> counted(Treating book, SampleLine... lines) {
        return book.happens(lines).stream()
                .filter(h -> !h.contains("money-only") && !h.contains("awaiting-payment"))
                .toList();
    }

    private static List<String> asks(SampleLine... lines) {
        return CASH.all(lines).stream().flatMap(t -> t.queries().stream()).map(Query::id).toList();
    }

    /** Delivery and discounts are part of what a sale's document asks to be paid. */
    @Test
    void allLinesOfADocumentShareInAPayment() {
        assertThat(
                        counted(
                                CASH,
                                sold("sale", "108"),
                                sold("delivery", "24"),
                                sold("discount", "18"),
                                sold("discount-reversed", "6"),
                                received("2026-02-20", "60")))
                .as("60 of 120 is half of each line")
                .containsExactly(
                        "2026-02-20 supply uk-sale: 1=9.00 6=45.00",
                        "2026-02-20 supply uk-sale: 1=2.00 6=10.00",
                        "2026-02-20 supply uk-sale-reduced: 1=-1.50 6=-7.50",
                        "2026-02-20 supply uk-sale: 1=0.50 6=2.50");
    }

    /** A refund has a day of its own: it is no less to be paid of the sale. */
    @Test
    void aRefundIsNotOfTheDocument() {
        assertThat(
                        counted(
                                CASH,
                                sold("sale", "120"),
                                sold("sale-refund", "60").on("2026-03-01"),
                                received("2026-02-20", "120")))
                .containsExactly(
                        "2026-02-20 supply uk-sale: 1=20.00 6=100.00",
                        "2026-03-01 supply uk-sale-reduced: 1=-10.00 6=-50.00");
    }

    /** A credit on the supplier's document is less to be paid of it. */
    @Test
    void aCreditReducesWhatIsToBePaid() {
        assertThat(
                        counted(
                                CASH,
                                bought("purchase", "100", "20"),
                                bought("purchase-credit", "50", "10"),
                                paidOut("2026-02-20", "30")))
                .as("30 of 60 is half of both")
                .containsExactly(
                        "2026-02-20 supply uk-purchase: 4=10.00 7=50.00",
                        "2026-02-20 supply uk-purchase-credit: 4=-5.00 7=-25.00");
    }

    /** Several payments of one day are one, and what was taken back on the day is none. */
    @Test
    void paymentsOfOneDay() {
        assertThat(
                        counted(
                                CASH,
                                sold("sale", "120"),
                                received("2026-02-20", "30"),
                                received("2026-02-20", "30"),
                                received("2026-03-01", "12"),
                                received("2026-03-01", "-12"),
                                received("2026-04-01", "60")))
                .containsExactly(
                        "2026-02-20 supply uk-sale: 1=10.00 6=50.00",
                        "2026-04-01 supply uk-sale: 1=10.00 6=50.00");
    }

    /** Rows may stand in any order: the days decide which part each pays. */
    @Test
    void theDaysDecideNotTheRows() {
        SampleLine first = received("2026-02-20", "119.99");
        SampleLine second = received("2026-03-20", "0.02");
        assertThat(asks(sold("sale", "120"), second, first))
                .as("the later payment is the one above")
                .containsExactly("E2/customer-payment-above-document");
        assertThat(asks(sold("sale", "120"), first, second))
                .containsExactly("E3/customer-payment-above-document");
        assertThat(asks(sold("sale", "120"), first.on("2026-03-20"), second))
                .as("of one day the later row")
                .containsExactly("E3/customer-payment-above-document");
    }

    @ParameterizedTest(name = "{0} of 120")
    @CsvSource({"119.99, false", "120.00, false", "120.01, true"})
    void moreThanTheDocumentAsks(String paid, boolean above) {
        assertThat(asks(sold("sale", "120"), received("2026-02-20", paid)))
                .isEqualTo(above ? List.of("E2/customer-payment-above-document") : List.of());
        assertThat(asks(bought("purchase", "100", "20"), paidOut("2026-02-20", paid)))
                .isEqualTo(above ? List.of("E2/supplier-payment-above-document") : List.of());
    }

    /** A document is its number and its party; one that is for nothing cannot be paid. */
    @Test
    void aPaymentOfNoDocument() {
        assertThat(asks(sold("sale", "120").document("INV-2"), received("2026-02-20", "120")))
                .containsExactly("E2/customer-payment-without-document");
        assertThat(
                        asks(
                                sold("sale", "120").party("Another", "GB", ""),
                                received("2026-02-20", "120")))
                .containsExactly("E2/customer-payment-without-document");
        assertThat(asks(sold("sale", "120"), received("2026-02-20", "120").document("")))
                .containsExactly("E2/customer-payment-without-document");
        assertThat(asks(paidOut("2026-02-20", "120")))
                .containsExactly("E1/supplier-payment-without-document");
        assertThat(asks(bought("purchase-credit", "100", "20"), paidOut("2026-02-20", "120")))
                .containsExactly("E2/supplier-payment-without-document");
        assertThat(asks(sold("sale", "0"), received("2026-02-20", "10")))
                .containsExactly("E2/customer-payment-without-document");
        assertThat(asks(SampleLine.of("payout").gross("120").document("INV-1"))).isEmpty();
    }

    /** What a person decided to be entered twice neither pays nor is to be paid. */
    @Test
    void duplicatesArePassedOver() {
        assertThat(
                        counted(
                                CASH.deciding(duplicate("3", "2")),
                                sold("sale", "120"),
                                received("2026-02-20", "60"),
                                received("2026-02-21", "60")))
                .containsExactly(
                        "2026-02-20 supply uk-sale: 1=10.00 6=50.00",
                        "2026-02-21 supply duplicate: no box");
        assertThat(
                        counted(
                                CASH.deciding(duplicate("2", "1")),
                                sold("sale", "120"),
                                sold("sale", "120"),
                                received("2026-02-20", "60")))
                .as("half of one document of 120, not a quarter of 240")
                .contains("2026-02-20 supply uk-sale: 1=10.00 6=50.00");
    }

    /** HMRC manual VCAS5150: a channel collects for its seller, and keeps its own fees. */
    @ParameterizedTest(name = "{0}, settlement {2}, stated {3}: {4}")
    @CsvSource({
        "sale, Quaylark, '', '', 2026-01-15",
        "sale, '', QL-7, '', 2026-01-15",
        "sale, '', '', 2026-02-02, 2026-02-02",
        "sale, '', '', '', ''",
        "fee, Quaylark, '', '', 2026-01-15",
        "fee, Quaylark, '', 2026-02-02, 2026-02-02",
        "fee, '', '', '', ''",
        "purchase, Quaylark, '', '', ''",
        "purchase, Quaylark, QL-7, '', ''"
    })
    void paidWithoutRows(
            String kind, String channel, String settlement, String paid, String counts) {
        SampleLine line =
                (kind.equals("sale") ? sold(kind, "120") : bought(kind, "100", "20"))
                        .settlement(settlement);
        if (!channel.isEmpty()) {
            line.channel(channel, "no");
        }
        if (!paid.isEmpty()) {
            line.paid(paid);
        }
        assertThat(counted(CASH, line).stream().map(h -> h.substring(0, 10)).toList())
                .isEqualTo(counts.isEmpty() ? List.of() : List.of(counts));
    }

    /** Payment rows stand above the day that the document states. */
    @Test
    void rowsGoBeforeTheStatedDay() {
        assertThat(
                        counted(
                                CASH,
                                bought("purchase", "100", "20").paid("2026-02-02"),
                                paidOut("2026-03-03", "120")))
                .containsExactly("2026-03-03 supply uk-purchase: 4=20.00 7=100.00");
        assertThat(
                        counted(
                                CASH,
                                bought("purchase", "100", "20").paid("2026-02-02").document("B-9"),
                                paidOut("2026-03-03", "120")))
                .containsExactly("2026-02-02 supply uk-purchase: 4=20.00 7=100.00");
    }
}
