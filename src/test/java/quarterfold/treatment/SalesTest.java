package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Line;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;

/** Sales, refunds, delivery and discounts: what they add to boxes 1, 6 and 8. */
class SalesTest {

    private static SampleLine sale(String gross) {
        return SampleLine.of("sale").gross(gross).order("Q-0001");
    }

    static Stream<Arguments> atHome() {
        return Stream.of(
                Arguments.of(
                        "standard",
                        sale("120"),
                        "uk-sale S17a 20%: 100.00 + 20.00, claim 0.00; 1=20.00 6=100.00; asks nothing",
                        "VATA 1994 s.19(2), 1/6 since 4 January 2011"),
                Arguments.of(
                        "T-202, four decimals carried",
                        sale("119.99"),
                        "uk-sale S17a 20%: 99.9917 + 19.9983, claim 0.00; 1=19.9983 6=99.9917; asks nothing",
                        "VATREC12020: at least five decimals worked, four kept"),
                Arguments.of(
                        "T-207 reduced",
                        sale("52.50").rate("5"),
                        "uk-sale S17a 5%: 50.00 + 2.50, claim 0.00; 1=2.50 6=50.00; asks nothing",
                        "VATA 1994 s.29A, 1/21"),
                Arguments.of(
                        "zero-rated",
                        sale("12").rate("0"),
                        "uk-sale S17a 0%: 12.00 + 0.00, claim 0.00; 6=12.00; asks nothing",
                        "VATA 1994 s.30; Isle of Man return help on box 6"),
                Arguments.of(
                        "exempt",
                        sale("40").rate("exempt"),
                        "exempt-sale S16a no rate: 40.00 + 0.00, claim 0.00; 6=40.00 exempt-supplies=40.00; asks nothing",
                        "VATA 1994 s.31; box 6 takes exempt supplies"),
                Arguments.of(
                        "exempt refunded",
                        SampleLine.of("sale-refund").gross("40").rate("exempt"),
                        "exempt-sale-reduced S16b no rate: 40.00 + 0.00, claim 0.00; 6=-40.00 exempt-supplies=-40.00; asks nothing",
                        "VAT Regulations 1995 reg 38(3)(b)"),
                Arguments.of(
                        "outside the scope",
                        sale("40").rate("outside"),
                        "outside-sale S02 no rate: 40.00 + 0.00, claim 0.00; no box; asks nothing",
                        "VATA 1994 s.4"),
                Arguments.of(
                        "refund",
                        SampleLine.of("sale-refund").gross("120"),
                        "uk-sale-reduced S17b 20%: 100.00 + 20.00, claim 0.00; 1=-20.00 6=-100.00; asks nothing",
                        "VAT Regulations 1995 reg 38(3)(b): a minus in box 1, never a plus in box 4"),
                Arguments.of(
                        "a reversal of a sale",
                        sale("-120"),
                        "uk-sale S17a 20%: -100.00 + -20.00, claim 0.00; 1=-20.00 6=-100.00; asks nothing",
                        "VAT Regulations 1995 reg 38"),
                Arguments.of(
                        "delivery charged",
                        SampleLine.of("delivery").gross("3.60"),
                        "uk-sale S17a 20%: 3.00 + 0.60, claim 0.00; 1=0.60 6=3.00; asks nothing",
                        "VAT Notice 700/24 s.2"),
                Arguments.of(
                        "delivery refunded",
                        SampleLine.of("delivery-refund").gross("3.60"),
                        "uk-sale-reduced S17b 20%: 3.00 + 0.60, claim 0.00; 1=-0.60 6=-3.00; asks nothing",
                        "VAT Regulations 1995 reg 38(3)(b)"),
                Arguments.of(
                        "T-1002, a discount the seller pays for",
                        SampleLine.of("discount").gross("3"),
                        "uk-sale-reduced S17b 20%: 2.50 + 0.50, claim 0.00; 1=-0.50 6=-2.50; asks nothing",
                        "VATA 1994 s.19(2): the consideration is what is paid"),
                Arguments.of(
                        "a discount taken back",
                        SampleLine.of("discount-reversed").gross("3"),
                        "uk-sale S17a 20%: 2.50 + 0.50, claim 0.00; 1=0.50 6=2.50; asks nothing",
                        "VAT Regulations 1995 reg 38"),
                Arguments.of(
                        "VAT printed on a sale's invoice, rounded down",
                        SampleLine.of("sale").printed("19.99", "3.99").rate("20"),
                        "uk-sale S17a 20%: 19.99 + 3.99, claim 0.00; 1=3.99 6=19.99; asks nothing",
                        "VATREC12010 on VAT Notice 700 para 17.5"),
                Arguments.of(
                        "net and rate, no VAT printed",
                        SampleLine.of("sale").net("19.99").rate("20"),
                        "uk-sale S17a 20%: 19.99 + 4.00, claim 0.00; 1=4.00 6=19.99; asks nothing",
                        "VATREC12030: half a penny or more up"),
                Arguments.of(
                        "a nought printed on standard-rated goods",
                        SampleLine.of("sale").gross("120").vat("0"),
                        "uk-sale S17a 20%: 100.00 + 20.00, claim 0.00; 1=20.00 6=100.00; asks sale-vat-nil",
                        "VATA 1994 s.19(2): the price has its VAT inside, whatever the report prints"),
                Arguments.of(
                        "a nought printed beside a net value alone",
                        SampleLine.of("sale").net("120").vat("0"),
                        "uk-sale S17a 20%: 100.00 + 20.00, claim 0.00; 1=20.00 6=100.00; asks sale-vat-nil",
                        "VATA 1994 s.19(2): the price has its VAT inside, whatever the report prints"),
                Arguments.of(
                        "a nought printed on zero-rated goods",
                        SampleLine.of("sale").gross("12").vat("0").rate("0"),
                        "uk-sale S17a 0%: 12.00 + 0.00, claim 0.00; 6=12.00; asks nothing",
                        "VATA 1994 s.30"),
                Arguments.of(
                        "a rate there never was",
                        sale("103").rate("3"),
                        "undecided S01 no rate: 103.00 + 0.00, claim 0.00; no box; asks rate-not-in-force",
                        "VATA 1994 s.2 and s.88"),
                Arguments.of(
                        "another currency",
                        sale("120").currency("EUR"),
                        "undecided A01 no rate: 120.00 + 0.00, claim 0.00; no box; asks no-exchange-rate",
                        "VATA 1994 Sch 6 para 11"));
    }

