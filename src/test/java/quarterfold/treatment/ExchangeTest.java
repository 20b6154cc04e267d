package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.money.Amount;
import quarterfold.money.Rounding;

/**
 * Amounts in another currency: VATA 1994 Sch 6 para 11, at the tax authority's rate for the month
 * of the tax point; VAT tertiary legislation, Valuation: the rate date is the tax point, not the
 * payout's.
 */
class ExchangeTest {

    private static final Treating BOOK = Treating.gb().holding(new MonthlyRates());

    /** Example 5-A and the published rates it rests on; the first and the last day of a month. */
    @ParameterizedTest(name = "{0} {1} on {2}: {3}")
    @CsvSource({
        "EUR, 2340.00, 2026-08-01, 1996.76",
        "EUR, 2340.00, 2026-08-31, 1996.76",
        "EUR, 2340.00, 2026-07-31, 2023.52",
        "USD, 2500.00, 2026-08-14, 1870.28",
        "USD, 2500.00, 2026-07-14, 1865.11",
        "USD, 2500.00, 2026-06-30, 1865.81",
        "USD, 2500.00, 2026-07-01, 1865.11",
        "EUR, 1000.00, 2024-01-01, 864.53",
        "EUR, 1000.00, 2024-01-31, 864.53",
        "CNY, 10000.00, 2026-08-05, 1105.23",
        "PLN, 10000.00, 2026-06-05, 2034.88"
    })
    void publishedRates(String currency, String amount, String day, String sterling) {
        Treated treated = BOOK.one(SampleLine.of("sale").gross(amount).currency(currency).on(day));
        assertThat(treated.queries()).isEmpty();
        assertThat(treated.money().rounded(Rounding.NEAREST_PENNY)).hasToString(sterling);
        assertThat(treated.net().plus(treated.vat())).isEqualTo(treated.money());
    }

    @Test
    void aSaleIsWorkedOutInSterling() {
        assertThat(BOOK.told(SampleLine.of("sale").gross("2340.00").currency("EUR")))
                .isEqualTo(
                        "uk-sale S17a 20%: 1663.9645 + 332.7929, claim 0.00; 1=332.7929"
                                + " 6=1663.9645; asks nothing");
    }

    /** VATA 1994 Sch 6 para 11: in sterling; a treatment decided on makes no euro a pound. */
    @Test
    void aDecidedTreatmentWaitsForItsRate() {
        SampleLine bill =
                SampleLine.of("purchase")
                        .party("Cobble Hare Couriers Ltd", "GB", "GB101747696")
                        .evidence("invoice")
                        .rate("20")
                        .printed("100", "20")
                        .currency("EUR");
        Decision decided =
                new Decision(
                        1,
                        Decision.Target.ENTRY,
                        "1",
                        Decision.Action.TREAT_AS,
                        "uk-purchase",
                        "looked at it",
                        "Ada Fern",
                        LocalDate.of(2026, 8, 20));
        assertThat(Treating.gb().deciding(decided).told(bill))
                .isEqualTo(
                        "undecided A01 no rate: 100.00 + 0.00, claim 0.00; no box; asks no-exchange-rate");
        assertThat(Treating.gb().holding(new MonthlyRates()).deciding(decided).told(bill))
                .startsWith("uk-purchase U15a 20%: 85.3315 + 17.0663, claim 17.0663; 4=17.0663");
    }

    @Test
    void theRateAndItsPlaceAreKept() {
        Conversion conversion =
                BOOK.one(SampleLine.of("sale").gross("2340.00").currency("EUR"))
                        .conversion()
                        .orElseThrow();
        assertThat(conversion.quoted()).isEqualTo("1.1719 EUR for 1 GBP");
        assertThat(conversion.source(id -> "2026-08.xml"))
                .isEqualTo("the tax authority, 2026-08-01 to 2026-08-31, 2026-08.xml row 14");
        assertThat(conversion.text()).isEqualTo("1996.7574 13");
        assertThat(
                        Conversion.parse(
                                conversion.text(),
                                "EUR",
                                "GBP",
                                id -> Optional.of(conversion.held().get(0))))
                .contains(conversion);
    }

