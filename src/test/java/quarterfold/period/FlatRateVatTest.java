package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Periods;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Schemes;
import quarterfold.ledger.Settings;

/** The flat-rate scheme over whole periods: VAT Regulations 1995 Part VIIA. */
class FlatRateVatTest {

    @TempDir private Path folder;

    private static Settings settings(String registered, String ends, Map<String, String> choices) {
        return SampleSettings.of(
                SampleSettings.choosing(choices),
                Periods.of(LocalDate.parse(registered), SampleSettings.months(ends)),
                Schemes.of("flat-rate", Optional.of("044")));
    }

    private static Settings old() {
        return settings("2003-01-01", "3 6 9 12", Map.of());
    }

    private <T> T in(Settings settings, Function<TempBook, T> seen, SampleLine... lines) {
        try (TempBook book = new TempBook(folder, settings)) {
            book.enter("period.csv", lines);
            return seen.apply(book);
        }
    }

    /** The figures of boxes 1, 4, 6 and 7. */
    private static String boxes(VatReturn vatReturn) {
        return "%s %s %s %s"
                .formatted(
                        vatReturn.box("1").text(),
                        vatReturn.box("4").text(),
                        vatReturn.box("6").text(),
                        vatReturn.box("7").text());
    }

    private String boxes(Settings settings, String period, SampleLine... lines) {
        return in(settings, book -> boxes(book.of(period)), lines);
    }

    private static SampleLine sale(String day, String gross) {
        return SampleLine.of("sale").on(day).gross(gross);
    }

    private static SampleLine goods(String day, String gross) {
        return SampleLine.of("purchase")
                .on(day)
                .gross(gross)
                .rate("20")
                .category("stock")
                .party("Example supplier", "GB", "GB101747696")
                .evidence("invoice");
    }

    /**
     * Relevant goods under 250 a quarter or under 2 per cent of the turnover: the calculator of the
     * tax authority, ResultController.whichResult; examples 1 and 2 are official.
     */
    @ParameterizedTest
    @CsvSource({
        "10000, 260.00, 750.00, official example 1 (secondary source)",
        "20000, 325.00, 3300.00, official example 2 (secondary source)",
        "12500, 250.00, 937.50, exactly 250 and exactly 2 per cent",
        "12500, 249.99, 2062.50, a penny under both",
        "9000, 249.99, 1485.00, a penny under 250",
        "9000, 250.00, 675.00, exactly 250",
        "30000, 600.00, 2250.00, exactly 2 per cent",
        "30000, 599.99, 4950.00, a penny under 2 per cent"
    })
    void limitedCost(String turnover, String goods, String vat, String source) {
        assertThat(
                        boxes(
                                old(),
                                "2026-09",
                                sale("2026-08-01", turnover),
                                goods("2026-08-01", goods)))
                .as(source)
                .isEqualTo("%s 0.00 %s 0".formatted(vat, turnover));
    }

    /**
     * VAT Regulations 1995 reg 55A(4)(b)(ii): in proportion to the length; 1,000 x 92/365 is
     * 252.0548.
     */
    @ParameterizedTest
    @CsvSource({"250.00, 1485.00", "252.05, 1485.00", "252.06, 675.00"})
    void limitedCostByDays(String goods, String vat) {
        Settings byDays =
                settings("2003-01-01", "3 6 9 12", Map.of("limited-cost-goods-limit", "by-days"));
        assertThat(boxes(byDays, "2026-09", sale("2026-08-01", "9000"), goods("2026-08-01", goods)))
                .isEqualTo("%s 0.00 9000 0".formatted(vat));
    }

    /** A month has a twelfth of 1,000, to four decimals; a year all of it. */
    @ParameterizedTest
    @CsvSource({
        "1 2 3 4 5 6 7 8 9 10 11 12, 83.34, 75.00",
        "1 2 3 4 5 6 7 8 9 10 11 12, 83.33, 165.00",
        "9, 1000.00, 75.00",
        "9, 999.99, 165.00"
    })
    void otherLengths(String ends, String goods, String vat) {
        assertThat(
                        boxes(
                                settings("2003-01-01", ends, Map.of()),
                                "2026-09",
                                sale("2026-09-01", "1000"),
                                goods("2026-09-02", goods)))
                .isEqualTo("%s 0.00 1000 0".formatted(vat));
    }

