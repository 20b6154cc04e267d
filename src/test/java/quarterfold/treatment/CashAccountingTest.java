package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;
import static quarterfold.treatment.Invoices.paidOut;
import static quarterfold.treatment.Invoices.purchase;
import static quarterfold.treatment.Invoices.received;
import static quarterfold.treatment.Invoices.sale;
import static quarterfold.treatment.Invoices.without;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Schemes;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;

/**
 * Supplies under cash accounting, that count when they are paid: VAT Regulations 1995 regs 56 to
 * 65.
 */
class CashAccountingTest {

    private static final Treating STANDARD = Treating.gb();
    private static final Treating CASH = Treating.of(SampleSettings.scheme("cash", ""));

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

    /** What an entry says of a part that is asked about is asked with its first part alone. */
    @Test
    void aQuestionIsAskedOncePerEntry() {
        assertThat(
                        CASH
                                .treated(
                                        purchase("2026-01-15").evidence("missing"),
                                        paidOut("2026-02-01", "600"),
                                        paidOut("2026-03-01", "600"))
                                .stream()
                                .filter(t -> !t.treatment().equals("money-only"))
                                .map(t -> t.occasion().day() + " " + t.queries().size()))
                .containsExactly("2026-01-15 0", "2026-02-01 1", "2026-03-01 0");
        assertThat(
                        CASH.treated(purchase("2026-01-15").evidence("missing").paid("2026-01-15"))
                                .get(0)
                                .queries())
                .hasSize(1);
    }

    private static Timing timing(Treating book, SampleLine... lines) {
        return new Timing(
                book.context(
                        IntStream.range(0, lines.length)
                                .mapToObj(i -> lines[i].entry(i + 1))
                                .toList()));
    }

    /** What a period must look for beside its own entries, by scheme and by payment rows. */
    @Test
    void whatCountsWhenItIsPaid() {
        Timing cash = timing(CASH, sale("2026-01-15"), received("2026-02-20", "400"));
        assertThat(cash.countsPayments()).isTrue();
        assertThat(cash.reckonings()).isEmpty();
        assertThat(cash.mayBePaidByRows(sale("2026-01-15").entry(1).profile())).isTrue();
        assertThat(cash.mayBePaidByRows(purchase("2026-01-15").entry(1).profile())).isFalse();
        assertThat(timing(STANDARD).countsPayments()).isFalse();
        assertThat(timing(STANDARD).reckonings()).isEmpty();
    }

    /** VAT Regulations 1995 reg 61; HMRC manual VCAS6250: once for each time it is left. */
    @Test
    void theDaysOfReckoning() {
        assertThat(timing(Treating.of(changing(Map.of()))).reckonings())
                .containsExactly(LocalDate.of(2025, 12, 31));
        assertThat(
                        timing(
                                        Treating.of(
                                                changing(
                                                        Map.of(
                                                                "leaving-cash-accounting",
                                                                "six-months"))))
                                .reckonings())
                .containsExactly(LocalDate.of(2026, 6, 30));
    }

    /** A scheme that is left and joined again: each supply waits for the end of its own time. */
    @Test
    void leavingTheSchemeTwice() {
        Treating book =
                Treating.of(
                        SampleSettings.of(
                                SampleSettings.GB,
                                SampleSettings.GB.periods(),
                                new Schemes(
                                        new TreeMap<>(
                                                Map.of(
                                                        LocalDate.of(2003, 1, 1), "cash",
                                                        LocalDate.of(2025, 1, 1), "standard",
                                                        LocalDate.of(2025, 7, 1), "cash",
                                                        LocalDate.of(2026, 1, 1), "standard")),
                                        Optional.empty())));
        assertThat(timing(book).reckonings())
                .containsExactly(LocalDate.of(2024, 12, 31), LocalDate.of(2025, 12, 31));
        assertThat(book.happens(sale("2024-12-01")))
                .endsWith("2024-12-31 supply uk-sale: 1=200.00 6=1000.00");
        assertThat(book.happens(sale("2025-12-01")))
                .endsWith("2025-12-31 supply uk-sale: 1=200.00 6=1000.00");
        assertThat(book.happens(sale("2025-02-01").paid("2025-08-01")))
                .containsExactly("2025-02-01 supply uk-sale: 1=200.00 6=1000.00");
    }

    /** A document of nothing has nothing to be paid: it counts on its day. */
    @Test
    void aDocumentOfNothing() {
        assertThat(CASH.happens(sale("2026-01-15").gross("0")))
                .containsExactly("2026-01-15 supply uk-sale: no box");
    }
}