    @Test
    void sterlingIsLeftAlone() {
        assertThat(BOOK.one(SampleLine.of("sale").gross("120")).conversion()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"2026-05-31, EUR, 2026-05", "2026-09-01, EUR, 2026-09", "2026-08-01, CHF, 2026-08"})
    void aMissingRateIsAsked(String day, String currency, String month) {
        Treated treated = BOOK.one(SampleLine.of("sale").gross("120").currency(currency).on(day));
        assertThat(treated.boxes()).isEmpty();
        assertThat(treated.queries())
                .extracting(Query::question)
                .containsExactly(
                        "For 120.00 %s the book holds no rate of the tax authority in %s, so it is in no box. Import its file of the rates for that month, CSV or XML."
                                .formatted(currency, month));
    }

    /** One rate for every amount of the document, each to the penny in a book that rounds lines. */
    @Test
    void eachAmountToThePennyWhereLinesAreRounded() {
        Treating perLine = Treating.of(SampleSettings.perLine()).holding(new MonthlyRates());
        assertThat(perLine.told(SampleLine.of("sale").gross("2340.00").currency("EUR")))
                .isEqualTo(
                        "uk-sale S17a 20%: 1663.97 + 332.79, claim 0.00; 1=332.79 6=1663.97; asks"
                                + " nothing");
    }

    private static SampleLine bill(String net, String vat) {
        return SampleLine.of("expense")
                .party("Example supplier", "GB", "GB101747696")
                .document("S-1")
                .rate("20")
                .evidence("invoice")
                .printed(net, vat)
                .currency("EUR");
    }

    /** VAT Regulations 1995 reg 14(1)(l): the total of VAT in sterling. */
    @Test
    void vatInAnotherCurrencyAloneIsConvertedAndAsked() {
        Treated treated = BOOK.one(bill("1171.90", "234.38"));
        assertThat(Treating.told(treated))
                .isEqualTo(
                        "uk-purchase U15a 20%: 1000.00 + 200.00, claim 200.00; 4=200.00 7=1000.00;"
                                + " asks vat-not-in-sterling");
        assertThat(treated.queries())
                .extracting(Query::question)
                .containsExactly(
                        "The document prints its VAT in EUR alone, and it must be stated in sterling"
                                + " too. What it comes to is reclaimed, 200.00. Ask the supplier for"
                                + " an invoice that states it, and enter that as sterling_vat.");
        assertThat(treated.queries().get(0).holdsClose()).isFalse();
        EvidenceGrade grade = treated.evidence().orElseThrow();
        assertThat(grade.grade()).isEqualTo(EvidenceGrade.Grade.ENOUGH);
        assertThat(grade.reasons())
                .contains("its amounts are in EUR: the VAT must be stated in GBP");
    }

    /** What the document prints in sterling stands, at whatever rate its supplier used. */
    @Test
    void vatPrintedInSterlingIsTakenAsPrinted() {
        Treated treated =
                BOOK.one(bill("1171.90", "234.38").particular(Particular.STERLING_VAT, "201.55"));
        assertThat(Treating.told(treated))
                .isEqualTo(
                        "uk-purchase U15a 20%: 1000.00 + 201.55, claim 201.55; 4=201.55 7=1000.00;"
                                + " asks nothing");
        assertThat(treated.evidence().orElseThrow().reasons())
                .contains("VAT of 201.55 stated in GBP");
        assertThat(treated.money()).hasToString("1201.55");
    }