    /** Categories that are no relevant goods, and what a credit takes away. */
    @Test
    void relevantGoods() {
        assertThat(
                        boxes(
                                old(),
                                "2026-09",
                                sale("2026-08-01", "10000"),
                                goods("2026-08-01", "200").category("packaging"),
                                goods("2026-08-01", "49.99").category("stationery"),
                                goods("2026-08-01", "5000").category("professional"),
                                goods("2026-08-01", "900").category("business-asset")))
                .isEqualTo("1650.00 0.00 10000 0");
    }

    @Test
    void aCreditTakesRelevantGoodsAway() {
        assertThat(
                        boxes(
                                old(),
                                "2026-09",
                                sale("2026-08-01", "10000"),
                                goods("2026-08-01", "260"),
                                SampleLine.of("purchase-credit")
                                        .gross("10.01")
                                        .category("stock")
                                        .party("Example supplier", "GB", "GB101747696")))
                .isEqualTo("1650.00 0.00 10000 0");
    }

    /** SI 2017/295 reg 1: the part of a period from 1 April 2017 has a test of its own. */
    @Test
    void thePeriodTheTestBeganIn() {
        List<Adjustment> adjustments =
                in(
                        settings("2003-01-01", "1 4 7 10", Map.of()),
                        book -> book.of("2017-04").adjustments(),
                        sale("2017-03-31", "6000"),
                        sale("2017-04-01", "4000"),
                        goods("2017-03-31", "1000"),
                        goods("2017-04-01", "83.33"));
        assertThat(adjustments)
                .extracting(Adjustment::about, a -> a.vat().toString())
                .containsExactly(
                        tuple("2017-02-01 to 2017-03-31", "450.00"),
                        tuple("2017-04-01 to 2017-04-30", "660.00"));
    }

    /** VAT Regulations 1995 reg 55JB; HMRC manual FRS7100: until the day before the anniversary. */
    @Test
    void theFirstYearOfRegistrationEndsWithinAPeriod() {
        VatReturn vatReturn =
                in(
                        settings("2025-08-15", "3 6 9 12", Map.of()),
                        book -> book.of("2026-09"),
                        sale("2026-08-14", "1000"),
                        sale("2026-08-15", "1000"),
                        goods("2026-08-01", "300"));
        assertThat(boxes(vatReturn)).isEqualTo("140.00 0.00 2000 0");
        assertThat(vatReturn.adjustments())
                .extracting(Adjustment::why)
                .containsExactly(
                        "VAT due under the flat-rate scheme: the percentage of the trade sector on the turnover with VAT. Turnover with VAT 1000.00 at 6.5% is 65.00. 7.5% for sector 044, Retailing not listed elsewhere, less 1 in the first year of registration, to 2026-08-14. Relevant goods with VAT 300.00 are not under 250.00, the part of 1000.00 a year for 3 months, and not under 40.00, 2% of the turnover: no limited-cost trader.",
                        "VAT due under the flat-rate scheme: the percentage of the trade sector on the turnover with VAT. Turnover with VAT 1000.00 at 7.5% is 75.00. 7.5% for sector 044, Retailing not listed elsewhere. Relevant goods with VAT 300.00 are not under 250.00, the part of 1000.00 a year for 3 months, and not under 40.00, 2% of the turnover: no limited-cost trader.");
    }

    /** The percentage of limited-cost traders is lower in the first year too; a book may say no. */
    @ParameterizedTest
    @CsvSource({"yes, 155.00", "no, 165.00"})
    void theFirstYearOfALimitedCostTrader(String applied, String vat) {
        assertThat(
                        boxes(
                                settings(
                                        "2026-04-01",
                                        "3 6 9 12",
                                        Map.of("flat-rate-first-year", applied)),
                                "2026-09",
                                sale("2026-08-14", "1000")))
                .isEqualTo(vat + " 0.00 1000 0");
    }

