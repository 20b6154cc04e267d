package quarterfold.period;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.ledger.Schemes;
import quarterfold.money.Amount;
import quarterfold.money.Percent;
import quarterfold.treatment.Query;

/**
 * Attributes the input tax of a book's periods, each with the share that VAT Regulations 1995 reg
 * 101(2)(d), (f) or (g) gives it, and holds what the period being worked out has seen.
 */
final class Attributions {

    private final Basis basis;
    private final UseSums own;
    private final Map<Period, UseSums> others = new HashMap<>();

    /**
     * @param own what the period of {@code basis} adds up to, once all of it was seen
     */
    Attributions(Basis basis, UseSums own) {
        this.basis = basis;
        this.own = own;
    }

    /**
     * The share of the longer period before.
     *
     * @param unknown whether there may have been one that this book does not hold
     */
    private record LastYear(Optional<RecoveryShare> share, boolean unknown) {}

    /** Whether input tax is deducted in the period by the ordinary rules. */
    boolean covers(Period period) {
        return !basis.settings().schemeOn(period.start()).equals(Schemes.FLAT_RATE);
    }

    UseSums sums(Period period) {
        if (period.equals(basis.period())) {
            return own;
        }
        UseSums known = others.get(period);
        if (known != null) {
            return known;
        }
        UseSums sums = new UseSums(basis.context());
        basis.others().forEachTreated(period, sums::see);
        others.put(period, sums);
        return sums;
    }

    /** The periods of a year in which input tax is deducted by the ordinary rules. */
    List<Period> covered(TaxYear year) {
        return year.periods(basis.calendar()).stream().filter(this::covers).toList();
    }

    /**
     * Whether some input tax of a partly exempt year's period is for exempt supplies; {@code
     * afterOne} where the year before had some, by whose share what is for both is divided.
     */
    boolean hasExemptInput(Period period, UseSums sums, boolean afterOne) {
        boolean shared =
                !sums.residual().isZero()
                        && (afterOne
                                || RecoveryShare.ofValues(
                                                        sums,
                                                        Months.of(period.start(), period.end()),
                                                        basis.law(),
                                                        period.start())
                                                .percent()
                                                .compareTo(Percent.HUNDRED)
                                        < 0);
        return shared || !sums.forExempt().isZero() || !sums.unstated().isZero();
    }

    /**
     * What the year's adjustment is about: nothing where the year has no exempt input tax, or only
     * its last period has some and the year before had none.
     */
    Optional<LongerPeriod> longer(TaxYear year) {
        return covered(year).stream().anyMatch(p -> sums(p).isPartlyExempt())
                ? LongerPeriod.of(year, isAfterExemptInput(year), this, basis)
                : Optional.empty();
    }

    /**
     * Whether the year before had input tax for exempt supplies, by the book or its settings: in
     * any of its periods, or by its annual adjustment, whose share the periods of this year go by.
     */
    private boolean isAfterExemptInput(TaxYear year) {
        Optional<TaxYear> last = before(year);
        if (last.isEmpty()) {
            return false;
        }
        return isHeld(last.get())
                ? LongerPeriod.hasExemptInput(last.get(), this)
                        || longer(last.get()).filter(l -> l.hasExemptInput(basis)).isPresent()
                : statedShare().isPresent();
    }

    private Optional<TaxYear> before(TaxYear year) {
        LocalDate dayBefore = year.start().minusDays(1);
        return dayBefore.isBefore(basis.calendar().registeredFrom())
                ? Optional.empty()
                : Optional.of(TaxYear.of(dayBefore, basis.calendar()));
    }

    private boolean isHeld(TaxYear year) {
        return covered(year).stream().anyMatch(p -> !sums(p).isEmpty());
    }

    private Optional<RecoveryShare> statedShare() {
        return basis.settings()
                .periods()
                .partialExemptionLastYear()
                .map(p -> new RecoveryShare(p, "the share of the tax year before"));
    }

    /**
     * @param asking takes the question after a share the book does not hold
     */
    Attribution of(Period period, UseSums sums, TaxYear year, Optional<List<Query>> asking) {
        Months months = Months.of(period.start(), period.end());
        return Attribution.of(
                sums,
                share(period, sums, months, year, asking),
                months,
                basis.law(),
                period.start());
    }

    /** VAT kept back only because a use is not stated is asked about. */
    Optional<Query> unstated(UseSums sums, Attribution attribution, String about) {
        return sums.unstated().isZero() || attribution.denied().isZero()
                ? Optional.empty()
                : Optional.of(
                        ask(
                                "partial-exemption-use",
                                about,
                                sums.unstated(),
                                Map.of("entries", sums.unstatedWords())));
    }

    Query ask(String code, String about, Amount money, Map<String, String> words) {
        return basis.questions().ask(code, about, money, words);
    }

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
                                    ask(
                                            "partial-exemption-last-year",
                                            period.name().toString(),
                                            sums.residual(),
                                            Map.of())));
        }
        return last.share().orElse(now);
    }

    /** Reg 101(2)(f): where there was such a period, its share; (d) where there was none. */
    private LastYear lastYear(TaxYear year) {
        Optional<TaxYear> last = before(year);
        if (last.isEmpty()) {
            return new LastYear(Optional.empty(), false);
        }
        if (!isHeld(last.get())) {
            return new LastYear(statedShare(), true);
        }
        return new LastYear(
                longer(last.get())
                        .map(
                                longer -> {
                                    RecoveryShare share = longer.share(basis);
                                    return new RecoveryShare(
                                            share.percent(),
                                            "the share of the longer period %s to %s: %s"
                                                    .formatted(
                                                            longer.first(),
                                                            longer.last(),
                                                            share.words()));
                                }),
                false);
    }
}
