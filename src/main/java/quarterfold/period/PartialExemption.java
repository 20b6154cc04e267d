package quarterfold.period;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.ledger.Schemes;
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

    private static final String PERIOD = "partial-exemption";
    private static final String YEAR = "partial-exemption-year";

    private final Basis basis;
    private final UseSums own;

    PartialExemption(Basis basis) {
        this.basis = basis;
        this.own = new UseSums(basis.context());
    }

    @Override
    public void see(Treated treated) {
        own.see(treated);
    }

    @Override
    public Found found() {
        if (!basis.others().mayBePartlyExempt()) {
            return Found.NOTHING;
        }
        TaxYear year = TaxYear.of(basis.period().start(), basis.calendar());
        return ofPeriod(year).with(settled(year).map(this::ofYear).orElse(Found.NOTHING));
    }

    private Found ofPeriod(TaxYear year) {
        Period period = basis.period();
        UseSums before = new UseSums(basis.context());
        year.periods(basis.calendar()).stream()
                .filter(p -> p.start().isBefore(period.start()))
                .filter(this::isAttributed)
                .forEach(p -> before.add(sums(p)));
        if (!isAttributed(period) || !(own.isPartlyExempt() || before.isPartlyExempt())) {
            return Found.NOTHING;
        }
        List<Query> queries = new ArrayList<>();
        Attribution attribution = attribution(period, own, year, Optional.of(queries));
        String about = period.start() + " to " + period.end();
        unstated(own, attribution, period.name().toString()).ifPresent(queries::add);
        return new Found(
                List.of(
                        basis.adjustment(
                                PERIOD,
                                about,
                                attribution.words(),
                                Amount.ZERO,
                                Amount.ZERO,
                                attribution.denied().negated())),
                queries);
    }

    /** Whether input tax is deducted in the period by the ordinary rules. */
    private boolean isAttributed(Period period) {
        return !basis.settings().schemeOn(period.start()).equals(Schemes.FLAT_RATE);
    }

    private UseSums sums(Period period) {
        if (period.equals(basis.period())) {
            return own;
        }
        UseSums sums = new UseSums(basis.context());
        basis.others().forEachTreated(period, sums::see);
        return sums;
    }

    private Attribution attribution(
            Period period, UseSums sums, TaxYear year, Optional<List<Query>> asking) {
        Months months = Months.of(period.start(), period.end());
        return Attribution.of(
                sums,
                share(period, sums, months, year, asking),
                months,
                basis.law(),
                period.start());
    }

    /** Reg 101(2)(d), (f) and (g). */
    private RecoveryShare share(
            Period period,
            UseSums sums,
            Months months,
            TaxYear year,
            Optional<List<Query>> asking) {
        RecoveryShare now = RecoveryShare.ofValues(sums, months, basis.law(), period.start());
        if (sums.residual().isZero() || basis.chose("partial-exemption-share=current-period")) {
            return now;
        }
        LastYear last = lastYear(year);
        if (last.share().isEmpty() && last.unknown()) {
            asking.ifPresent(
                    queries ->
                            queries.add(
                                    basis.questions()
                                            .ask(
                                                    "partial-exemption-last-year",
                                                    period.name().toString(),
                                                    sums.residual(),
                                                    Map.of())));
        }
        return last.share().orElse(now);
    }

    /**
     * The share of the tax year before.
     *
     * @param unknown whether there may have been one that this book does not hold
     */
    private record LastYear(Optional<RecoveryShare> share, boolean unknown) {}

    private LastYear lastYear(TaxYear year) {
        LocalDate dayBefore = year.start().minusDays(1);
        if (dayBefore.isBefore(basis.calendar().registeredFrom())) {
            return new LastYear(Optional.empty(), false);
        }
        TaxYear last = TaxYear.of(dayBefore, basis.calendar());
        UseSums sums = new UseSums(basis.context());
        last.periods(basis.calendar()).stream()
                .filter(this::isAttributed)
                .forEach(p -> sums.add(sums(p)));
        if (sums.isEmpty()) {
            return new LastYear(
                    basis.settings()
                            .periods()
                            .partialExemptionLastYear()
                            .map(p -> new RecoveryShare(p, "the share of the tax year before")),
                    true);
        }
        RecoveryShare share =
                RecoveryShare.ofValues(
                        sums, Months.of(last.start(), last.end()), basis.law(), last.start());
        return new LastYear(
                sums.isPartlyExempt()
                        ? Optional.of(
                                new RecoveryShare(
                                        share.percent(),
                                        "the share of the tax year %s: %s"
                                                .formatted(last, share.words())))
                        : Optional.empty(),
                false);
    }

    /** VAT kept back only because a use is not stated is asked about. */
    private Optional<Query> unstated(UseSums sums, Attribution attribution, String about) {
        return sums.unstated().isZero() || attribution.denied().isZero()
                ? Optional.empty()
                : Optional.of(
                        basis.questions()
                                .ask(
                                        "partial-exemption-use",
                                        about,
                                        sums.unstated(),
                                        Map.of("entries", sums.unstatedWords())));
    }

    /** The tax year that this return settles: reg 107(1), and the last return of a registration. */
    private Optional<TaxYear> settled(TaxYear year) {
        Period period = basis.period();
        boolean ends = period.end().equals(year.end());
        boolean isLast =
                basis.calendar().registeredTo().filter(period.end()::equals).isPresent()
                        || basis.chose("partial-exemption-year-on=last-of-year");
        if (ends && isLast) {
            return Optional.of(year);
        }
        return period.start().equals(year.start())
                        && year.start().isAfter(basis.calendar().registeredFrom())
                        && !basis.chose("partial-exemption-year-on=last-of-year")
                ? Optional.of(TaxYear.of(year.start().minusDays(1), basis.calendar()))
                : Optional.empty();
    }

    private Found ofYear(TaxYear year) {
        UseSums sums = new UseSums(basis.context());
        boolean partly = false;
        boolean begun = wasPartlyExemptBefore(year);
        Amount taken = Amount.ZERO;
        List<Period> longer = new ArrayList<>();
        for (Period period : year.periods(basis.calendar())) {
            if (!isAttributed(period)) {
                continue;
            }
            UseSums one = sums(period);
            partly |= one.isPartlyExempt();
            Attribution attribution = attribution(period, one, year, Optional.empty());
            begun |= partly && !attribution.exemptInput().isZero();
            if (begun) {
                longer.add(period);
                sums.add(one);
                taken = taken.plus(denied(period, partly, attribution));
            }
        }
        return longer.size() < 2 || !partly ? Found.NOTHING : settle(longer, sums, taken);
    }

    /**
     * Whether the whole year is the longer period. Without exempt input tax in the year before, it
     * begins with the first period that has some: reg 99 (paragraph from memory).
     */
    private boolean wasPartlyExemptBefore(TaxYear year) {
        return lastYear(year).share().isPresent();
    }

    /** What the period's return did not deduct. */
    private Amount denied(Period period, boolean partly, Attribution attribution) {
        return basis.others()
                .taken(period)
                .map(
                        taken ->
                                taken.stream()
                                        .filter(a -> a.treatment().equals(PERIOD))
                                        .map(a -> a.claim().negated())
                                        .reduce(Amount.ZERO, Amount::plus))
                .orElse(partly ? attribution.denied() : Amount.ZERO);
    }

    private Found settle(List<Period> longer, UseSums sums, Amount taken) {
        LocalDate first = longer.get(0).start();
        LocalDate last = longer.get(longer.size() - 1).end();
        String about = first + " to " + last;
        Months months = Months.of(first, last);
        Attribution whole =
                Attribution.of(
                        sums,
                        RecoveryShare.ofValues(sums, months, basis.law(), first),
                        months,
                        basis.law(),
                        first);
        Amount more = taken.minus(whole.denied());
        List<Query> queries = new ArrayList<>();
        unstated(sums, whole, last.toString()).ifPresent(queries::add);
        basis.law()
                .limit("partial-exemption-override", last)
                .filter(l -> sums.residual().compareTo(l.value().amount()) > 0)
                .map(
                        l ->
                                basis.questions()
                                        .ask(
                                                "partial-exemption-override",
                                                last.toString(),
                                                sums.residual(),
                                                Map.of()))
                .ifPresent(queries::add);
        return new Found(
                List.of(
                        basis.adjustment(
                                YEAR,
                                about,
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
}
