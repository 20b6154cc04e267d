package quarterfold.money;

import java.math.BigDecimal;

/**
 * A percentage such as 20, 17.5 or 0; exact, never negative. Two percentages of the same value are
 * equal however they were written: {@code 20} and {@code 20.00} are one.
 */
public record Percent(BigDecimal value) implements Comparable<Percent> {

    public static final Percent ZERO = new Percent(BigDecimal.ZERO);
    public static final Percent HUNDRED = new Percent(new BigDecimal(100));

    /** Refuses a negative percentage with an {@link IllegalArgumentException}. */
    public Percent {
        if (value.signum() < 0) {
            throw new IllegalArgumentException("a percentage is not negative: " + value);
        }
        BigDecimal plain = value.stripTrailingZeros();
        value = plain.setScale(Math.max(0, plain.scale()));
    }

    /**
     * Reads a plain percentage without a sign, such as {@code 17.5}.
     *
     * @throws NumberFormatException if the text is not a number
     */
    public static Percent of(String text) {
        return new Percent(new BigDecimal(text));
    }

    public boolean isZero() {
        return value.signum() == 0;
    }

    /** What remains of the whole: 40 for 60. Refuses a percentage above 100. */
    public Percent complement() {
        return new Percent(HUNDRED.value.subtract(value));
    }

    @Override
    public int compareTo(Percent other) {
        return value.compareTo(other.value);
    }

    @Override
    public String toString() {
        return value.toPlainString();
    }
}
