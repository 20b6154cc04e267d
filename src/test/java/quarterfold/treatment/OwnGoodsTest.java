package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;

/** Goods and fuel of the business that are given away, used privately or moved, without a sale. */
class OwnGoodsTest {

    private static SampleLine gift(String day, String cost) {
        return SampleLine.of("gift").on(day).net(cost).party("A customer", "GB", "");
    }

    private static String last(SampleLine... lines) {
        List<Treated> treated = Treating.gb().all(lines);
        return Treating.told(treated.get(treated.size() - 1));
    }

    /** T-412; VATA 1994 Sch 4 para 5(2)(a), HMRC manual VATVAL11240: the limit is 50 pounds. */
    @Test
    void giftsAboveTheLimitInAYearAreTaxedTogether() {
        assertThat(last(gift("2026-01-15", "30")))
                .isEqualTo(
                        "gift-untaxed P13 no rate: 30.00 + 0.00, claim 0.00; no box; asks nothing");
        assertThat(last(gift("2026-01-15", "30"), gift("2026-09-10", "25")))
                .isEqualTo(
                        "gift P14 20%: 55.00 + 11.00, claim 0.00; 1=11.00 6=55.00; asks nothing");
        assertThat(last(gift("2026-01-15", "30"), gift("2026-09-10", "20")))
                .as("50.00 is not more than 50")
                .startsWith("gift-untaxed P13");
        assertThat(last(gift("2026-01-15", "30"), gift("2026-09-10", "20.01")))
                .startsWith("gift P14 20%: 50.01 + 10.00");
    }

    /** Sch 4 para 5(2ZA): any twelve months that include the day of the gift. */
    @Test
    void theYearRolls() {
        assertThat(last(gift("2025-01-15", "30"), gift("2026-01-14", "25")))
                .as("the last day of the twelve months")
                .startsWith("gift P14 20%: 55.00 + 11.00");
        assertThat(last(gift("2025-01-15", "30"), gift("2026-01-15", "25")))
                .startsWith("gift-untaxed P13");
    }

    /** What was taxed once is not taxed again; a later gift of the same year is. */
    @Test
    void laterGiftsAreTaxedAlone() {
        assertThat(
                        last(
                                gift("2026-01-15", "30"),
                                gift("2026-05-10", "25"),
                                gift("2026-08-01", "10")))
                .isEqualTo("gift P14 20%: 10.00 + 2.00, claim 0.00; 1=2.00 6=10.00; asks nothing");
    }

    /** Sch 4 para 5(2ZA): gifts that have left the twelve months are taxed with no later one. */
    @Test
    void whatHasLeftTheYearIsNotTaxedWithTheNext() {
        assertThat(
                        last(
                                gift("2025-01-15", "30"),
                                gift("2025-09-01", "15"),
                                gift("2026-02-01", "40")))
                .as("15 and 40: the 30 is more than twelve months back")
                .isEqualTo(
                        "gift P14 20%: 55.00 + 11.00, claim 0.00; 1=11.00 6=55.00; asks nothing");
    }

    /** The days of the gifts count, not the order in which they were entered. */
    @Test
    void giftsGoByTheirDays() {
        List<Treated> treated =
                Treating.gb().all(gift("2026-09-10", "25"), gift("2026-01-15", "30"));
        assertThat(Treating.told(treated.get(0))).startsWith("gift P14 20%: 55.00 + 11.00");
        assertThat(Treating.told(treated.get(1))).startsWith("gift-untaxed P13");
        List<Treated> sameDay =
                Treating.gb().all(gift("2026-01-15", "30"), gift("2026-01-15", "25"));
        assertThat(Treating.told(sameDay.get(1)))
                .as("of one day the later row passes the limit")
                .startsWith("gift P14 20%: 55.00 + 11.00");
    }

    /** Finance Act 2003 s.21 has the limit from 1 October 2003; the tables have no earlier one. */
    @Test
    void theLimitHasAFirstDay() {
        assertThat(last(gift("2003-09-30", "60"))).startsWith("undecided").endsWith("asks no-rule");
        assertThat(last(gift("2003-10-01", "60"))).startsWith("gift P14 17.5%: 60.00 + 10.50");
    }