    /**
     * 234.38 EUR is 200.00 at the rate of August 2026: asked where it is more than a tenth and a
     * penny from that, a limit of our own, and always on the other side of nought.
     */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({"220.01, false", "220.02, true", "179.99, false", "179.98, true", "-200.00, true"})
    void vatInSterlingFarFromTheRateIsAsked(String sterling, boolean asked) {
        Treated treated =
                BOOK.one(bill("1171.90", "234.38").particular(Particular.STERLING_VAT, sterling));
        assertThat(treated.queries().stream().map(Query::question).toList())
                .isEqualTo(
                        asked
                                ? List.of(
                                        "Document S-1 states its VAT of 234.38 EUR as %s in sterling, and at the rate held that VAT is 200.00. It is taken as stated in sterling. Look at the document, and state as sterling_vat what it has; if that is it, ask the supplier, or set the question aside."
                                                .formatted(sterling))
                                : List.of());
        assertThat(treated.queries()).allMatch(Query::holdsClose);
    }

    /** So is what a seller's own invoice states; the same amount is nothing to ask. */
    @Test
    void vatOfASaleInSterlingFarFromTheRate() {
        SampleLine sale =
                SampleLine.of("sale").rate("20").printed("1171.90", "234.38").currency("EUR");
        assertThat(BOOK.told(sale.particular(Particular.STERLING_VAT, "1.00")))
                .endsWith("1=1.00 6=1000.00; asks sterling-vat-differs");
        assertThat(BOOK.told(sale.particular(Particular.STERLING_VAT, "200.00")))
                .endsWith("1=200.00 6=1000.00; asks nothing");
    }

    /** HMRC manual VAEC0180: of an overcharge only what the rate gives is reclaimed. */
    @Test
    void anOverchargeIsSeenInTheDocumentsOwnCurrency() {
        Treated treated =
                BOOK.one(bill("1171.90", "468.76").particular(Particular.STERLING_VAT, "404.00"));
        assertThat(Treating.told(treated))
                .isEqualTo(
                        "uk-purchase U15a 20%: 1000.00 + 404.00, claim 202.00; 4=202.00 7=1000.00;"
                                + " asks vat-overcharged");
    }

    /** A service from abroad: VAT is worked out on the sterling value. VATA 1994 ss.7A and 8. */
    @Test
    void aServiceFromAbroad() {
        Treated treated =
                BOOK.one(
                        SampleLine.of("expense")
                                .party("Example host", "DE", "DE123456789")
                                .document("H-1")
                                .evidence("invoice")
                                .gross("1171.90")
                                .currency("EUR"));
        assertThat(treated.boxes())
                .containsEntry("1", Amount.of("200"))
                .containsEntry("4", Amount.of("200"))
                .containsEntry("6", Amount.of("1000"))
                .containsEntry("7", Amount.of("1000"));
        assertThat(treated.queries()).isEmpty();
    }

    /** VAT Regulations 1995 reg 16A: 250 with VAT, here 292.97 and 292.99 euro at 1.1719. */
    @ParameterizedTest
    @CsvSource({"292.97, within", "292.99, above"})
    void limitsCompareSterling(String gross, String side) {
        Treated treated =
                BOOK.one(
                        SampleLine.of("expense")
                                .party("Example supplier", "GB", "GB101747696")
                                .document("S-1")
                                .rate("20")
                                .evidence("simplified")
                                .gross(gross)
                                .currency("EUR"));
        assertThat(treated.evidence().orElseThrow().reasons())
                .anyMatch(r -> r.startsWith("the whole document comes to ") && r.contains(side));
        assertThat(treated.boxes().containsKey("4")).isEqualTo(side.equals("within"));
    }

    /** The consignment limit of 135 pounds is 158.20 euro at 1.1719. */
    @ParameterizedTest
    @CsvSource({"158.20, within", "158.22, above"})
    void theConsignmentLimitComparesSterling(String consignment, String side) {
        SampleLine line =
                SampleLine.of("sale")
                        .gross("100")
                        .goods("CN", "GB")
                        .currency("EUR")
                        .particular(Particular.CONSIGNMENT, consignment);
        SampleLine sterling =
                SampleLine.of("sale")
                        .gross("85.33")
                        .goods("CN", "GB")
                        .particular(
                                Particular.CONSIGNMENT,
                                side.equals("within") ? "135.00" : "135.01");
        assertThat(BOOK.one(line).rule()).isEqualTo(BOOK.one(sterling).rule());
    }

