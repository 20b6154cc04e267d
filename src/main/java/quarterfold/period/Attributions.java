package quarterfold.period;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.ledger.Schemes;
import quarterfold.money.Amount;
import quarterfold.treatment.Query;

/**
 * Attributes the input tax of a book's periods, each with the share that VAT Regulations 1995 reg
 * 101(2)(d), (f) or (g) gives it, and holds what the period being worked out has seen.
 */
final class Attributions {

    private final Basis basis;
    private final UseSums own;

    /**
     * @param own what the period of {@code basis} adds up to, once all of it was seen
     */
    Attributions(Basis basis, UseSums own) {
        this.basis = basis;
        this.own = own;
    }

    /**
     * The share of the tax year before.
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
        UseSums sums = new UseSums(basis.context());
        basis.others().forEachTreated(period, sums::see);
        return sums;
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

    /** Whether the tax year before was partly exempt, by the book or by its settings. */
    boolean isAfterPartlyExemptYear(TaxYear year) {
        return lastYear(year).share().isPresent();
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

    private LastYear lastYear(TaxYear year) {
        LocalDate dayBefore = year.start().minusDays(1);
        if (dayBefore.isBefore(basis.calendar().registeredFrom())) {
            return new LastYear(Optional.empty(), false);
        }
        TaxYear last = TaxYear.of(dayBefore, basis.calendar());
        UseSums sums = new UseSums(basis.context());
        last.periods(basis.calendar()).stream()
                .filter(this::covers)
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
}
