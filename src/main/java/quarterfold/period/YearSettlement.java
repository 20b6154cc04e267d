package quarterfold.period;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.money.Amount;
import quarterfold.treatment.Query;

/**
 * Settles partial exemption over a tax year: what the year as a whole leaves out, less what its
 * returns left out (VAT Regulations 1995 reg 107(1)).
 */
final class YearSettlement {

    private static final String YEAR = "partial-exemption-year";

    private final Basis basis;
    private final Attributions attributions;

    YearSettlement(Basis basis, Attributions attributions) {
        this.basis = basis;
        this.attributions = attributions;
    }

    /** The tax year that the return settles: that before it, or the one it ends. */
    Optional<TaxYear> due(TaxYear year) {
        Period period = basis.period();
        boolean onLast = basis.chose("partial-exemption-year-on=last-of-year");
        boolean ends = basis.calendar().registeredTo().filter(period.end()::equals).isPresent();
        if (period.end().equals(year.end()) && (onLast || ends)) {
            return Optional.of(year);
        }
        return period.start().equals(year.start())
                        && year.start().isAfter(basis.calendar().registeredFrom())
                        && !onLast
                ? Optional.of(TaxYear.of(year.start().minusDays(1), basis.calendar()))
                : Optional.empty();
    }

    /** The settlement; a period whose own share is that of all of it is settled already. */
    Adjuster.Found of(TaxYear year) {
        Optional<LongerPeriod> longer = attributions.longer(year);
        if (longer.isEmpty()) {
            return Adjuster.Found.NOTHING;
        }
        boolean partly = false;
        Amount taken = Amount.ZERO;
        for (Period period : attributions.covered(year)) {
            UseSums one = attributions.sums(period);
            partly |= one.isPartlyExempt();
            if (longer.get().periods().contains(period)) {
                Attribution attribution = attributions.of(period, one, year, Optional.empty());
                taken = taken.plus(leftOut(period, partly, attribution));
            }
        }
        return settle(longer.get(), taken);
    }

    /** What the period's return did not deduct. */
    private Amount leftOut(Period period, boolean partly, Attribution attribution) {
        return basis.others()
                .taken(period)
                .map(
                        taken ->
                                taken.stream()
                                        .filter(a -> a.treatment().equals(PartialExemption.PERIOD))
                                        .map(a -> a.claim().negated())
                                        .reduce(Amount.ZERO, Amount::plus))
                .orElse(partly ? attribution.denied() : Amount.ZERO);
    }

    private Adjuster.Found settle(LongerPeriod longer, Amount taken) {
        UseSums sums = longer.sums();
        LocalDate first = longer.first();
        LocalDate last = longer.last();
        Attribution whole =
                Attribution.of(sums, longer.share(basis), longer.months(), basis.law(), first);
        Amount more = taken.minus(whole.denied());
        if (longer.periods().size() == 1 && more.isZero()) {
            return Adjuster.Found.NOTHING;
        }
        List<Query> queries = new ArrayList<>();
        attributions.unstated(sums, whole, last.toString()).ifPresent(queries::add);
        override(sums, last).ifPresent(queries::add);
        return new Adjuster.Found(
                List.of(
                        basis.adjustment(
                                YEAR,
                                first + " to " + last,
                                "%s The returns of the year left out %s, the year as a whole %s: %s %s."
                                        .formatted(
                                                whole.words(),
                                                taken,
                                                whole.denied(),
                                                more.abs(),
                                                more.signum() < 0
                                                        ? "less is deducted"
                                                        : "more is deducted"),
                                Amount.ZERO,
                                Amount.ZERO,
                                more)),
                queries);
    }

    /**
     * Reg 107E(1)(b): above a limit the share by values may be overridden, which is not done here.
     */
    private Optional<Query> override(UseSums sums, LocalDate last) {
        return basis.law()
                .limit("partial-exemption-override", last)
                .filter(l -> sums.residual().compareTo(l.value().amount()) > 0)
                .map(
                        l ->
                                attributions.ask(
                                        "partial-exemption-override",
                                        last.toString(),
                                        sums.residual(),
                                        Map.of()));
    }
}