    /**
     * VAT 700/1,171.90: bought at 1,171.90 euro, sold at 1,600.00 pounds under the margin scheme.
     */
    @Test
    void marginGoodsBoughtInAnotherCurrency() {
        List<Treated> treated =
                BOOK.all(
                        SampleLine.of("purchase")
                                .product("CHAIR")
                                .rate("margin")
                                .gross("1171.90")
                                .currency("EUR"),
                        SampleLine.of("sale").product("CHAIR").rate("margin").gross("1600.00"));
        assertThat(treated.get(1).vat()).hasToString("100.00");
    }

    /** A credit may follow the rate of its supply: stated, since no row can know it. */
    @Test
    void theDayOfTheRateMayBeStated() {
        Treated treated =
                BOOK.one(
                        SampleLine.of("sale-refund")
                                .gross("2500")
                                .currency("USD")
                                .particular(Particular.EXCHANGE_DAY, "2026-07-20"));
        assertThat(treated.money().rounded(Rounding.NEAREST_PENNY)).hasToString("1865.11");
    }

    private static Treating ecb(MonthlyRates rates) {
        return Treating.of(SampleSettings.choosing(Map.of("exchange-rates", "ecb"))).holding(rates);
    }

    /**
     * By way of two rates for one euro: 1.1500 dollars and 0.8625 pounds, so 1.3333… for one pound.
     */
    @Test
    void byWayOfTheEuro() {
        MonthlyRates rates =
                new MonthlyRates()
                        .ecb("USD", "2026-08-14", "1.1500")
                        .ecb("GBP", "2026-08-14", "0.86250");
        Treated dollars =
                ecb(rates)
                        .one(SampleLine.of("sale").gross("2500").currency("USD").on("2026-08-14"));
        assertThat(dollars.money()).hasToString("1875.00");
        assertThat(dollars.conversion().orElseThrow().quoted())
                .isEqualTo("1.1500 USD for 0.86250 GBP");
        assertThat(dollars.conversion().orElseThrow().source(id -> "day.xml"))
                .isEqualTo(
                        "the ECB, 2026-08-14, 1.1500 USD for 1 EUR, day.xml row 18; the ECB,"
                                + " 2026-08-14, 0.86250 GBP for 1 EUR, day.xml row 19");
        Treated euro =
                ecb(rates)
                        .one(SampleLine.of("sale").gross("1000").currency("EUR").on("2026-08-14"));
        assertThat(euro.money()).hasToString("862.50");
        assertThat(euro.conversion().orElseThrow().quoted()).isEqualTo("1 EUR for 0.86250 GBP");
    }

    /** Nothing is published at a weekend: 15 and 16 August 2026 have the rate of Friday. */
    @ParameterizedTest
    @CsvSource({
        "2026-08-14, 862.50",
        "2026-08-15, 862.50",
        "2026-08-16, 862.50",
        "2026-08-17, 870.00"
    })
    void aWeekendHasTheRateOfFriday(String day, String sterling) {
        MonthlyRates rates =
                new MonthlyRates()
                        .ecb("GBP", "2026-08-14", "0.86250")
                        .ecb("GBP", "2026-08-17", "0.87000");
        assertThat(
                        ecb(rates)
                                .one(SampleLine.of("sale").gross("1000").currency("EUR").on(day))
                                .money())
                .hasToString(sterling);
    }

    @Test
    void aDayWithoutARateIsAsked() {
        Treated treated =
                ecb(new MonthlyRates().ecb("GBP", "2026-08-14", "0.86250"))
                        .one(SampleLine.of("sale").gross("120").currency("EUR").on("2026-08-18"));
        assertThat(treated.queries())
                .extracting(Query::question)
                .containsExactly(
                        "For 120.00 EUR the book holds no rate of the ECB on 2026-08-18, so it is in no box. Import its file"
                                + " of that day, or state as exchange_day the last day before on"
                                + " which it published one.");
    }
}
