package quarterfold.period;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quarterfold.money.Amount;
import quarterfold.treatment.Query;
import quarterfold.treatment.Treated;

/**
 * Takes off what exempt supplies cost of the input tax of a period, by the standard method, and
 * settles the year on one return (VAT Regulations 1995 regs 101 and 105A to 107). A flat-rate
 * trader deducts no input tax to attribute. Special methods, attribution by use in a first year
 * (reg 101(2)(e)), going by last year's test (reg 106ZA) and the override are not worked out.
 */
final class PartialExemption implements Adjuster {

    /** Its name in {@code adjustments.csv}. */
    static final String PERIOD = "partial-exemption";

    private final Basis basis;
    private final UseSums own;
    private final Attributions attributions;
    private final boolean mayBe;

    PartialExemption(Basis basis) {
        this.basis = basis;
        this.own = new UseSums(basis.context());
        this.attributions = new Attributions(basis, own);
        this.mayBe = basis.others().mayBePartlyExempt();
    }

    @Override
    public void see(Treated treated) {
        if (mayBe) {
            own.see(treated);
        }
    }

    @Override
    public Found found() {
        if (!mayBe) {
            return Found.NOTHING;
        }
        TaxYear year = TaxYear.of(basis.period().start(), basis.calendar());
        YearSettlement settlement = new YearSettlement(basis, attributions);
        return ofPeriod(year).with(settlement.due(year).map(settlement::of).orElse(Found.NOTHING));
    }

    private Found ofPeriod(TaxYear year) {
        Period period = basis.period();
        if (!attributions.covers(period) || !(own.isPartlyExempt() || wasPartlyExempt(year))) {
            return Found.NOTHING;
        }
        List<Query> queries = new ArrayList<>();
        Attribution attribution = attributions.of(period, own, year, Optional.of(queries));
        attributions.unstated(own, attribution, period.name().toString()).ifPresent(queries::add);
        return new Found(
                List.of(
                        basis.adjustment(
                                PERIOD,
                                period.start() + " to " + period.end(),
                                attribution.words(),
                                Amount.ZERO,
                                Amount.ZERO,
                                attribution.denied().negated())),
                queries);
    }

    /** Whether an earlier period of the tax year had exempt supplies, or purchases for such. */
    private boolean wasPartlyExempt(TaxYear year) {
        return year.periods(basis.calendar()).stream()
                .filter(p -> p.start().isBefore(basis.period().start()))
                .filter(attributions::covers)
                .anyMatch(p -> attributions.sums(p).isPartlyExempt());
    }
}