    static Stream<Arguments> abroad() {
        return Stream.of(
                Arguments.of(
                        "exported with evidence",
                        sale("50").goods("", "US").evidence("export"),
                        "export S13a 0%: 50.00 + 0.00, claim 0.00; 6=50.00; asks nothing",
                        "VATA 1994 s.30(6); VAT Notice 703"),
                Arguments.of(
                        "exported to the European Union from Great Britain, since 2021",
                        sale("50").goods("GB", "FR").evidence("export"),
                        "export S13a 0%: 50.00 + 0.00, claim 0.00; 6=50.00; asks nothing",
                        "VATA 1994 s.30(6)"),
                Arguments.of(
                        "exported, refunded",
                        SampleLine.of("sale-refund").gross("50").goods("", "US").evidence("export"),
                        "export-reduced S13b 0%: 50.00 + 0.00, claim 0.00; 6=-50.00; asks nothing",
                        "VAT Regulations 1995 reg 38(3)(b)"),
                Arguments.of(
                        "exported without evidence yet",
                        sale("50").goods("", "US"),
                        "export-awaited S14 0%: 50.00 + 0.00, claim 0.00; 6=50.00; asks export-evidence",
                        "HMRC manual VEXP30300: 3 months"),
                Arguments.of(
                        "exported without evidence yet, refunded",
                        SampleLine.of("sale-refund").gross("50").goods("", "US"),
                        "export-awaited-reduced S15 0%: 50.00 + 0.00, claim 0.00; 6=-50.00; asks nothing",
                        "VAT Regulations 1995 reg 38(3)(b)"),
                Arguments.of(
                        "from stock abroad to a customer abroad",
                        sale("50").goods("DE", "FR"),
                        "sale-abroad S07a no rate: 50.00 + 0.00, claim 0.00; 6=50.00; asks nothing",
                        "VATA 1994 s.7(2); VATPOSG3300"),
                Arguments.of(
                        "from stock abroad, destination not stated",
                        sale("50").goods("DE", ""),
                        "undecided S20 no rate: 50.00 + 0.00, claim 0.00; no box; asks destination-missing",
                        "VATA 1994 s.7(2): goods that never enter the United Kingdom"),
                Arguments.of(
                        "from stock abroad, refunded",
                        SampleLine.of("sale-refund").gross("50").goods("DE", "FR"),
                        "sale-abroad-reduced S07b no rate: 50.00 + 0.00, claim 0.00; 6=-50.00; asks nothing",
                        "VAT Regulations 1995 reg 38(3)(b)"),
                Arguments.of(
                        "from stock abroad to here, the channel accounts for the VAT",
                        sale("50").goods("CN", "GB").channel("Quaylark", "yes"),
                        "deemed-supply S04a 0%: 50.00 + 0.00, claim 0.00; 6=50.00; asks nothing",
                        "VATA 1994 s.5A and Sch 8 Group 21"),
                Arguments.of(
                        "the same, its VAT shown and withheld",
                        SampleLine.of("sale")
                                .printed("50", "10")
                                .goods("CN", "GB")
                                .channel("Quaylark", "yes"),
                        "deemed-supply S04a 0%: 50.00 + 0.00, claim 0.00; 6=50.00; asks nothing",
                        "VATA 1994 s.5A: the VAT is the channel's to account for"),
                Arguments.of(
                        "the same, refunded",
                        SampleLine.of("sale-refund")
                                .gross("50")
                                .goods("CN", "GB")
                                .channel("Quaylark", "yes"),
                        "deemed-supply-reduced S04b 0%: 50.00 + 0.00, claim 0.00; 6=-50.00; asks nothing",
                        "VAT Regulations 1995 reg 38(3)(b)"),
                Arguments.of(
                        "from stock abroad to here, no channel accounts for the VAT",
                        sale("50").goods("CN", "GB"),
                        "undecided S06 no rate: 50.00 + 0.00, claim 0.00; no box; asks stock-abroad-to-uk",
                        "gov.uk on goods sold direct to customers in the UK: 135 pounds"),
                Arguments.of(
                        "goods here of a seller here, withheld by the channel",
                        sale("50").channel("Quaylark", "yes"),
                        "undecided S10 no rate: 50.00 + 0.00, claim 0.00; no box; asks channel-collected-wrongly",
                        "VATA 1994 s.5A(1): only where the seller is established abroad"),
                Arguments.of(
                        "a withheld tax that does not mirror the tax",
                        sale("50").channel("Quaylark", "unclear"),
                        "undecided S03 no rate: 50.00 + 0.00, claim 0.00; no box; asks channel-tax-unclear",
                        "VATA 1994 s.5A"));
    }

