package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Bundles;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.money.Amount;

/** Second-hand goods taxed on the margin: VAT Notice 718; boxes as VAT Notice 700/12 has them. */
class MarginSchemeTest {

    private static SampleLine bought(String gross) {
        return SampleLine.of("purchase")
                .on("2026-06-10")
                .product("CHAIR-1")
                .rate("margin")
                .gross(gross);
    }

    private static SampleLine line(String kind, String gross) {
        return SampleLine.of(kind).product("CHAIR-1").rate("margin").gross(gross);
    }

    private static List<String> told(SampleLine... lines) {
        return Treating.gb().all(lines).stream().map(Treating::told).toList();
    }

    private static String last(SampleLine... lines) {
        List<String> told = told(lines);
        return told.get(told.size() - 1);
    }

    /**
     * A published page: bought at 1,800, sold at 2,100, VAT 50.00; T-801: 1,000 and 1,500, 83.33.
     */
    @Test
    void vatIsOnTheMargin() {
        assertThat(told(bought("1800"), line("sale", "2100")))
                .containsExactly(
                        "margin-purchase U31a no rate: 1800.00 + 0.00, claim 0.00; 7=1800.00; asks"
                                + " nothing",
                        "margin-sale S36a 20%: 2050.00 + 50.00, claim 0.00; 1=50.00 6=2050.00; asks"
                                + " nothing");
        assertThat(last(bought("1000"), line("sale", "1500"))).contains("1416.6667 + 83.3333");
        assertThat(last(line("sale", "1500").particular(Particular.COST, "1000")))
                .contains("1416.6667 + 83.3333");
    }

    /** A loss is never set against another item: VAT Notice 718 (individual scheme). */
    @Test
    void aLossBringsNoVatAndIsNotSetOff() {
        assertThat(last(bought("1000"), line("sale", "900")))
                .isEqualTo(
                        "margin-sale S36a 20%: 900.00 + 0.00, claim 0.00; 6=900.00; asks nothing");
        assertThat(last(bought("1000"), line("sale", "1000"))).contains("1000.00 + 0.00");
        assertThat(last(bought("1000"), line("sale", "1000.06"))).contains("1000.05 + 0.01");
        assertThat(
                        told(
                                line("sale", "900")
                                        .product("A")
                                        .particular(Particular.COST, "1000"),
                                line("sale", "1500")
                                        .product("B")
                                        .particular(Particular.COST, "1000")))
                .last()
                .asString()
                .contains("+ 83.3333");
    }

    /** Regulation 38: what is given back lowers the price, and with it the margin. */
    @ParameterizedTest(name = "{0} back of 2,100")
    @CsvSource({
        "2100, '2050.00 + 50.00, claim 0.00; 1=-50.00 6=-2050.00'",
        "120, '100.00 + 20.00, claim 0.00; 1=-20.00 6=-100.00'",
        "360, '310.00 + 50.00, claim 0.00; 1=-50.00 6=-310.00'"
    })
    void refunds(String gross, String figures) {
        assertThat(last(bought("1800"), line("sale", "2100"), line("sale-refund", gross)))
                .isEqualTo("margin-sale-reduced S36b 20%: " + figures + "; asks nothing");
    }

    /** What the customer pays for delivery is part of the selling price (from memory). */
    @Test
    void deliveryIsPartOfThePrice() {
        SampleLine delivery = SampleLine.of("delivery").gross("60").order("Q-1");
        assertThat(last(bought("1800"), line("sale", "2100").order("Q-1"), delivery))
                .isEqualTo(
                        "margin-sale S36a 20%: 50.00 + 10.00, claim 0.00; 1=10.00 6=50.00; asks"
                                + " nothing");
        assertThat(last(bought("1800"), line("sale", "1770").order("Q-1"), delivery))
                .as("30 of it make good what the price is below the cost")
                .contains("55.00 + 5.00");
    }

    /**
     * In an order with other goods the delivery is shared by price, and each share taxed its way.
     */
    @Test
    void deliveryOfAMixedOrder() {
        assertThat(
                        last(
                                line("sale", "30").order("Q-1").particular(Particular.COST, "18"),
                                SampleLine.of("sale").gross("30").rate("20").order("Q-1"),
                                SampleLine.of("delivery").gross("12").order("Q-1")))
                .isEqualTo(
                        "margin-sale S36a 20%: 10.00 + 2.00, claim 0.00; 1=2.00 6=10.00; asks"
                                + " nothing");
    }

