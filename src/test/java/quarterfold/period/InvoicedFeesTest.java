package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.money.Amount;
import quarterfold.treatment.Query;
import quarterfold.treatment.TakenUp;

/**
 * Settlements that claim the VAT of fees and come after the close of a return that claimed it on
 * the channel's invoice. VAT Regulations 1995 reg 29(4): input tax is never deducted twice. The
 * amounts are our own.
 */
class InvoicedFeesTest {
    @TempDir Path folder;
    private TempBook book;

    @BeforeEach
    void open() {
        book =
                new TempBook(
                        folder.resolve("book"),
                        SampleSettings.registered(LocalDate.of(2026, 1, 1), "3 6 9 12"));
        book.enter("invoice.csv", fee("2026-03-31", "100", "20").document("QS-1"));
        assertThat(book.close("2026-03").box("4").text()).isEqualTo("20.00");
    }

    @AfterEach
    void close() {
        book.close();
    }

    private static SampleLine fee(String day, String net, String vat) {
        return SampleLine.of("fee")
                .on(day)
                .party("Quaylark Services (Britain) Ltd", "GB", "GB101747696")
                .channel("Quaylark", "no")
                .category("channel-fee")
                .rate("20")
                .evidence("invoice")
                .printed(net, vat);
    }

    private void settle(String day) {
        book.enter(
                "settlement.csv",
                fee(day, "60", "12").settlement("QL-1"),
                fee(day, "40", "8").settlement("QL-1"));
    }

    private VatReturn june() {
        return book.of("2026-06");
    }

    /** The lines claim 20.00 late, and what was claimed on the invoice is taken back: 0.00. */
    @Test
    void theInvoiceIsTakenBackAndAsked() {
        settle("2026-03-15");
        VatReturn june = june();
        assertThat(june.box("4").text()).isEqualTo("0.00");
        assertThat(june.holdingClose())
                .containsExactly(
                        new Query(
                                "E1/fees-claimed-twice",
                                OptionalLong.of(1),
                                "invoice.csv row 2",
                                "Document QS-1 seems to charge fees of 120.00, and fees of the same channel are"
                                        + " claimed on its settlements too, such as entry 2. Input tax is"
                                        + " claimed once, so the document is in no box, and what a closed return"
                                        + " claimed on it is taken back. If it is for those fees: decide"
                                        + " --entry 1 --duplicate-of 2. If it is for others: decide --entry 1"
                                        + " --treat-as uk-purchase.",
                                Amount.of("120")));
        assertThat(june.corrections().rows())
                .filteredOn(row -> row.entry() == 1)
                .extracting(Correction::takenUp, Correction::why)
                .containsExactly(tuple(TakenUp.ERROR, "its fees are claimed on settlements too"));
        assertThat(book.differences()).isEmpty();
    }

    /** Lines of other days, {@code fee-invoice-lines} of limits.csv: the two are two claims. */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({"2026-02-28, 0.00", "2026-02-27, 20.00", "2026-04-01, 20.00"})
    void linesOfOtherDays(String day, String box4) {
        settle(day);
        assertThat(june().box("4").text()).isEqualTo(box4);
    }

    /** Both answers that the question names. */
    @ParameterizedTest(name = "{0} {1}: {2}")
    @CsvSource({"duplicate-of, 2, 0.00", "treat-as, uk-purchase, 20.00"})
    void aPersonSaysWhichFeesTheyAre(String action, String value, String box4) {
        settle("2026-03-15");
        book.decide("entry", "1", action, value);
        assertThat(june().box("4").text()).isEqualTo(box4);
        assertThat(june().holdingClose()).isEmpty();
        book.close("2026-06");
        assertThat(book.differences()).isEmpty();
        assertThat(book.of("2026-09").box("4").text()).isEqualTo("0.00");
    }

    /** What was put right is not found again. */
    @Test
    void setAsideTheInvoiceStaysTakenBack() {
        settle("2026-03-15");
        assertThat(book.close("2026-06").box("4").text()).isEqualTo("0.00");
        assertThat(book.of("2026-09").corrections().rows()).isEmpty();
        assertThat(book.of("2026-09").queries()).isEqualTo(List.of());
        assertThat(book.differences()).isEmpty();
    }
}
