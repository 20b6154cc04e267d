package quarterfold.money;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * An exact amount of money in one currency, held as a whole number of ten-thousandths of its main
 * unit (a pound is 10,000). Immutable; addition never rounds and refuses to overflow.
 *
 * <p>Four decimals are what the tax authority accepts for VAT worked out inside a retail price
 * before the one rounding of the box (VATREC12020 on VAT Notice 700 para 17.6). The range is about
 * plus or minus 922 million million pounds, beyond every limit of the return.
 */
public record Amount(long tenThousandths) implements Comparable<Amount> {

    public static final Amount ZERO = new Amount(0);
    private static final int DECIMALS = 4;
    private static final BigDecimal HUNDRED = new BigDecimal(100);

    /**
     * Reads plain digits with an optional minus and a decimal point, such as {@code -1234.5}.
     *
     * @throws NumberFormatException if the text is anything else
     * @throws ArithmeticException if it has more than four decimals (other than zeros) or is out of
     *     range
     */
    public static Amount of(String text) {
        return of(new BigDecimal(text));
    }

    /** Refuses more than four decimals with an {@link ArithmeticException} rather than round. */
    public static Amount of(BigDecimal value) {
        return new Amount(
                value.setScale(DECIMALS, RoundingMode.UNNECESSARY)
                        .unscaledValue()
                        .longValueExact());
    }

    public static Amount ofPennies(long pennies) {
        return new Amount(Math.multiplyExact(pennies, 100));
    }

    public Amount plus(Amount other) {
        return new Amount(Math.addExact(tenThousandths, other.tenThousandths));
    }

    public Amount minus(Amount other) {
        return new Amount(Math.subtractExact(tenThousandths, other.tenThousandths));
    }

    public Amount negated() {
        return new Amount(Math.negateExact(tenThousandths));
    }

    public Amount abs() {
        return new Amount(Math.absExact(tenThousandths));
    }

    /** This amount, or its negative where {@code sign} is negative; zero where it is zero. */
    public Amount times(int sign) {
        return new Amount(Math.multiplyExact(tenThousandths, Integer.signum(sign)));
    }

    /**
     * The VAT inside this VAT-inclusive price: {@code price x rate / (100 + rate)}, to four
     * decimals, half up. VATA 1994 s19(2): the value is what, with the VAT added, equals the price.
     */
    public Amount vatInside(Percent rate) {
        return divided(decimal().multiply(rate.value()), HUNDRED.add(rate.value()));
    }

    /** The VAT inside this VAT-inclusive price, rounded once. */
    public Amount vatInside(Percent rate, Rounding rounding) {
        return new Amount(
                rounding.quotient(decimal().multiply(rate.value()), HUNDRED.add(rate.value())));
    }

    /** The VAT on this net value, rounded once. */
    public Amount vatOnTop(Percent rate, Rounding rounding) {
        return new Amount(rounding.quotient(decimal().multiply(rate.value()), HUNDRED));
    }

    /** The VAT on this net value: {@code net x rate / 100}, to four decimals, half up. */
    public Amount vatOnTop(Percent rate) {
        return portion(rate);
    }

    /**
     * The net value on which {@code rate} gives this VAT, to four decimals. Refuses a zero rate.
     */
    public Amount netOfVat(Percent rate) {
        return divided(decimal().multiply(HUNDRED), rate.value());
    }

    /** So many per cent of this amount, to four decimals, half up. */
    public Amount portion(Percent percent) {
        return divided(decimal().multiply(percent.value()), HUNDRED);
    }

    /** {@code this x part / whole}, to four decimals, half up. Refuses a zero whole. */
    public Amount shared(Amount part, Amount whole) {
        return divided(decimal().multiply(part.decimal()), whole.decimal());
    }

    private static Amount divided(BigDecimal dividend, BigDecimal divisor) {
        return of(dividend.divide(divisor, DECIMALS, RoundingMode.HALF_UP));
    }

    public Amount rounded(Rounding rounding) {
        return new Amount(rounding.apply(tenThousandths));
    }

    public boolean isZero() {
        return tenThousandths == 0;
    }

    public boolean isAbove(Amount other) {
        return tenThousandths > other.tenThousandths;
    }

    public int signum() {
        return Long.signum(tenThousandths);
    }

    /** This amount with exactly four decimals. */
    public BigDecimal decimal() {
        return BigDecimal.valueOf(tenThousandths, DECIMALS);
    }

    @Override
    public int compareTo(Amount other) {
        return Long.compare(tenThousandths, other.tenThousandths);
    }

    /** Plain digits with two decimals, or with three or four where there is more than a penny. */
    @Override
    public String toString() {
        BigDecimal plain = decimal().stripTrailingZeros();
        return plain.setScale(Math.max(2, plain.scale())).toPlainString();
    }
}
