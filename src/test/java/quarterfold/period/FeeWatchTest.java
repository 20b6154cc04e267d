package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;

/** Which invoices are those of a channel that takes its fees off settlements. */
class FeeWatchTest {
    @TempDir Path folder;
    private TempBook book;

    @BeforeEach
    void open() {
        book =
                new TempBook(
                        folder, SampleSettings.registered(LocalDate.of(2026, 1, 1), "3 6 9 12"));
    }

    @AfterEach
    void close() {
        book.close();
    }

    private static SampleLine settlementFee(String kind, String channel, String gross) {
        return SampleLine.of(kind).gross(gross).channel(channel, "no").settlement("ST-1");
    }

    /** An e-invoice is entered as a purchase of whoever made it out. */
    @ParameterizedTest(name = "{0} {1}: {2}")
    @CsvSource({
        "Quaylark, '', false",
        "Quaylark Services Ltd, GB101747696, false",
        "Quaylark Britain, GB000480437, false",
        "Quaylark Services Ltd, '', true"
    })
    void anInvoiceOfTheChannelThatIsNotCalledFees(String party, String number, boolean asked) {
        book.enter(
                "all.csv",
                settlementFee("fee", "Quaylark", "30").party("", "GB", "GB101747696"),
                SampleLine.of("fee")
                        .on("2026-03-31")
                        .printed("10", "2")
                        .rate("20")
                        .channel("Quaylark", "no")
                        .party("Quaylark Britain", "GB", "GB000480437")
                        .evidence("invoice"),
                SampleLine.of("purchase")
                        .printed("10", "2")
                        .rate("20")
                        .document("QS-1")
                        .party(party, "GB", number)
                        .evidence("invoice"));
        assertThat(TempBook.queries(book.of("2026-09")))
                .filteredOn(id -> id.endsWith("fees-without-invoice"))
                .isEqualTo(asked ? List.of("2026-09/Quaylark/fees-without-invoice") : List.of());
    }

    /** An invoice that names its channel is of that one, though one company bills for two. */
    @Test
    void anInvoiceOfOneOfTwoChannelsOfACompany() {
        SampleLine invoice =
                SampleLine.of("fee")
                        .printed("10", "2")
                        .rate("20")
                        .channel("Norrowby", "no")
                        .party("Two Channels Ltd", "GB", "GB101747696")
                        .evidence("invoice");
        book.enter(
                "all.csv",
                settlementFee("fee", "Quaylark", "30"),
                settlementFee("fee", "Norrowby", "30"),
                invoice,
                SampleLine.of("fee")
                        .on("2026-03-31")
                        .printed("10", "2")
                        .rate("20")
                        .channel("Quaylark", "no")
                        .party("Two Channels Ltd", "GB", "GB101747696")
                        .evidence("invoice"));
        assertThat(TempBook.queries(book.of("2026-09")))
                .containsExactly("2026-09/Quaylark/fees-without-invoice");
    }

    /** Rows of the settlement itself, shop purchases and what is not held are no fee invoice. */
    @ParameterizedTest(name = "settlement {0}, category {1}, evidence {2}: {3}")
    @CsvSource({
        "'', '', invoice, false",
        "'', '', simplified, false",
        "ST-1, '', invoice, true",
        "'', packaging, invoice, true",
        "'', '', missing, true",
        "'', '', unstated, true"
    })
    void aPurchaseOfTheChannelThatIsNoFeeInvoice(
            String settlement, String category, String evidence, boolean asked) {
        SampleLine tape =
                SampleLine.of("expense")
                        .printed("7.49", "1.50")
                        .rate("20")
                        .document("QS-1")
                        .party("Quaylark", "GB", "GB101747696")
                        .settlement(settlement)
                        .category(category);
        book.enter(
                "all.csv",
                settlementFee("fee", "Quaylark", "30"),
                evidence.equals("unstated") ? tape : tape.evidence(evidence));
        assertThat(TempBook.queries(book.of("2026-09")))
                .filteredOn(id -> id.endsWith("fees-without-invoice"))
                .isEqualTo(asked ? List.of("2026-09/Quaylark/fees-without-invoice") : List.of());
    }

    /** Fees of which nobody is named, and a fee document without names. */
    @ParameterizedTest(name = "{0}, party {1}: {2}")
    @CsvSource({"fee, '', false", "expense, '', true", "fee, Norrowby, true"})
    void feesOfNobody(String kind, String party, boolean asked) {
        book.enter(
                "all.csv",
                settlementFee("fee", "", "30"),
                SampleLine.of(kind)
                        .printed("10", "2")
                        .rate("20")
                        .document("QS-1")
                        .party(party, "GB", "")
                        .evidence("invoice"));
        assertThat(TempBook.queries(book.of("2026-09")))
                .filteredOn(id -> id.endsWith("fees-without-invoice"))
                .isEqualTo(asked ? List.of("2026-09//fees-without-invoice") : List.of());
    }
}