    @ParameterizedTest(name = "{0} [{3}]")
    @MethodSource({"atHome", "abroad"})
    void sales(String what, SampleLine line, String told, String source) {
        assertThat(Treating.gb().told(line)).as("%s [%s]", what, source).isEqualTo(told);
    }

    /** VATA 1994 s.5A(1)(b): goods here of a seller abroad, sold to a consumer on a channel. */
    @Test
    void sellerEstablishedAbroad() {
        Treating abroad = Treating.of(SampleSettings.established("US", "GB"));
        SampleLine sale = sale("50").channel("Quaylark", "yes");
        assertThat(abroad.told(sale))
                .isEqualTo(
                        "deemed-supply S08a 0%: 50.00 + 0.00, claim 0.00; 6=50.00; asks nothing");
        assertThat(abroad.told(sale.customer("business", "GB101747696")))
                .isEqualTo(
                        "undecided S27 no rate: 50.00 + 0.00, claim 0.00; no box; asks"
                                + " channel-collected-wrongly");
        assertThat(abroad.told(sale("120").channel("Quaylark", "no")))
                .isEqualTo(
                        "uk-sale S30 20%: 100.00 + 20.00, claim 0.00; 1=20.00 6=100.00; asks"
                                + " channel-should-account");
        assertThat(abroad.told(sale("120")))
                .as("sold direct")
                .isEqualTo(
                        "uk-sale S17a 20%: 100.00 + 20.00, claim 0.00; 1=20.00 6=100.00; asks"
                                + " nothing");
    }