    /** The stock book has the force of law (VAT Notice 718 para 1.3): a cost is never guessed. */
    @Test
    void anUnknownCostIsAsked() {
        String asked = "asks margin-cost-missing";
        assertThat(last(line("sale", "2100"))).startsWith("undecided S35").endsWith(asked);
        assertThat(last(bought("1800"), bought("1900"), line("sale", "2100")))
                .as("two purchases of one code")
                .endsWith(asked);
        assertThat(last(bought("1800"), line("sale", "900"), line("sale", "950")))
                .as("one purchase sold twice")
                .endsWith(asked);
        assertThat(
                        last(
                                bought("1800"),
                                line("sale", "2100"),
                                line("sale-refund", "2100"),
                                line("sale", "2000")))
                .as("sold again after it came back")
                .endsWith("asks nothing");
        assertThat(
                        last(
                                line("sale", "50").order("Q-1").particular(Particular.COST, "20"),
                                line("sale", "60")
                                        .product("B")
                                        .order("Q-1")
                                        .particular(Particular.COST, "20"),
                                SampleLine.of("delivery").gross("5").order("Q-1")))
                .as("the delivery of two things")
                .endsWith(asked);
    }

    /** Goods bought with VAT shown are outside the scheme, which a flat-rate book may not use. */
    @Test
    void whatIsOutsideTheScheme() {
        assertThat(last(bought("1800").without().printed("1500", "300")))
                .isEqualTo(
                        "undecided U30 no rate: 1500.00 + 0.00, claim 0.00; no box; asks"
                                + " margin-vat-shown");
        assertThat(
                        Treating.of(SampleSettings.scheme("flat-rate", "044"))
                                .told(line("sale", "2100").particular(Particular.COST, "1800")))
                .as("VAT Regulations 1995 reg 55M(1)(e)")
                .endsWith("asks margin-with-flat-rate");
        assertThat(
                        Treating.of(SampleSettings.established("GB", "XI"))
                                .told(
                                        line("sale", "2100")
                                                .goods("XI", "DE")
                                                .particular(Particular.COST, "1800")))
                .endsWith("asks margin-from-northern-ireland");
    }

    /** A settlement states no rate: the list of goods says which are on the scheme. */
    @Test
    void theListOfGoodsMayPutThemOnTheScheme() {
        List<Treated> treated =
                Treating.gb()
                        .selling(Map.of("CHAIR-1", "margin"))
                        .all(
                                bought("1800"),
                                SampleLine.of("sale").product("CHAIR-1").gross("2100"));
        assertThat(Treating.told(treated.get(1))).startsWith("margin-sale S36a 20%: 2050.00 + 50");
    }

    /** Of a bundle each part goes its own way, also where that of the scheme comes second. */
    @Test
    void aBundleWithGoodsOfTheScheme() {
        List<Treated> treated =
                Treating.gb()
                        .selling(
                                Map.of("CHAIR-1", "margin"),
                                Map.of(
                                        "SET",
                                        List.of(
                                                new Bundles.Part("CUSHION", Amount.of("60")),
                                                new Bundles.Part("CHAIR-1", Amount.of("60")))))
                        .all(
                                SampleLine.of("sale")
                                        .on("2011-01-03")
                                        .product("SET")
                                        .gross("120")
                                        .particular(Particular.COST, "13"),
                                SampleLine.of("sale-refund")
                                        .on("2011-01-04")
                                        .product("SET")
                                        .gross("120"));
        assertThat(treated.get(0).vat())
                .as("60 x 17.5/117.5 + 47 x 17.5/117.5")
                .hasToString("15.9362");
        assertThat(treated.get(1).rate())
                .as("the part of the scheme at the rate of its sale")
                .isEqualTo("20% and 17.5%");
    }

    /** A refund goes at the rate of its sale: rates from the dated table (secondary source). */
    @Test
    void theRateIsThatOfTheSale() {
        assertThat(
                        told(
                                bought("1000").on("2010-12-01"),
                                line("sale", "1470").on("2011-01-03"),
                                line("sale-refund", "1470").on("2011-01-04")))
                .element(2)
                .asString()
                .contains("17.5%")
                .contains("1=-70.00");
    }
}
