package quarterfold.money;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * The roundings the law and the tax authority name, each to a unit of so many ten-thousandths of a
 * pound. Halves go away from zero in the nearest roundings: under half a penny goes down, half a
 * penny or more goes up (VATREC12030), and a refund mirrors its sale.
 */
public enum Rounding {
    /** Nearest 1p, 0.5p or more up: VATREC12020, VATREC12030. */
    NEAREST_PENNY(100, RoundingMode.HALF_UP),
    /** Down to a whole penny: the invoice concession of VAT Notice 700 para 17.5, VATREC12010. */
    PENNY_DOWN(100, RoundingMode.DOWN),
    /** Nearest 0.1p, for the VAT on one unit of a price list: VAT Notice 700 para 17.5.2. */
    NEAREST_TENTH_OF_A_PENNY(10, RoundingMode.HALF_UP),
    /** Nearest 0.5p, for the VAT on one unit of a price list: VAT Notice 700 para 17.5.2. */
    NEAREST_HALF_PENNY(50, RoundingMode.HALF_UP),
    /** Pence not entered, as the paper form's pre-printed zeros have it: form VAT100, boxes 6-9. */
    POUNDS_DOWN(10_000, RoundingMode.DOWN);

    private static final BigDecimal TEN_THOUSAND = BigDecimal.valueOf(10_000);

    private final int unit;
    private final RoundingMode mode;

    Rounding(int unit, RoundingMode mode) {
        this.unit = unit;
        this.mode = mode;
    }

    /** A quotient of pounds in ten-thousandths, rounded once. */
    long quotient(BigDecimal dividend, BigDecimal divisor) {
        BigDecimal units =
                dividend.multiply(TEN_THOUSAND)
                        .divide(divisor.multiply(BigDecimal.valueOf(unit)), 0, mode);
        return Math.multiplyExact(units.longValueExact(), unit);
    }

    long apply(long tenThousandths) {
        long down = tenThousandths / unit;
        long rest = Math.abs(tenThousandths % unit);
        boolean up = mode == RoundingMode.HALF_UP && rest * 2 >= unit;
        return Math.multiplyExact(up ? down + Long.signum(tenThousandths) : down, unit);
    }
}