    /** Whether the supply to the channel is in box 6 is from memory, so the book may choose. */
    @Test
    void deemedSupplyOutOfBoxSixByChoice() {
        Map<String, String> choice = Map.of("deemed-supply-in-box-6", "no");
        SampleLine sale = sale("50").goods("CN", "GB").channel("Quaylark", "yes");
        assertThat(Treating.of(SampleSettings.choosing(choice)).told(sale))
                .isEqualTo(
                        "deemed-supply-outside-boxes S05a 0%: 50.00 + 0.00, claim 0.00; no box; asks"
                                + " nothing");
        assertThat(
                        Treating.of(SampleSettings.of("US", "GB", false, choice))
                                .told(sale("50").channel("Quaylark", "yes")))
                .isEqualTo(
                        "deemed-supply-outside-boxes S09a 0%: 50.00 + 0.00, claim 0.00; no box; asks"
                                + " nothing");
    }

    /** T-107: VATA 1994 Sch 9ZB, and the return's legends since 2021. */
    @Test
    void fromNorthernIrelandToTheEuropeanUnion() {
        Treating ni = Treating.of(SampleSettings.established("XI", "XI"));
        SampleLine business = sale("4000").goods("", "IE").customer("business", "IE1234567T");
        assertThat(ni.told(business.on("2021-01-01")))
                .isEqualTo(
                        "ni-dispatch-awaited S11c 0%: 4000.00 + 0.00, claim 0.00; 6=4000.00"
                                + " 8=4000.00; asks dispatch-evidence");
        assertThat(ni.told(business.evidence("export")))
                .isEqualTo(
                        "ni-dispatch S11a 0%: 4000.00 + 0.00, claim 0.00; 6=4000.00 8=4000.00; asks"
                                + " nothing");
        assertThat(ni.told(business.on("2020-12-31")))
                .isEqualTo(
                        "undecided S18 no rate: 4000.00 + 0.00, claim 0.00; no box; asks"
                                + " eu-before-2021");
        SampleLine consumer = sale("40").goods("", "IE");
        assertThat(ni.told(consumer.on("2021-01-01")))
                .isEqualTo(
                        "undecided S12 no rate: 40.00 + 0.00, claim 0.00; no box; asks"
                                + " ni-to-eu-consumer");
        assertThat(ni.told(sale("40").goods("", "US").evidence("export")))
                .isEqualTo("export S13a 0%: 40.00 + 0.00, claim 0.00; 6=40.00; asks nothing");
        assertThat(
                        ni.told(
                                SampleLine.of("sale-refund")
                                        .gross("4000")
                                        .goods("", "IE")
                                        .customer("business", "IE1234567T")))
                .isEqualTo(
                        "ni-dispatch-awaited-reduced S11d 0%: 4000.00 + 0.00, claim 0.00; 6=-4000.00"
                                + " 8=-4000.00; asks nothing");
    }

    /** VATA 1994 s.96(11): a sale within Northern Ireland is a home sale on both sides of 2021. */
    @Test
    void withinNorthernIreland() {
        Treating ni = Treating.of(SampleSettings.established("XI", "XI"));
        for (String day : List.of("2020-12-31", "2021-01-01")) {
            assertThat(ni.told(sale("120").on(day)))
                    .as(day)
                    .isEqualTo(
                            "uk-sale S17a 20%: 100.00 + 20.00, claim 0.00; 1=20.00 6=100.00; asks"
                                    + " nothing");
            assertThat(ni.told(sale("120").goods("XI", "GB").on(day))).startsWith("uk-sale S17a");
            assertThat(ni.told(sale("120").goods("GB", "XI").on(day))).startsWith("uk-sale S17a");
        }
    }

    /** The channel's liability began on 1 January 2021: VATA 1994 s.5A. */
    @Test
    void theChannelAccountsSince2021() {
        SampleLine sale = sale("50").goods("CN", "GB").channel("Quaylark", "yes");
        assertThat(Treating.gb().told(sale.on("2021-01-01"))).startsWith("deemed-supply S04a");
        assertThat(Treating.gb().told(sale.on("2020-12-31")))
                .isEqualTo(
                        "undecided S10 no rate: 50.00 + 0.00, claim 0.00; no box; asks"
                                + " channel-collected-wrongly");
    }

