package quarterfold.money;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PercentTest {

    @ParameterizedTest(name = "{0} is {1}")
    @CsvSource({"20, 20", "20.00, 20", "17.50, 17.5", "0, 0", "0.0, 0", "100, 100", "1E+2, 100"})
    void onePercentageHoweverItIsWritten(String text, String written) {
        assertThat(Percent.of(text)).isEqualTo(Percent.of(written)).hasToString(written);
        assertThat(Percent.of(text)).hasSameHashCodeAs(Percent.of(written));
    }

    @Test
    void aNegativeIsRefused() {
        assertThatThrownBy(() -> Percent.of("-0.5"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("a percentage is not negative: -0.5");
        assertThatThrownBy(() -> Percent.of("twenty")).isInstanceOf(NumberFormatException.class);
    }

    @Test
    void complement() {
        assertThat(Percent.of("60").complement()).isEqualTo(Percent.of("40"));
        assertThat(Percent.HUNDRED.complement()).isEqualTo(Percent.ZERO);
        assertThat(Percent.ZERO.complement()).isEqualTo(Percent.HUNDRED);
        assertThatThrownBy(() -> Percent.of("100.5").complement())
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("a percentage is not negative: -0.5");
    }

    @Test
    void orderAndZero() {
        assertThat(Percent.of("5")).isLessThan(Percent.of("12.5"));
        assertThat(Percent.of("17.5")).isGreaterThan(Percent.of("15"));
        assertThat(Percent.of("20")).isEqualByComparingTo(Percent.of("20.0"));
        assertThat(Percent.ZERO.isZero()).isTrue();
        assertThat(Percent.of("0.1").isZero()).isFalse();
        assertThat(Percent.of("1E+2").value()).isEqualTo(new BigDecimal("100"));
    }
}
