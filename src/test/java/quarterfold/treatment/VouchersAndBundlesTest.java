package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Bundles.Part;
import quarterfold.ledger.SampleLine;
import quarterfold.money.Amount;

/** Vouchers, bundles at one price, and discounts that somebody else pays for. */
class VouchersAndBundlesTest {

    /** VAT Notice 700/7 section 9 (secondary source); the rules are of 1 January 2019. */
    @ParameterizedTest(name = "{0}, {1}, {2}")
    @CsvSource({
        "voucher, single-purpose, 2019-01-01, uk-sale V02; 1=10.00 6=50.00; nothing",
        "voucher-redeemed, single-purpose, 2019-01-01, voucher-used V05; no box; nothing",
        "voucher, multi-purpose, 2019-01-01, voucher-issued V04; no box; nothing",
        "voucher-redeemed, multi-purpose, 2019-01-01, uk-sale V06; 1=10.00 6=50.00; nothing",
        "voucher, '', 2019-01-01, undecided V08; no box; voucher-kind-missing",
        "voucher, single-purpose, 2018-12-31, undecided V01; no box; voucher-before-2019",
        "voucher-redeemed, multi-purpose, 2018-12-31, undecided V01; no box; voucher-before-2019"
    })
    void vouchers(String kind, String category, String day, String outcome) {
        String told =
                Treating.gb().told(SampleLine.of(kind).category(category).on(day).gross("60"));
        String[] parts = told.split("; ", -1);
        assertThat(
                        told.replaceFirst("^(\\S+ \\S+) .*", "$1")
                                + "; "
                                + parts[1]
                                + "; "
                                + parts[2].substring("asks ".length()))
                .isEqualTo(outcome);
    }

    @Test
    void aVoucherTakesTheRateOfWhatItBuys() {
        assertThat(
                        Treating.gb()
                                .selling(Map.of("BOOK", "zero", "STAMP", "exempt"))
                                .all(
                                        SampleLine.of("voucher-redeemed")
                                                .category("multi-purpose")
                                                .product("BOOK")
                                                .gross("60"),
                                        SampleLine.of("voucher-redeemed")
                                                .category("multi-purpose")
                                                .product("STAMP")
                                                .gross("60")))
                .extracting(Treating::told)
                .containsExactly(
                        "uk-sale V06 0%: 60.00 + 0.00, claim 0.00; 6=60.00; asks nothing",
                        "exempt-sale V07 no rate: 60.00 + 0.00, claim 0.00; 6=60.00 exempt-supplies=60.00; asks nothing");
        assertThat(
                        Treating.gb()
                                .told(
                                        SampleLine.of("voucher-redeemed")
                                                .category("multi-purpose")
                                                .goods("GB", "US")
                                                .gross("60")))
                .endsWith("asks voucher-kind-missing");
    }

    /** T-1002: VAT Notice 700/7 section 7 (from memory): a discount made good is no discount. */
    @Test
    void aDiscountSomebodyElsePaysFor() {
        SampleLine discount = SampleLine.of("discount").gross("3").rate("20");
        assertThat(Treating.gb().told(discount))
                .isEqualTo(
                        "uk-sale-reduced S17b 20%: 2.50 + 0.50, claim 0.00; 1=-0.50 6=-2.50; asks"
                                + " nothing");
        assertThat(Treating.gb().told(discount.category("third-party-funded")))
                .isEqualTo(
                        "discount-funded-by-another S32 no rate: 3.00 + 0.00, claim 0.00; no box;"
                                + " asks nothing");
    }

    private static Part part(String product, String price) {
        return new Part(product, Amount.of(price));
    }

    private static Treating shelf() {
        return Treating.gb()
                .selling(
                        Map.of("BOOK", "zero", "FRUIT", "zero", "MILK", "zero"),
                        Map.of(
                                "BOTH",
                                List.of(part("BOOK", "5"), part("DISC", "10")),
                                "DEAL",
                                List.of(
                                        part("MUG", "6"),
                                        part("FRUIT", "1.50"),
                                        part("MILK", "1.50"),
                                        part("BOOK", "6"))));
    }

    /** T-1003 and T-1004: HMRC manual VATVAL03800: 10.00 over 15.00; 18 and 12 over 5 and 10. */
    @ParameterizedTest(name = "{0} at {1}")
    @CsvSource({
        "DEAL, 10, '9.3333 + 0.6667, claim 0.00; 1=0.6667 6=9.3333'",
        "BOTH, 18, '16.00 + 2.00, claim 0.00; 1=2.00 6=16.00'",
        "BOTH, 12, '10.6667 + 1.3333, claim 0.00; 1=1.3333 6=10.6667'"
    })
    void bundles(String product, String gross, String figures) {
        assertThat(shelf().told(SampleLine.of("sale").product(product).gross(gross)))
                .contains(figures)
                .endsWith("asks nothing");
    }

    @Test
    void aBundleSoldWithoutVatInThePrice() {
        assertThat(shelf().told(SampleLine.of("sale").product("BOTH").net("15")))
                .contains("15.00 + 2.00, claim 0.00; 1=2.00 6=15.00");
    }

    /** A rate the sale states wins; VAT stated that the parts do not give is asked about. */
    @Test
    void whatTheSaleStates() {
        assertThat(shelf().told(SampleLine.of("sale").product("BOTH").gross("18").rate("20")))
                .startsWith("uk-sale S17a 20%: 15.00 + 3.00");
        assertThat(shelf().told(SampleLine.of("sale").product("BOTH").printed("15", "3")))
                .contains("16.00 + 2.00")
                .endsWith("asks sale-vat-apportioned");
        assertThat(shelf().told(SampleLine.of("sale").product("BOTH").printed("16", "2")))
                .endsWith("asks nothing");
    }

    /** The delivery of a bundle follows what is in it, beside the other goods of the order. */
    @Test
    void deliveryFollowsTheParts() {
        List<Treated> treated =
                shelf().all(
                                SampleLine.of("sale").product("BOTH").gross("18").order("Q-1"),
                                SampleLine.of("sale").product("MUG").gross("6").order("Q-1"),
                                SampleLine.of("delivery").gross("4").order("Q-1"));
        assertThat(Treating.told(treated.get(2))).contains("3.50 + 0.50");
    }
}