    /** What a person decided to be entered twice, or a sample, is no part of the year's gifts. */
    @Test
    void whatIsNoGiftByDecisionDoesNotCount() {
        SampleLine[] gifts = {gift("2026-01-15", "30"), gift("2026-05-10", "25")};
        assertThat(deciding(Decision.Action.DUPLICATE_OF, "7", gifts))
                .startsWith("gift-untaxed P13");
        assertThat(deciding(Decision.Action.STATE, "category=sample", gifts))
                .startsWith("gift-untaxed P13");
        assertThat(deciding(Decision.Action.STATE, "cost=26", gifts))
                .as("26 and 25")
                .startsWith("gift P14 20%: 51.00 + 10.20");
    }

    private static String deciding(Decision.Action action, String value, SampleLine... lines) {
        Decision decision =
                new Decision(
                        1,
                        Decision.Target.ENTRY,
                        "1",
                        action,
                        value,
                        "looked at it",
                        "Ada Fern",
                        LocalDate.of(2026, 10, 5));
        List<Treated> treated = Treating.gb().deciding(decision).all(lines);
        return Treating.told(treated.get(treated.size() - 1));
    }

    @Test
    void eachPersonHasALimit() {
        assertThat(
                        last(
                                gift("2026-01-15", "30"),
                                gift("2026-05-10", "25").party("Another customer", "GB", "")))
                .startsWith("gift-untaxed P13");
        assertThat(last(gift("2026-05-10", "25").party("", "", "")))
                .endsWith("asks gift-recipient-missing");
    }

    /** Sch 4 para 5(2)(b): a sample is no supply, and para 5(5): nor what bore no input tax. */
    @Test
    void samplesAndGoodsWithoutInputTaxAreNoGifts() {
        assertThat(last(gift("2026-01-15", "80").category("sample")))
                .startsWith("gift-untaxed P10");
        assertThat(last(gift("2026-01-15", "30").category("sample"), gift("2026-05-10", "25")))
                .startsWith("gift-untaxed P13");
        assertThat(last(gift("2026-01-15", "80").rate("margin"))).startsWith("gift-untaxed P11");
        assertThat(Treating.gb().told(SampleLine.of("private-use").gross("80").rate("margin")))
                .startsWith("private-use-untaxed P02");
    }

    /** VAT is on the cost without VAT: of a price with VAT only that counts against the limit. */
    @Test
    void theCostIsWithoutVat() {
        SampleLine bought = SampleLine.of("gift").party("A customer", "GB", "");
        assertThat(last(bought.gross("60"))).startsWith("gift-untaxed P13");
        assertThat(last(bought.gross("60.02"))).startsWith("gift P14 20%: 50.0167 + 10.00");
        assertThat(last(bought.gross("90").particular(Particular.COST, "50")))
                .startsWith("gift-untaxed P13");
    }

    /** The value of a gift is its cost without the VAT of its own rate. */
    @Test
    void theVatInsideIsAtTheRateOfTheGoods() {
        SampleLine bought = SampleLine.of("gift").party("A customer", "GB", "");
        assertThat(last(bought.gross("52.50").rate("5"))).startsWith("gift-untaxed P13");
        assertThat(last(bought.gross("52.52").rate("5"))).startsWith("gift P14 5%: 50.019 + 2.50");
        assertThat(last(bought.gross("50.00").rate("0"))).startsWith("gift-untaxed P13");
        assertThat(last(bought.gross("50.01").rate("0"))).startsWith("gift P14 0%: 50.01 + 0.00");
    }

    /** Goods of two liabilities are each taxed at their own rate. */
    @Test
    void giftsKeepTheirOwnRates() {
        List<Treated> treated =
                Treating.gb()
                        .selling(Map.of("BOOK", "zero"))
                        .all(gift("2026-01-15", "30").product("BOOK"), gift("2026-09-10", "25"));
        assertThat(Treating.told(treated.get(1)))
                .isEqualTo(
                        "gift P14 0% and 20%: 55.00 + 5.00, claim 0.00; 1=5.00 6=55.00; asks"
                                + " nothing");
    }

    private static SampleLine fuel(String co2, String day) {
        SampleLine line = SampleLine.of("fuel-scale").on(day);
        return co2.isEmpty() ? line : line.particular(Particular.CO2, co2);
    }

