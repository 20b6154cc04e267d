package quarterfold.period;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quarterfold.money.Percent;

/**
 * The part of a tax year, or of the registration before the first, over which partial exemption is
 * settled: from the first period with exempt input tax on, or from the first of all where the year
 * before had some; none where only the last period has some (HMRC manual PE37400; VAT Regulations
 * 1995 reg 99). The manual lets that of a registration begin on the day exempt input tax was first
 * incurred; here it begins with the return period that day is in.
 *
 * @param periods rising, at least one
 * @param sums of all of them
 */
record LongerPeriod(List<Period> periods, UseSums sums) {

    /**
     * The periods and the sums of a year; {@code afterOne} where the year before had exempt input
     * tax.
     */
    static Optional<LongerPeriod> of(
            TaxYear year, boolean afterOne, Attributions attributions, Basis basis) {
        UseSums sums = new UseSums(basis.context());
        List<Period> longer = new ArrayList<>();
        boolean partly = false;
        boolean begun = false;
        for (Period period : attributions.covered(year)) {
            UseSums one = attributions.sums(period);
            partly |= one.isPartlyExempt();
            begun |= partly && attributions.hasExemptInput(period, one, afterOne);
            if (begun || afterOne) {
                longer.add(period);
                sums.add(one);
            }
        }
        boolean lastAlone = longer.size() == 1 && !afterOne && !isRegistrationPeriod(year, basis);
        return partly && begun && !lastAlone
                ? Optional.of(new LongerPeriod(List.copyOf(longer), sums))
                : Optional.empty();
    }

    /** Whether a year had input tax for exempt supplies, by the values of each of its periods. */
    static boolean hasExemptInput(TaxYear year, Attributions attributions) {
        boolean partly = false;
        for (Period period : attributions.covered(year)) {
            UseSums one = attributions.sums(period);
            partly |= one.isPartlyExempt();
            if (partly && attributions.hasExemptInput(period, one, false)) {
                return true;
            }
        }
        return false;
    }

    /** Before the first tax year; reg 99(1) says when that begins. */
    private static boolean isRegistrationPeriod(TaxYear year, Basis basis) {
        return year.start().equals(basis.calendar().registeredFrom());
    }

    LocalDate first() {
        return periods.get(0).start();
    }

    LocalDate last() {
        return periods.get(periods.size() - 1).end();
    }

    Months months() {
        return Months.of(first(), last());
    }

    /** Whether some of it was for exempt supplies, attributed over all of it. */
    boolean hasExemptInput(Basis basis) {
        return share(basis).percent().compareTo(Percent.HUNDRED) < 0
                || !sums.forExempt().isZero()
                || !sums.unstated().isZero();
    }

    /** The share of input tax for taxable and exempt supplies alike, by the values of all of it. */
    RecoveryShare share(Basis basis) {
        return RecoveryShare.ofValues(sums, months(), basis.law(), first());
    }
}
