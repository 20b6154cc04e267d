package quarterfold.money;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** T-201 to T-204 and T-207: the fraction of each rate, and the VAT inside published prices. */
class FractionsTest {

    @ParameterizedTest(name = "{0}: {1}% is {2}/{3}; VAT inside {4} is {5}, {6} {7} [{9}]")
    @CsvFileSource(files = "fixtures/published/fractions.csv", numLinesToSkip = 1)
    void publishedFractions(
            String id,
            BigDecimal rate,
            String numerator,
            String denominator,
            @Nullable String gross,
            @Nullable String exact,
            @Nullable String rounding,
            @Nullable String vat,
            String figures,
            String source) {
        Percent percent = new Percent(rate);
        assertThat(Amount.of(denominator).vatInside(percent))
                .as("%s %s %s", id, figures, source)
                .isEqualTo(Amount.of(numerator));
        if (gross != null && exact != null && rounding != null && vat != null) {
            Rounding named =
                    rounding.equals("half-up") ? Rounding.NEAREST_PENNY : Rounding.PENNY_DOWN;
            Amount inside = Amount.of(gross).vatInside(percent);
            assertThat(inside).as("%s %s", id, source).isEqualTo(Amount.of(exact));
            assertThat(inside.rounded(named)).as("%s %s", id, source).isEqualTo(Amount.of(vat));
        }
    }

    /**
     * T-204: a thousand sales at 9.99. VATREC12020 on VAT Notice 700 para 17.6 allows the nearest
     * penny of each or the exact sum; the two differ by five pounds.
     */
    @ParameterizedTest(name = "each rounded {0}: {1}")
    @CsvSource({"NEAREST_PENNY, 1670.00", "PENNY_DOWN, 1660.00", ", 1665.00"})
    void aThousandSales(@Nullable Rounding each, String sum) {
        Amount inside = Amount.of("9.99").vatInside(Percent.of("20"));
        Amount one = each == null ? inside : inside.rounded(each);
        Amount all = Amount.ZERO;
        for (int i = 0; i < 1000; i++) {
            all = all.plus(one);
        }
        assertThat(all).isEqualTo(Amount.of(sum));
    }

    /** T-204: three units at 9.99, each to the penny. */
    @ParameterizedTest(name = "each rounded {0}: {1}")
    @CsvSource({"NEAREST_PENNY, 5.01", "PENNY_DOWN, 4.98"})
    void threeUnits(Rounding each, String sum) {
        Amount one = Amount.of("9.99").vatInside(Percent.of("20")).rounded(each);
        assertThat(one.plus(one).plus(one)).isEqualTo(Amount.of(sum));
    }

    /** T-205: net 19.99 at 20% is 3.998; VATREC12010 allows 3.99 on a bill, and 4.00 as well. */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({"PENNY_DOWN, 3.99", "NEAREST_PENNY, 4.00"})
    void vatOfABill(Rounding rounding, String vat) {
        Amount exact = Amount.of("19.99").vatOnTop(Percent.of("20"));
        assertThat(exact).isEqualTo(Amount.of("3.998"));
        assertThat(exact.rounded(rounding)).isEqualTo(Amount.of(vat));
    }

    /** T-206: unit VAT of 0.0024 by VAT Notice 700 para 17.5.2, to 0.1p or to 0.5p. */
    @ParameterizedTest(name = "{0} to {1}: {2}")
    @CsvSource({
        "0.0024, NEAREST_TENTH_OF_A_PENNY, 0.002",
        "0.0026, NEAREST_HALF_PENNY, 0.005",
        "0.0025, NEAREST_HALF_PENNY, 0.005",
        "0.0024, NEAREST_HALF_PENNY, 0",
        "0.0025, NEAREST_TENTH_OF_A_PENNY, 0.003",
        "0.0075, NEAREST_HALF_PENNY, 0.01",
        "0.0074, NEAREST_HALF_PENNY, 0.005"
    })
    void vatOfAUnit(String exact, Rounding rounding, String vat) {
        assertThat(Amount.of(exact).rounded(rounding)).isEqualTo(Amount.of(vat));
    }

    /** The same price at every rate there was; to four decimals, half up. */
    @ParameterizedTest(name = "VAT inside 100.00 at {0}% is {1}")
    @CsvSource({
        "20, 16.6667",
        "5, 4.7619",
        "17.5, 14.8936",
        "15, 13.0435",
        "12.5, 11.1111",
        "8, 7.4074",
        "10, 9.0909",
        "0, 0"
    })
    void insideAHundred(String rate, String vat) {
        assertThat(Amount.of("100").vatInside(Percent.of(rate))).isEqualTo(Amount.of(vat));
        assertThat(Amount.of("-100").vatInside(Percent.of(rate)))
                .isEqualTo(Amount.of(vat).negated());
    }
}
