package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import quarterfold.ledger.Entry;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;

/** Delivery, discounts and refunds that follow the goods of their order; the product list. */
class BasketsTest {

    private static final Map<String, String> SHELF =
            Map.of(
                    "BOOK", "zero",
                    "SEAT", "reduced",
                    "STAMP", "exempt",
                    "PERMIT", "outside",
                    "LAMP", "standard");

    private static SampleLine goods(String product, String gross) {
        return SampleLine.of("sale")
                .product(product)
                .gross(gross)
                .order("Q-1")
                .channel("Quaylark", "no");
    }

    private static SampleLine charge(String kind, String gross) {
        return SampleLine.of(kind).gross(gross).order("Q-1").channel("Quaylark", "no");
    }

    private static List<Treated> treated(SampleLine... lines) {
        return Treating.gb().selling(SHELF).all(lines);
    }

    private static String last(List<Treated> treated) {
        return Treating.told(treated.get(treated.size() - 1));
    }

    @Test
    void theProductListDecidesAGoodsLiability() {
        assertThat(treated(goods("BOOK", "12"), goods("SEAT", "105"), goods("LAMP", "24")))
                .extracting(Treating::told)
                .containsExactly(
                        "uk-sale S17a 0%: 12.00 + 0.00, claim 0.00; 6=12.00; asks nothing",
                        "uk-sale S17a 5%: 100.00 + 5.00, claim 0.00; 1=5.00 6=100.00; asks nothing",
                        "uk-sale S17a 20%: 20.00 + 4.00, claim 0.00; 1=4.00 6=20.00; asks nothing");
        assertThat(treated(goods("STAMP", "1"), goods("PERMIT", "2"), goods("UNLISTED", "6")))
                .extracting(Treated::treatment)
                .containsExactly("exempt-sale", "outside-sale", "uk-sale");
    }

    @Test
    void theRateStatedComesBeforeTheProductList() {
        assertThat(last(treated(goods("BOOK", "12").rate("20"))))
                .isEqualTo(
                        "uk-sale S17a 20%: 10.00 + 2.00, claim 0.00; 1=2.00 6=10.00; asks nothing");
        assertThat(last(treated(goods("BOOK", "12").vat("0"))))
                .as("a nought is right for zero-rated goods")
                .endsWith("asks nothing");
    }

    /** A product is the seller's own: it says nothing of what the seller buys. */
    @Test
    void purchasesDoNotTakeTheProductsLiability() {
        assertThat(
                        last(
                                treated(
                                        SampleLine.of("purchase")
                                                .product("BOOK")
                                                .gross("12")
                                                .party("Example supplier", "GB", "GB101747696")
                                                .evidence("invoice"))))
                .startsWith("unclaimed U13a");
    }

    /** T-1005, VAT Notice 700/24 s.2: delivery of a zero-rated book is zero-rated. */
    @Test
    void deliveryOfABook() {
        assertThat(last(treated(goods("BOOK", "12"), charge("delivery", "3.50"))))
                .isEqualTo("uk-sale S17a 0%: 3.50 + 0.00, claim 0.00; 6=3.50; asks nothing");
    }

    /** T-1005: item 12.00 and delivery 3.50 at the standard rate, VAT 2.58. */
    @Test
    void deliveryOfALamp() {
        List<Treated> treated = treated(goods("LAMP", "12"), charge("delivery", "3.50"));
        assertThat(treated.get(0).vat().plus(treated.get(1).vat())).hasToString("2.5833");
    }

    /** T-1006, VAT Notice 700 s.31: delivery 3.00 over goods of 24.00 and 12.00. */
    @Test
    void deliveryOfAMixedBasket() {
        List<Treated> treated =
                treated(goods("LAMP", "24"), goods("BOOK", "12"), charge("delivery", "3"));
        assertThat(last(treated))
                .isEqualTo(
                        "uk-sale S17a 20% and 0%: 2.6667 + 0.3333, claim 0.00; 1=0.3333 6=2.6667;"
                                + " asks nothing");
        assertThat(treated.stream().map(t -> t.boxes().getOrDefault("1", t.claim())).toList())
                .extracting(Object::toString)
                .containsExactly("4.00", "0.00", "0.3333");
    }

    /** The shares of what cannot be shared evenly are still the whole: nothing is lost. */
    @Test
    void sharesAddUp() {
        Treated delivery =
                treated(
                                goods("LAMP", "10"),
                                goods("BOOK", "10"),
                                goods("SEAT", "10"),
                                charge("delivery", "1"))
                        .get(3);
        assertThat(delivery.net().plus(delivery.vat())).hasToString("1.00");
        assertThat(delivery.rate()).isEqualTo("20% and 0% and 5%");
        // 0.3333 at 20%: 0.05555; 0.3334 at 5%: 0.015876
        assertThat(delivery.vat()).hasToString("0.0715");
    }

    @Test
    void goodsOfOneLiabilityAreOneShare() {
        Treated delivery =
                treated(
                                goods("LAMP", "10"),
                                goods("BOOK", "10"),
                                goods("LAMP", "20"),
                                charge("delivery", "4"))
                        .get(3);
        assertThat(delivery.vat()).hasToString("0.50");
        assertThat(delivery.rate()).isEqualTo("20% and 0%");
    }

