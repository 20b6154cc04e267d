package quarterfold.period;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import quarterfold.law.Law;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/**
 * The share of input tax for taxable and exempt supplies alike that is deducted.
 *
 * @param words how it was found, such as {@code taxable supplies 80000.00 of 100000.00}
 */
record RecoveryShare(Percent percent, String words) {

    private static final BigDecimal HUNDRED = new BigDecimal(100);

    /**
     * The value of taxable supplies as a percentage of that of all supplies, rounded up: to a whole
     * per cent, or to two decimals where the input tax concerned is above a limit a month (VAT
     * Regulations 1995 reg 101(2)(d), (4) and (5) as amended by SI 2005/762). Nothing is deducted
     * where there are no supplies to go by, which the year's end puts right.
     */
    static RecoveryShare ofValues(UseSums sums, Months months, Law law, LocalDate day) {
        Amount all = sums.suppliesInShare();
        Amount taxable = sums.taxableInShare();
        if (all.signum() <= 0 || taxable.signum() <= 0) {
            return new RecoveryShare(
                    Percent.ZERO, "taxable supplies %s of %s".formatted(taxable, all));
        }
        boolean whole =
                law.limit("partial-exemption-whole-percent", day)
                        .map(l -> l.value().amount())
                        .filter(most -> months.average(sums.residual()).compareTo(most) > 0)
                        .isEmpty();
        BigDecimal percent =
                taxable.decimal()
                        .multiply(HUNDRED)
                        .divide(all.decimal(), whole ? 0 : 2, RoundingMode.CEILING)
                        .min(HUNDRED);
        return new RecoveryShare(
                new Percent(percent),
                "taxable supplies %s of %s, rounded up to %s"
                        .formatted(taxable, all, whole ? "a whole per cent" : "two decimals"));
    }
}
