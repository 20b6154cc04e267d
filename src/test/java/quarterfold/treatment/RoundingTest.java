package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.money.Amount;

/** Where VAT is rounded: each box once, each line, or each document. */
class RoundingTest {

    private static SampleLine bill(String number, String net) {
        return SampleLine.of("expense")
                .party("Example platform", "IE", "")
                .document(number)
                .net(net)
                .evidence("invoice");
    }

    private static Amount vat(List<Treated> treated) {
        return treated.stream().map(Treated::vat).reduce(Amount.ZERO, Amount::plus);
    }

    /** T-203 and T-204, VATREC12020: exact to four decimals, or each sale to the penny. */
    @Test
    void perBoxAndPerLine() {
        SampleLine sale = SampleLine.of("sale").gross("9.99");
        assertThat(Treating.gb().told(sale))
                .isEqualTo(
                        "uk-sale S17a 20%: 8.325 + 1.665, claim 0.00; 1=1.665 6=8.325; asks nothing");
        assertThat(Treating.of(SampleSettings.perLine()).told(sale))
                .isEqualTo(
                        "uk-sale S17a 20%: 8.32 + 1.67, claim 0.00; 1=1.67 6=8.32; asks nothing");
        assertThat(Treating.of(SampleSettings.perLine()).told(SampleLine.of("sale").gross("-9.99")))
                .as("a reversal mirrors its sale")
                .isEqualTo(
                        "uk-sale S17a 20%: -8.32 + -1.67, claim 0.00; 1=-1.67 6=-8.32; asks nothing");
    }

    @Test
    void theOtherRounding() {
        Context context = Treating.gb().context(List.of());
        assertThat(context.perLine()).isFalse();
        assertThat(context.withOtherRounding().perLine()).isTrue();
        assertThat(context.withOtherRounding().withOtherRounding().perLine()).isFalse();
        assertThat(context.withOtherRounding().law()).isSameAs(context.law());
        assertThat(context.lineRounding()).isEmpty();
        assertThat(context.withOtherRounding().lineRounding())
                .contains(quarterfold.money.Rounding.NEAREST_PENNY);
    }

    /** VATREC12030: one document of three lines of 0.13 is 0.39, whose VAT is 0.08, not 0.09. */
    @Test
    void linesOfOneDocumentHaveTheVatOfTheWhole() {
        List<Treated> one =
                Treating.gb()
                        .all(
                                bill("A-1", "0.13").product("FIRST"),
                                bill("A-1", "0.13").product("SECOND"),
                                bill("A-1", "0.13").product("THIRD"));
        assertThat(vat(one)).hasToString("0.08");
        assertThat(one).extracting(t -> t.vat().toString()).containsExactly("0.03", "0.02", "0.03");
        List<Treated> three =
                Treating.gb().all(bill("A-1", "0.13"), bill("A-2", "0.13"), bill("A-3", "0.13"));
        assertThat(vat(three)).hasToString("0.09");
    }

    @Test
    void linesWithoutADocumentAreDocumentsOfTheirOwn() {
        assertThat(vat(Treating.gb().all(bill("", "0.13"), bill("", "0.13"), bill("", "0.13"))))
                .hasToString("0.09");
    }

    @Test
    void anotherSupplierOrDirectionIsAnotherDocument() {
        assertThat(
                        vat(
                                Treating.gb()
                                        .all(
                                                bill("A-1", "0.13"),
                                                bill("A-1", "0.13").party("Another", "IE", ""),
                                                bill("A-1", "0.13").party("A third", "IE", ""))))
                .hasToString("0.09");
        List<Treated> both =
                Treating.gb()
                        .all(
                                bill("A-1", "0.13"),
                                SampleLine.of("expense-credit")
                                        .party("Example platform", "IE", "")
                                        .document("A-1")
                                        .net("0.13")
                                        .evidence("invoice"));
        assertThat(both).extracting(t -> t.vat().toString()).containsExactly("0.03", "0.03");
    }

    /** A document of a day before a change of rate and one of a day after are not one. */
    @Test
    void anotherRateIsAnotherDocument() {
        List<Treated> both =
                Treating.gb()
                        .all(
                                bill("A-1", "0.13").on("2011-01-03"),
                                bill("A-1", "0.13").on("2011-01-04"));
        assertThat(both).extracting(t -> t.vat().toString()).containsExactly("0.02", "0.03");
    }

    /** The entries of another run are another period's: their documents start afresh. */
    @Test
    void aRunRemembersOnlyItsOwnDocuments() {
        assertThat(vat(Treating.gb().all(bill("A-1", "0.13")))).hasToString("0.03");
        assertThat(vat(Treating.gb().all(bill("A-1", "0.13")))).hasToString("0.03");
    }
}
