package quarterfold.independent;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * What one quarter, or several together, came to in a business with exempt supplies: input tax by
 * what its purchases are for, and supplies by their values. And what the standard method makes of
 * it: VAT Regulations 1995 regs 101, 105A and 106; HMRC manual PE24500.
 *
 * @param taxable input tax on what is used for taxable supplies
 * @param exempt on what is used for exempt ones
 * @param both on what is used for both
 * @param unstated on what does not say
 * @param supplies the value of all supplies
 * @param exemptSupplies of those that are exempt
 * @param shared the value of the supplies the share goes by: reg 101(3)
 * @param exemptShared of those that are exempt
 */
record UseQuarter(
        BigDecimal taxable,
        BigDecimal exempt,
        BigDecimal both,
        BigDecimal unstated,
        BigDecimal supplies,
        BigDecimal exemptSupplies,
        BigDecimal shared,
        BigDecimal exemptShared) {

    private static final BigDecimal HUNDRED = new BigDecimal(100);
    private static final BigDecimal A_MONTH = new BigDecimal(625);
    private static final BigDecimal TWO = new BigDecimal(2);

    static final UseQuarter NOTHING = new UseQuarter(z(), z(), z(), z(), z(), z(), z(), z());

    private static BigDecimal z() {
        return BigDecimal.ZERO;
    }

    UseQuarter plus(UseQuarter other) {
        return new UseQuarter(
                taxable.add(other.taxable),
                exempt.add(other.exempt),
                both.add(other.both),
                unstated.add(other.unstated),
                supplies.add(other.supplies),
                exemptSupplies.add(other.exemptSupplies),
                shared.add(other.shared),
                exemptShared.add(other.exemptShared));
    }

    /** Whether there is anything exempt about it. */
    boolean partly() {
        return exemptSupplies.signum() != 0 || exempt.signum() != 0 || both.signum() != 0;
    }

    BigDecimal all() {
        return taxable.add(exempt).add(both).add(unstated);
    }

    /** Taxable supplies in a hundred of all, up to the next whole one: reg 101(4). */
    BigDecimal share() {
        BigDecimal part = shared.subtract(exemptShared);
        if (shared.signum() <= 0 || part.signum() <= 0) {
            return BigDecimal.ZERO;
        }
        return part.multiply(HUNDRED).divide(shared, 0, RoundingMode.CEILING).min(HUNDRED);
    }

    /** Of so many per cent for taxable supplies: what is for exempt ones. What is unstated is. */
    BigDecimal exemptInput(BigDecimal share) {
        BigDecimal deducted = both.multiply(share).divide(HUNDRED, 4, RoundingMode.HALF_UP);
        return exempt.add(unstated).add(both.subtract(deducted));
    }

    /** What is not deducted: all of that, unless it is small enough over so many months. */
    BigDecimal denied(BigDecimal share, int months) {
        BigDecimal exemptInput = exemptInput(share);
        BigDecimal most = A_MONTH.multiply(new BigDecimal(months));
        boolean simple =
                all().subtract(taxable).compareTo(most) <= 0
                        && exemptSupplies.multiply(TWO).compareTo(supplies) <= 0;
        boolean full =
                exemptInput.compareTo(most) <= 0 && exemptInput.multiply(TWO).compareTo(all()) <= 0;
        return simple || full ? BigDecimal.ZERO : exemptInput;
    }
}
