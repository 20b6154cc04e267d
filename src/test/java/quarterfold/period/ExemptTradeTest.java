package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;

/**
 * Partial exemption begins with the one thing in a book that says there is exempt trade, whichever
 * it is: VAT Regulations 1995 reg 101(1), supplies made and purchases to be used for them.
 */
class ExemptTradeTest {

    private static final String ASKED =
            "The business makes exempt supplies, and purchases with VAT of 3000.00 do not state what they are used for (entry %d). That VAT is not reclaimed. State use as taxable, exempt or both.";

    @TempDir private Path folder;
    private TempBook book;

    @BeforeEach
    void open() {
        book = new TempBook(folder, SampleSettings.GB);
    }

    @AfterEach
    void close() {
        book.close();
    }

    private static SampleLine sale(String net) {
        return SampleLine.of("sale").net(net);
    }

    private static SampleLine bought(String vat) {
        return SampleLine.of("purchase")
                .net("15000")
                .vat(vat)
                .rate("20")
                .category("stock")
                .party("Example supplier", "GB", "GB101747696")
                .evidence("invoice");
    }

    private String claimed() {
        return book.of("2026-09").box("4").text();
    }

    /** VAT Regulations 1995 reg 101(2): only what is used for taxable supplies is deducted. */
    private void assertAskedAndKeptBack(int entry) {
        assertThat(claimed()).isEqualTo("0.00");
        assertThat(book.of("2026-09").queries())
                .extracting(q -> q.id() + " " + q.question())
                .containsExactly("2026-09/partial-exemption-use " + ASKED.formatted(entry));
    }

    @Test
    void anExemptSaleAlone() {
        book.enter("a.csv", sale("70000").rate("exempt"), bought("3000"));
        assertAskedAndKeptBack(2);
    }

    @Test
    void theListOfProductsAlone() throws IOException {
        book.enter("a.csv", sale("70000").product("LESSON"), bought("3000"));
        assertThat(claimed()).as("nothing says yet that lessons are exempt").isEqualTo("3000.00");
        book.products("LESSON,exempt,2003-01-01,\n");
        assertAskedAndKeptBack(2);
    }

    @Test
    void aDecisionOnASaleAlone() {
        book.enter("a.csv", sale("70000"), bought("3000"));
        assertThat(claimed()).isEqualTo("3000.00");
        book.decide("entry", "1", "treat-as", "exempt-sale");
        assertAskedAndKeptBack(2);
    }

    /** More than 625 a month and more than half of all input tax: reg 106(1). */
    @Test
    void aDecisionOnAPurchaseAlone() {
        book.enter("a.csv", sale("70000"), bought("3000"));
        book.decide("entry", "2", "state", "use=exempt");
        assertThat(claimed()).isEqualTo("0.00");
        assertThat(book.of("2026-09").queries()).isEmpty();
    }

    /**
     * Reg 101(2)(d): all supplies are taxable, so that all of it is deducted, and this is shown.
     */
    @Test
    void aDecisionThatAPurchaseIsForBoth() {
        book.enter("a.csv", sale("70000"), bought("3000"));
        assertThat(book.of("2026-09").adjustments()).isEmpty();
        book.decide("party", "Example supplier", "state", "use=both");
        assertThat(claimed()).isEqualTo("3000.00");
        assertThat(book.of("2026-09").adjustments())
                .extracting(Adjustment::treatment)
                .containsExactly("partial-exemption");
    }

    @Test
    void aPurchasesOwnUseAlone() {
        book.enter("a.csv", sale("70000"), bought("3000").particular(Particular.USE, "exempt"));
        assertThat(claimed()).isEqualTo("0.00");
        assertThat(book.of("2026-09").adjustments())
                .extracting(Adjustment::treatment)
                .containsExactly("partial-exemption");
    }

    /** The one that says so may come before others that do not. */
    @Test
    void anExemptUseAmongTaxableOnes() {
        book.enter(
                "a.csv",
                sale("70000"),
                bought("3000").particular(Particular.USE, "exempt"),
                bought("3000").particular(Particular.USE, "taxable"),
                SampleLine.of("expense").gross("5").particular(Particular.USE, "taxable"));
        assertThat(claimed()).isEqualTo("3000.00");
    }

    /** An undone decision says nothing: what it had kept back is claimed again. */
    @Test
    void anUndoneDecision() {
        book.enter("a.csv", sale("70000"), bought("3000"));
        book.decide("entry", "2", "state", "use=exempt");
        book.decide("entry", "2", "undo", "1");
        assertThat(claimed()).isEqualTo("3000.00");
        assertThat(book.of("2026-09").adjustments()).isEmpty();
    }
}