    /** T-411: GOV.UK, VAT road fuel scale charges from 1 May 2026: 163 a quarter to 120 grams. */
    @Test
    void fuelScaleChargeOfAQuarter() {
        String listed =
                "fuel-scale-charge P20 20%: 135.8333 + 27.1667, claim 0.00; 1=27.1667 6=135.8333;"
                        + " asks nothing";
        assertThat(Treating.gb().told(fuel("118", "2026-09-30"))).isEqualTo(listed);
        assertThat(Treating.gb().told(fuel("118", "2026-09-30").gross("163"))).isEqualTo(listed);
        assertThat(Treating.gb().told(fuel("118", "2026-09-30").gross("150")))
                .isEqualTo(
                        "fuel-scale-charge P21 20%: 125.00 + 25.00, claim 0.00; 1=25.00 6=125.00;"
                                + " asks fuel-scale-differs");
    }

    /** For 165 grams and more no charge of three months was found in a published text. */
    @Test
    void aChargeTheTableDoesNotHaveIsAsked() {
        assertThat(Treating.gb().told(fuel("170", "2026-09-30")))
                .isEqualTo(
                        "undecided P23 no rate: 0.00 + 0.00, claim 0.00; no box; asks"
                                + " fuel-scale-missing");
        assertThat(Treating.gb().told(fuel("170", "2026-09-30").gross("390")))
                .startsWith("fuel-scale-charge P22 20%: 325.00 + 65.00")
                .endsWith("asks fuel-scale-unlisted");
        assertThat(Treating.gb().told(fuel("", "2026-09-30"))).endsWith("asks fuel-scale-missing");
    }

    /** The table changes with the first period to begin on or after 1 May. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({"2022-06-30, fuel-scale-missing", "2022-07-01, nothing"})
    void theFirstDayOfThePeriodDecides(String day, String asks) {
        assertThat(Treating.gb().told(fuel("118", day))).endsWith("asks " + asks);
    }

    private static SampleLine moved(String from, String to) {
        return SampleLine.of("stock-moved").net("6000").goods(from, to);
    }

    /** Six computers of 1,000: boxes 1 and 4 of 1,200 (tax press); HMRC manual PE68300. */
    @ParameterizedTest(name = "{0} to {1}")
    @CsvSource({
        "GB, DE, stock-moved K07 no rate: 6000.00 + 0.00; no box",
        "GB, US, stock-moved K07 no rate: 6000.00 + 0.00; no box",
        "GB, XI, 'stock-to-ni K03 20%: 6000.00 + 1200.00; 1=1200.00 4=1200.00'",
        "XI, GB, stock-moved K07 no rate: 6000.00 + 0.00; no box",
        "XI, US, stock-moved K07 no rate: 6000.00 + 0.00; no box",
        "DE, GB, stock-moved K07 no rate: 6000.00 + 0.00; no box",
        "XI, DE, 'stock-ni-to-eu K05 no rate: 6000.00 + 0.00; 6=6000.00 8=6000.00'",
        "DE, XI, undecided K06 no rate: 6000.00 + 0.00; no box"
    })
    void ownGoodsMoved(String from, String to, String outcome) {
        String told = Treating.of(SampleSettings.established("GB", "XI")).told(moved(from, to));
        assertThat(told.replaceFirst(", claim [^;]*", "").replaceFirst("; asks .*", ""))
                .isEqualTo(outcome);
    }

    @Test
    void movedToNorthernIreland() {
        assertThat(Treating.gb().told(moved("GB", "XI").businessUse("60")))
                .as("reclaimed as far as it is deductible")
                .endsWith("claim 720.00; 1=1200.00 4=720.00; asks nothing");
        assertThat(
                        Treating.gb()
                                .selling(Map.of("BOOK", "zero"))
                                .told(moved("GB", "XI").product("BOOK")))
                .endsWith("claim 0.00; no box; asks nothing");
        assertThat(
                        Treating.of(SampleSettings.choosing(Map.of("stock-to-ni-in-box-7", "yes")))
                                .told(moved("GB", "XI")))
                .startsWith("stock-to-ni-in-box-7 K04")
                .contains("1=1200.00 4=1200.00 7=6000.00");
        assertThat(Treating.gb().told(moved("XI", "DE"))).endsWith("asks northern-ireland-not-set");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({"2020-12-31, GB, DE, eu-before-2021", "2021-01-01, GB, DE, nothing"})
    void movedAtTheEndOfTheTransition(String day, String from, String to, String asks) {
        assertThat(Treating.gb().told(moved(from, to).on(day))).endsWith("asks " + asks);
    }
}