    @Test
    void discountsAndRefundsFollowTheGoodsToo() {
        assertThat(last(treated(goods("BOOK", "12"), charge("discount", "2"))))
                .isEqualTo(
                        "uk-sale-reduced S17b 0%: 2.00 + 0.00, claim 0.00; 6=-2.00; asks nothing");
        assertThat(last(treated(goods("BOOK", "12"), charge("sale-refund", "12"))))
                .isEqualTo(
                        "uk-sale-reduced S17b 0%: 12.00 + 0.00, claim 0.00; 6=-12.00; asks nothing");
        assertThat(last(treated(goods("SEAT", "105"), charge("discount-reversed", "10.50"))))
                .isEqualTo(
                        "uk-sale S17a 5%: 10.00 + 0.50, claim 0.00; 1=0.50 6=10.00; asks nothing");
    }

    @Test
    void aRateStatedOnTheDeliveryComesFirst() {
        assertThat(last(treated(goods("BOOK", "12"), charge("delivery", "3.60").rate("20"))))
                .startsWith("uk-sale S17a 20%: 3.00 + 0.60");
    }

    @Test
    void anotherOrderOrChannelIsAnotherBasket() {
        assertThat(last(treated(goods("BOOK", "12"), charge("delivery", "3.60").order("Q-2"))))
                .startsWith("uk-sale S17a 20%");
        assertThat(
                        last(
                                treated(
                                        goods("BOOK", "12"),
                                        charge("delivery", "3.60").channel("Norrowby", "no"))))
                .startsWith("uk-sale S17a 20%");
        assertThat(
                        last(
                                treated(
                                        goods("BOOK", "12").order(""),
                                        charge("delivery", "3.60").order(""))))
                .as("no order is no basket")
                .startsWith("uk-sale S17a 20%");
    }

    /** A sale that was reversed in full leaves nothing for delivery to follow. */
    @Test
    void aReversedSaleWeighsNothing() {
        assertThat(
                        last(
                                treated(
                                        goods("BOOK", "12"),
                                        goods("BOOK", "-12"),
                                        goods("SEAT", "10"),
                                        charge("delivery", "2.10"))))
                .isEqualTo("uk-sale S17a 5%: 2.00 + 0.10, claim 0.00; 1=0.10 6=2.00; asks nothing");
    }

    @Test
    void aMixedBasketAsksEachQuestionOnce() {
        List<Treated> treated =
                treated(
                        goods("LAMP", "24").goods("", "US"),
                        goods("BOOK", "12").goods("", "US"),
                        charge("delivery", "3").goods("", "US"));
        assertThat(last(treated))
                .isEqualTo(
                        "export-awaited S14 0%: 3.00 + 0.00, claim 0.00; 6=3.00; asks"
                                + " export-evidence");
    }

    /**
     * VAT printed for a mixed delivery belongs to no one rate: it is worked out by price instead,
     * and asked about where that is more than a penny away. VATA 1994 Sch 11 para 5.
     */
    @Test
    void printedVatOfAMixedDelivery() {
        assertThat(mixedDelivery("0.34")).endsWith("1=0.3333 6=2.6667; asks nothing");
        assertThat(mixedDelivery("0")).endsWith("1=0.3333 6=2.6667; asks nothing");
        assertThat(mixedDelivery("0.35"))
                .isEqualTo(
                        "uk-sale S17a 20% and 0%: 2.6667 + 0.3333, claim 0.00; 1=0.3333 6=2.6667;"
                                + " asks sale-vat-apportioned");
    }

    private static String mixedDelivery(String vat) {
        return last(
                treated(
                        goods("LAMP", "24"),
                        goods("BOOK", "12"),
                        charge("delivery", "3").vat(vat)));
    }

    /** A ledger of standard-rated goods alone is gone through once, and nothing is held. */
    @Test
    void standardGoodsAreNotHeld() {
        List<Entry> ledger =
                List.of(goods("LAMP", "24").entry(1), charge("delivery", "3").entry(2));
        int[] scans = {0};
        Baskets baskets =
                Baskets.of(
                        (Consumer<Entry> each) -> {
                            scans[0]++;
                            ledger.forEach(each);
                        },
                        new Liabilities(
                                Treating.LAW,
                                (product, day) ->
                                        java.util.Optional.ofNullable(SHELF.get(product))));
        assertThat(scans[0]).isEqualTo(1);
        assertThat(baskets.of(ledger.get(1))).isEmpty();
        assertThat(Baskets.NONE.of(ledger.get(1))).isEmpty();
    }

    /** Rounded to the penny in each share where the book rounds each line. */
    @Test
    void aMixedBasketInABookThatRoundsEachLine() {
        List<Treated> treated =
                Treating.of(SampleSettings.perLine())
                        .selling(SHELF)
                        .all(goods("LAMP", "24"), goods("BOOK", "12"), charge("delivery", "3"));
        assertThat(last(treated))
                .isEqualTo(
                        "uk-sale S17a 20% and 0%: 2.67 + 0.33, claim 0.00; 1=0.33 6=2.67; asks"
                                + " nothing");
    }

    /** The rule told of a mixed charge is one that owes VAT, not one that owes none. */
    @Test
    void aMixedChargeIsToldByTheShareThatOwesVat() {
        Treated delivery =
                Treating.gb()
                        .selling(Map.of("X", "exempt", "S", "standard"))
                        .all(
                                SampleLine.of("sale").order("O3").product("X").gross("12"),
                                SampleLine.of("sale").order("O3").product("S").gross("12"),
                                SampleLine.of("delivery").order("O3").gross("4"))
                        .get(2);
        assertThat(Treating.told(delivery))
                .isEqualTo(
                        "uk-sale S17a no rate and 20%: 3.6667 + 0.3333, claim 0.00; 1=0.3333"
                                + " 6=3.6667 exempt-supplies=2.00; asks nothing");
    }
}
