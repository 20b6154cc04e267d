package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;

/** What counts in the share of a period, and the working as it is told: reg 101, 105A and 106. */
class InputTaxInShareTest {

    @TempDir private Path folder;
    private TempBook book;

    @BeforeEach
    void open() {
        book =
                new TempBook(
                        folder,
                        SampleSettings.choosing(
                                Map.of("partial-exemption-share", "current-period")));
    }

    @AfterEach
    void close() {
        book.close();
    }

    private static SampleLine sale(String net, String rate) {
        return SampleLine.of("sale").net(net).rate(rate);
    }

    private static SampleLine bought(String net, String vat, String use) {
        return SampleLine.of("purchase")
                .printed(net, vat)
                .rate("20")
                .category("stock")
                .party("Example supplier", "GB", "GB101747696")
                .evidence("invoice")
                .particular(Particular.USE, use);
    }

    /** Reg 29(1): VAT claimed when its document is held is input tax of that period. */
    @Test
    void aLateClaimIsInputTax() {
        book.enter(
                "a.csv",
                sale("50000", "exempt"),
                bought("15000", "3000", "exempt")
                        .on("2026-06-20")
                        .particular(Particular.HELD, "2026-08-05"));
        assertThat(book.of("2026-09").box("7").text()).as("claimed here").isEqualTo("15000");
        assertThat(book.of("2026-09").box("4").text()).isEqualTo("0.00");
    }

    /** Goods put to private use are a supply; a refund takes its supply back. */
    @Test
    void privateUseIsASupplyAndARefundIsNone() {
        book.enter(
                "a.csv",
                sale("60000", "exempt"),
                sale("20000", "0"),
                SampleLine.of("private-use").net("30000").rate("0"),
                SampleLine.of("sale-refund").net("10000").rate("0"),
                bought("50000", "10000", "both"));
        assertThat(book.of("2026-09").box("4").text())
                .as("40,000 of 100,000 is 40 per cent")
                .isEqualTo("4000.00");
    }

    private String working() {
        return book.of("2026-09").adjustments().get(0).why();
    }

    @Test
    void theSimplerTestMet() {
        book.enter(
                "a.csv",
                sale("60000", "0"),
                sale("40000", "exempt"),
                bought("5000", "1000", "exempt"));
        assertThat(working())
                .endsWith(
                        "Input tax other than for taxable supplies, 1000.00, is not above 1875.00 (625.00 a month for 3 months), and exempt supplies, 40000.00, are not above 50% of all supplies, 100000.00: all is deducted.");
    }

    @Test
    void onlyTheFullTestMet() {
        book.enter(
                "a.csv",
                sale("40000", "0"),
                sale("60000", "exempt"),
                bought("5000", "1000", "exempt"),
                bought("10000", "2000", "taxable"));
        assertThat(working())
                .endsWith(
                        "Input tax other than for taxable supplies, 1000.00, is not above 1875.00 (625.00 a month for 3 months), and exempt supplies, 60000.00, are above 50% of all supplies, 100000.00: the simpler test is not met. Input tax for exempt supplies, 1000.00, is not above 1875.00 (625.00 a month for 3 months) and not above 50% of all input tax, 3000.00: all is deducted.");
    }

    @Test
    void smallButMoreThanHalf() {
        book.enter(
                "a.csv",
                sale("40000", "0"),
                sale("60000", "exempt"),
                bought("5000", "1000", "exempt"));
        assertThat(working())
                .endsWith(
                        "Input tax for exempt supplies, 1000.00, is not above 1875.00 (625.00 a month for 3 months) and above 50% of all input tax, 1000.00: it is not deducted.");
    }

    /** Reg 101(2)(d): without a taxable supply nothing of what is for both is deducted. */
    @Test
    void noTaxableSupplies() {
        book.enter("a.csv", sale("60000", "exempt"), bought("50000", "10000", "both"));
        assertThat(working())
                .contains(
                        "Of the part for both 0% is for taxable supplies, which is 0.00 (taxable supplies 0.00 of 60000.00). For exempt supplies: 10000.00.");
        assertThat(book.of("2026-09").box("4").text()).isEqualTo("0.00");
    }
}