    /** Zero-rated, exempt and exported goods are turnover; refunds and discounts are taken away. */
    @Test
    void turnover() {
        assertThat(
                        boxes(
                                old(),
                                "2026-09",
                                goods("2026-08-01", "1000"),
                                sale("2026-08-01", "1200").rate("20"),
                                sale("2026-08-01", "500").rate("0"),
                                sale("2026-08-01", "300").rate("exempt"),
                                sale("2026-08-01", "400").goods("GB", "US").evidence("export"),
                                sale("2026-08-01", "70").rate("outside"),
                                SampleLine.of("sale-refund").gross("120").rate("20"),
                                SampleLine.of("discount").gross("80").rate("20")))
                .isEqualTo("165.00 0.00 2200 0");
    }

    /** HMRC manual FRS6500: 2,000 or more with VAT; reg 55E(1): more than 2,000. */
    @ParameterizedTest
    @CsvSource({
        "1999.99, claim, 0.00, 0",
        "2000.00, claim, 333.33, 1666",
        "2000.00, not-claim, 0.00, 0",
        "2000.01, not-claim, 333.34, 1666"
    })
    void capitalGoodsBought(String gross, String choice, String claimed, String value) {
        String boxes =
                boxes(
                        settings(
                                "2003-01-01",
                                "3 6 9 12",
                                Map.of("flat-rate-capital-goods-at-limit", choice)),
                        "2026-09",
                        sale("2026-08-01", "10000"),
                        goods("2026-08-01", "500"),
                        goods("2026-08-02", gross).category("capital-goods"));
        assertThat(boxes).isEqualTo("750.00 %s 10000 %s".formatted(claimed, value));
    }

    /** Capital goods on which VAT was claimed are sold outside the scheme, other assets within. */
    @ParameterizedTest
    @CsvSource({"capital-goods, 950.00, 11000", "business-asset, 840.00, 11200"})
    void assetsSold(String category, String vat, String turnover) {
        assertThat(
                        boxes(
                                old(),
                                "2026-09",
                                sale("2026-08-01", "10000"),
                                goods("2026-08-01", "500"),
                                sale("2026-08-02", "1200").rate("20").category(category)))
                .isEqualTo("%s 0.00 %s 0".formatted(vat, turnover));
    }

    /** VAT Notice 733, change note of 17 February 2022: outside the turnover from 1 June 2022. */
    @ParameterizedTest
    @CsvSource({"2022-05-31, 0.00 0.00 0 0, 1", "2022-06-01, 100.00 0.00 0 500, 0"})
    void postponedImports(String day, String expected, int queries) {
        VatReturn vatReturn =
                in(
                        old(),
                        book -> book.of("2022-06"),
                        SampleLine.of("import-vat-postponed")
                                .on(day)
                                .printed("500", "100")
                                .evidence("postponed-statement"));
        assertThat(boxes(vatReturn)).isEqualTo(expected);
        assertThat(vatReturn.queries()).hasSize(queries);
    }

    /** Import VAT paid, private use, and acquisitions in Northern Ireland claim nothing. */
    @Test
    void whatIsNotReclaimed() {
        Settings ni =
                SampleSettings.of(
                        SampleSettings.of("GB", "XI", true, Map.of()),
                        old().periods(),
                        old().schemes());
        VatReturn vatReturn =
                in(
                        ni,
                        book -> book.of("2026-09"),
                        SampleLine.of("import-vat-paid").printed("500", "100"),
                        SampleLine.of("private-use").gross("120").rate("20"),
                        SampleLine.of("purchase")
                                .gross("200")
                                .goods("DE", "XI")
                                .party("Example supplier", "DE", "DE123456788"),
                        SampleLine.of("fee").gross("100").party("Example channel", "IE", ""),
                        SampleLine.of("fee-refund").gross("20").party("Example channel", "IE", ""));
        assertThat(TempBook.figures(vatReturn))
                .containsExactly(
                        "16.00", "40.00", "56.00", "0.00", "56.00", "80", "780", "0", "200");
        assertThat(vatReturn.queries()).isEmpty();
    }

