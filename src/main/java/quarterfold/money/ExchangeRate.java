package quarterfold.money;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * What one currency is worth in another, as a quotient that is never rounded itself: {@code units}
 * of the first are worth {@code worth} of the second. A rate quoted as 1.1719 euro for one pound is
 * {@code (1.1719, 1)}; of two rates against a third currency it is both of them.
 */
public record ExchangeRate(BigDecimal units, BigDecimal worth) {

    private static final int DECIMALS = 4;

    /** Refuses a rate that is nought or negative with an {@link IllegalArgumentException}. */
    public ExchangeRate {
        if (units.signum() <= 0 || worth.signum() <= 0) {
            throw new IllegalArgumentException(
                    "a rate is above nought: %s for %s".formatted(units, worth));
        }
    }

    /** So many units of the first currency for one of the second. */
    public static ExchangeRate of(BigDecimal units) {
        return new ExchangeRate(units, BigDecimal.ONE);
    }

    /** The amount in the second currency, to four decimals, half up. */
    public Amount of(Amount amount) {
        return Amount.of(product(amount).divide(units, DECIMALS, RoundingMode.HALF_UP));
    }

    /** The same, rounded once. */
    public Amount of(Amount amount, Rounding rounding) {
        return new Amount(rounding.quotient(product(amount), units));
    }

    private BigDecimal product(Amount amount) {
        return amount.decimal().multiply(worth);
    }
}
