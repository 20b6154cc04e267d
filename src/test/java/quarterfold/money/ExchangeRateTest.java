package quarterfold.money;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Example 5-A: published monthly rates of the tax authority (secondary source), our amounts. */
class ExchangeRateTest {

    @ParameterizedTest
    @CsvSource({
        "2340.00, 1.1719, 1996.7574, 1996.76",
        "-2340.00, 1.1719, -1996.7574, -1996.76",
        "2500, 1.3367, 1870.2775, 1870.28",
        "2500, 1.3404, 1865.1149, 1865.11",
        "1000, 1.1567, 864.5284, 864.53",
        "0, 1.1567, 0.00, 0.00"
    })
    void converts(String amount, String units, String exact, String penny) {
        ExchangeRate rate = ExchangeRate.of(new BigDecimal(units));
        assertThat(rate.of(Amount.of(amount))).hasToString(exact);
        assertThat(rate.of(Amount.of(amount), Rounding.NEAREST_PENNY)).hasToString(penny);
    }

    /** The cross of two rates is one division: rounding it first would give 2500 / 1.3333. */
    @Test
    void aCrossIsNeverRoundedItself() {
        ExchangeRate cross = new ExchangeRate(new BigDecimal("1.15"), new BigDecimal("0.8625"));
        assertThat(cross.of(Amount.of("2500"))).hasToString("1875.00");
        assertThat(ExchangeRate.of(new BigDecimal("1.3333")).of(Amount.of("2500")))
                .hasToString("1875.0469");
    }

    @ParameterizedTest
    @CsvSource({"0, 1", "-1.2, 1", "1, 0", "1, -1"})
    void aRateIsAboveNought(String units, String worth) {
        assertThatThrownBy(() -> new ExchangeRate(new BigDecimal(units), new BigDecimal(worth)))
                .hasMessage("a rate is above nought: %s for %s".formatted(units, worth));
    }
}