    /** A foreign tax on a fee is asked about, and is never reclaimed. */
    @Test
    void foreignTaxOnAFee() {
        VatReturn vatReturn =
                in(
                        old(),
                        book -> book.of("2026-09"),
                        SampleLine.of("fee")
                                .printed("100", "23")
                                .party("Example channel", "IE", "IE6388047V"));
        assertThat(boxes(vatReturn)).isEqualTo("20.00 0.00 100 100");
        assertThat(TempBook.queries(vatReturn)).containsExactly("E1/foreign-vat-charged");
    }

    /** Missing evidence is no question where nothing is reclaimed. */
    @Test
    void aPurchaseWithoutADocument() {
        VatReturn vatReturn =
                in(
                        old(),
                        book -> book.of("2026-09"),
                        SampleLine.of("expense").gross("120").rate("20").evidence("missing"));
        assertThat(vatReturn.queries()).isEmpty();
        assertThat(boxes(vatReturn)).isEqualTo("0.00 0.00 0 0");
    }

    /** Each period by its own scheme; a close keeps what it took up. */
    @Test
    void aSchemeTakenUpAndLeft() {
        Schemes changing =
                new Schemes(
                        new TreeMap<>(
                                Map.of(
                                        LocalDate.parse("2003-01-01"), "standard",
                                        LocalDate.parse("2026-04-01"), "flat-rate",
                                        LocalDate.parse("2026-07-01"), "standard")),
                        Optional.of("044"));
        try (TempBook book = new TempBook(folder, SampleSettings.on(changing))) {
            for (String day : List.of("2026-03-31", "2026-04-01", "2026-06-30", "2026-07-01")) {
                book.enter(day + ".csv", sale(day, "1200"), goods(day, "600"));
            }
            assertThat(boxes(book.of("2026-03"))).isEqualTo("200.00 100.00 1000 500");
            assertThat(boxes(book.of("2026-06"))).isEqualTo("180.00 0.00 2400 0");
            assertThat(boxes(book.of("2026-09"))).isEqualTo("200.00 100.00 1000 500");
            book.close("2026-03");
            VatReturn draft = book.of("2026-06");
            VatReturn closed = book.close("2026-06");
            assertThat(closed.adjustments()).isEqualTo(draft.adjustments()).hasSize(1);
            assertThat(boxes(closed)).isEqualTo("180.00 0.00 2400 0");
        }
    }

    /** The tables begin on 4 January 2011: SI 2010/2940. */
    @ParameterizedTest
    @CsvSource({"2011-01-03, 0.00, 1", "2011-01-04, 75.00, 0"})
    void aDayWithoutAPercentage(String day, String vat, int queries) {
        VatReturn vatReturn = in(old(), book -> book.of("2011-03"), sale(day, "1000"));
        assertThat(vatReturn.box("1").text()).isEqualTo(vat);
        assertThat(vatReturn.queries())
                .hasSize(queries)
                .allSatisfy(
                        q ->
                                assertThat(q.question())
                                        .isEqualTo(
                                                "Turnover of 1000.00 under the flat-rate scheme from 2011-01-01, but the tables have no percentage for the sector 044 on that day, so it is in no box. Set flat_rate_sector to an id of flat-rates.csv, or enter the turnover under another scheme."));
    }

    /** The rounding the book did not choose moves no flat-rate figure, and loses none. */
    @Test
    void theOtherRounding() {
        Map<String, String> other =
                in(
                        old(),
                        book -> {
                            Map<String, String> texts = new TreeMap<>();
                            book.returns()
                                    .otherRounding(book.period("2026-09"))
                                    .forEach((box, figure) -> texts.put(box, figure.toString()));
                            return texts;
                        },
                        sale("2026-08-01", "9.99"),
                        goods("2026-08-01", "300"));
        assertThat(other).containsEntry("1", "0.75").containsEntry("6", "9.00");
    }
}
