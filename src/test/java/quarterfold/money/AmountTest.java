package quarterfold.money;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AmountTest {

    private static final Amount MOST = new Amount(Long.MAX_VALUE);
    private static final Amount LEAST = new Amount(Long.MIN_VALUE);

    @ParameterizedTest(name = "{0} is {1} ten-thousandths, written {2}")
    @CsvSource({
        "0, 0, 0.00",
        "1, 10000, 1.00",
        "1234.5, 12345000, 1234.50",
        "-1234.5, -12345000, -1234.50",
        "0.01, 100, 0.01",
        "0.001, 10, 0.001",
        "0.0001, 1, 0.0001",
        "-0.0001, -1, -0.0001",
        "4960.00000, 49600000, 4960.00",
        "1E+3, 10000000, 1000.00",
        "9999999999999.99, 99999999999999900, 9999999999999.99",
        "922337203685477.5807, 9223372036854775807, 922337203685477.5807",
        "-922337203685477.5808, -9223372036854775808, -922337203685477.5808"
    })
    void textForms(String text, long tenThousandths, String written) {
        Amount amount = Amount.of(text);
        assertThat(amount.tenThousandths()).isEqualTo(tenThousandths);
        assertThat(amount).hasToString(written);
        assertThat(Amount.of(amount.decimal())).isEqualTo(amount);
        assertThat(amount.decimal().scale()).isEqualTo(4);
    }

    @ParameterizedTest
    @ValueSource(strings = {"0.00001", "1.23456", "-0.00005"})
    void moreThanFourDecimalsAreRefused(String text) {
        assertThatThrownBy(() -> Amount.of(text))
                .isInstanceOf(ArithmeticException.class)
                .hasMessage("Rounding necessary");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "1,000.00", "£5", "12.00 ", "one", "0x10"})
    void whatIsNoPlainNumberIsRefused(String text) {
        assertThatThrownBy(() -> Amount.of(text)).isInstanceOf(NumberFormatException.class);
    }

    @ParameterizedTest
    @ValueSource(strings = {"922337203685477.5808", "-922337203685477.5809", "1e30"})
    void whatIsOutOfRangeIsRefused(String text) {
        assertThatThrownBy(() -> Amount.of(text)).isInstanceOf(ArithmeticException.class);
    }

    @Test
    void overflowIsRefused() {
        Amount least = new Amount(1);
        assertThatThrownBy(() -> MOST.plus(least)).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> LEAST.minus(least)).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(LEAST::negated).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(LEAST::abs).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> LEAST.times(-1)).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> Amount.ofPennies(Long.MAX_VALUE / 100 + 1))
                .isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> MOST.portion(Percent.of("100.1")))
                .isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> MOST.rounded(Rounding.NEAREST_TENTH_OF_A_PENNY))
                .isInstanceOf(ArithmeticException.class);
    }

    @Test
    void addsAndTakesAway() {
        Amount three = Amount.of("3.0001");
        Amount two = Amount.of("2");
        assertThat(three.plus(two)).isEqualTo(Amount.of("5.0001"));
        assertThat(three.minus(two)).isEqualTo(Amount.of("1.0001"));
        assertThat(two.minus(three)).isEqualTo(Amount.of("-1.0001"));
        assertThat(three.negated()).isEqualTo(Amount.of("-3.0001"));
        assertThat(Amount.ofPennies(-1250)).isEqualTo(Amount.of("-12.5"));
    }

    @Test
    void abs() {
        assertThat(Amount.of("-2").abs()).isEqualTo(Amount.of("2"));
        assertThat(Amount.of("2").abs()).isEqualTo(Amount.of("2"));
        assertThat(Amount.ZERO.abs()).isEqualTo(Amount.ZERO);
    }

    @ParameterizedTest(name = "5.25 times {0} is {1}")
    @CsvSource({"1, 5.25", "-1, -5.25", "0, 0"})
    void takesASign(int sign, String result) {
        assertThat(Amount.of("5.25").times(sign)).isEqualTo(Amount.of(result));
    }

    @ParameterizedTest(name = "{1}% on {0} is {2}")
    @CsvSource({
        "800, 20, 160",
        "19.99, 20, 3.998",
        "0.0001, 50, 0.0001",
        "-0.0001, 50, -0.0001",
        "0.0001, 49.9, 0",
        "-0.0001, 49.9, 0",
        "123.45, 17.5, 21.6038",
        "123.45, 0, 0"
    })
    void vatOnTopAndPortion(String net, String rate, String vat) {
        assertThat(Amount.of(net).vatOnTop(Percent.of(rate))).isEqualTo(Amount.of(vat));
        assertThat(Amount.of(net).portion(Percent.of(rate))).isEqualTo(Amount.of(vat));
    }

    /** Rounded once: to four decimals first, 0.00498 would be half a penny and go up. */
    @ParameterizedTest(name = "{2}% of {0} is {1}")
    @CsvSource({
        "0.0299, 0, 20, inside",
        "0.03, 0.01, 20, inside",
        "-0.03, -0.01, 20, inside",
        "9.99, 1.67, 20, inside",
        "0.0249, 0, 20, on top",
        "0.025, 0.01, 20, on top",
        "19.99, 4, 20, on top"
    })
    void vatToThePennyIsRoundedOnce(String price, String vat, String rate, String where) {
        Amount amount = Amount.of(price);
        Percent percent = Percent.of(rate);
        assertThat(
                        where.equals("inside")
                                ? amount.vatInside(percent, Rounding.NEAREST_PENNY)
                                : amount.vatOnTop(percent, Rounding.NEAREST_PENNY))
                .isEqualTo(Amount.of(vat));
    }

    @ParameterizedTest(name = "VAT of {0} at {1}% is on {2}")
    @CsvSource({"1744, 20, 8720", "-1744, 20, -8720", "1, 17.5, 5.7143", "0, 20, 0"})
    void netOfVat(String vat, String rate, String net) {
        assertThat(Amount.of(vat).netOfVat(Percent.of(rate))).isEqualTo(Amount.of(net));
    }

    @Test
    void aZeroRateHasNoNet() {
        assertThatThrownBy(() -> Amount.of("1").netOfVat(Percent.ZERO))
                .isInstanceOf(ArithmeticException.class);
    }

    /** T-1006: delivery of 3.00 over goods of 24.00 and 12.00, VAT Notice 700 section 31. */
    @Test
    void sharesByPrice() {
        Amount delivery = Amount.of("3");
        assertThat(delivery.shared(Amount.of("24"), Amount.of("36"))).isEqualTo(Amount.of("2"));
        assertThat(delivery.shared(Amount.of("12"), Amount.of("36"))).isEqualTo(Amount.of("1"));
        assertThat(Amount.of("1").shared(Amount.of("1"), Amount.of("3")))
                .isEqualTo(Amount.of("0.3333"));
        assertThat(Amount.of("-1").shared(Amount.of("2"), Amount.of("3")))
                .isEqualTo(Amount.of("-0.6667"));
        assertThatThrownBy(() -> delivery.shared(delivery, Amount.ZERO))
                .isInstanceOf(ArithmeticException.class);
    }

    @Test
    void orderAndSign() {
        assertThat(Amount.of("-0.0001")).isLessThan(Amount.ZERO);
        assertThat(Amount.of("10")).isGreaterThan(Amount.of("9.9999"));
        assertThat(Amount.of("10")).isEqualByComparingTo(Amount.of("10.00"));
        assertThat(Amount.of("10").isAbove(Amount.of("9.9999"))).isTrue();
        assertThat(Amount.of("10").isAbove(Amount.of("10"))).isFalse();
        assertThat(Amount.of("-10").isAbove(Amount.of("-9.9999"))).isFalse();
        assertThat(Amount.of("10").signum()).isOne();
        assertThat(Amount.of("-10").signum()).isEqualTo(-1);
        assertThat(Amount.ZERO.signum()).isZero();
        assertThat(Amount.of("0.00").isZero()).isTrue();
        assertThat(Amount.of("0.0001").isZero()).isFalse();
        assertThat(Amount.of("-0.0001").isZero()).isFalse();
    }

    /** VATA 1994 s19(2): the value and its VAT are the price, to within the four decimals. */
    @Test
    void insideAndOnTopAgree() {
        SplittableRandom random = new SplittableRandom(20110104);
        for (int i = 0; i < 2000; i++) {
            Amount price = Amount.ofPennies(random.nextLong(-5_000_000, 5_000_000));
            Percent rate = Percent.of(new String[] {"20", "5", "17.5", "15", "12.5", "8"}[i % 6]);
            Amount vat = price.vatInside(rate);
            Amount difference = price.minus(vat).vatOnTop(rate).minus(vat);
            assertThat(difference.abs())
                    .as("case %d: %s at %s", i, price, rate)
                    .isLessThanOrEqualTo(Amount.of("0.0001"));
            BigDecimal exact =
                    price.decimal()
                            .multiply(rate.value())
                            .subtract(
                                    vat.decimal().multiply(rate.value().add(new BigDecimal(100))));
            assertThat(exact.abs())
                    .as("case %d: %s at %s", i, price, rate)
                    .isLessThanOrEqualTo(new BigDecimal("0.006"));
        }
    }
}