    /** Rates from the published tables: the day of supply decides, VATA 1994 s.2 and s.88. */
    @Test
    void theRateOfTheDay() {
        assertThat(Treating.gb().told(sale("117.50").on("2011-01-03")))
                .isEqualTo(
                        "uk-sale S17a 17.5%: 100.00 + 17.50, claim 0.00; 1=17.50 6=100.00; asks"
                                + " nothing");
        assertThat(Treating.gb().told(sale("120").on("2011-01-04")))
                .isEqualTo(
                        "uk-sale S17a 20%: 100.00 + 20.00, claim 0.00; 1=20.00 6=100.00; asks"
                                + " nothing");
        assertThat(Treating.gb().told(sale("117.50").rate("17.5").on("2011-01-04")))
                .endsWith("no box; asks rate-not-in-force");
        assertThat(Treating.gb().told(sale("112.50").rate("12.5").on("2022-03-31")))
                .isEqualTo(
                        "uk-sale S17a 12.5%: 100.00 + 12.50, claim 0.00; 1=12.50 6=100.00; asks"
                                + " nothing");
        assertThat(Treating.gb().told(sale("112.50").rate("12.5").on("2022-04-01")))
                .endsWith("no box; asks rate-not-in-force");
        assertThat(Treating.gb().told(sale("12").on("1973-03-31")))
                .isEqualTo("undecided - no rate: 12.00 + 0.00, claim 0.00; no box; asks no-rule");
    }

    /** Entries share one profile in the ledger; each still takes the rate of its own day. */
    @Test
    void entriesOfOneProfileOnBothSidesOfAChange() {
        Line line = sale("120").on("2011-01-04").line(2);
        TreatmentRun run = new TreatmentRun(Treating.gb().context(List.of()));
        assertThat(
                        Stream.of(
                                        "2011-01-04",
                                        "2011-01-03",
                                        "2026-08-01",
                                        "2009-12-31",
                                        "2010-01-01",
                                        "2011-01-05")
                                .map(day -> run.treat(on(day, line)).rate()))
                .containsExactly("20%", "17.5%", "20%", "15%", "17.5%", "20%");
    }

    private static Entry on(String day, Line line) {
        return new Entry(
                1,
                1,
                new Line(
                        line.row(),
                        LocalDate.parse(day),
                        line.profile(),
                        line.item(),
                        line.document(),
                        line.order(),
                        line.amounts(),
                        line.paid(),
                        line.original(),
                        line.notes()));
    }

    /** T-308: sold at 17.5% in December 2010, refunded in February 2011 at the sale's 7/47. */
    @Test
    void aRefundTakesTheRateOfItsSale() {
        for (String kind :
                List.of("sale-refund", "delivery-refund", "discount", "discount-reversed")) {
            Treated treated =
                    Treating.gb()
                            .one(SampleLine.of(kind).gross("117.50").rate("17.5").on("2011-02-10"));
            assertThat(treated.vat()).as(kind).hasToString("17.50");
            assertThat(treated.rate()).as(kind).isEqualTo("17.5%");
        }
        assertThat(
                        Treating.gb()
                                .one(
                                        SampleLine.of("delivery")
                                                .gross("117.50")
                                                .rate("17.5")
                                                .on("2011-02-10"))
                                .treatment())
                .isEqualTo("undecided");
        assertThat(
                        Treating.gb()
                                .told(
                                        SampleLine.of("sale-refund")
                                                .gross("120")
                                                .rate("20")
                                                .on("2011-01-03")))
                .as("a rate to come is no rate")
                .endsWith("asks rate-not-in-force");
    }

    /** VATA 1994 Sch 11 para 5: VAT shown on an invoice is owed, so it is never dropped unasked. */
    @ParameterizedTest(name = "{0} to {1}")
    @CsvSource({
        "exempt, GB, sale-vat-shown",
        "exempt, US, sale-vat-untaxed",
        "outside, GB, sale-vat-untaxed",
        "'', US, sale-vat-untaxed"
    })
    void vatStatedOnASaleWithout(String rate, String to, String asks) {
        Treated sale =
                Treating.gb()
                        .one(
                                SampleLine.of("sale")
                                        .rate(rate)
                                        .goods("GB", to)
                                        .evidence(to.equals("US") ? "export" : "unstated")
                                        .printed("100", "20"));
        assertThat(sale.queries()).extracting(Query::id).containsExactly("E1/" + asks);
    }

    /** A tax that the channel shows and keeps is the channel's to account for. */
    @Test
    void taxThatTheChannelKeepsIsNotAsked() {
        assertThat(
                        Treating.gb()
                                .one(
                                        SampleLine.of("sale")
                                                .goods("CN", "GB")
                                                .channel("Quaylark", "yes")
                                                .printed("50", "10"))
                                .queries())
                .isEmpty();
    }
}
