package quarterfold.period;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Optional;
import quarterfold.law.Dated;
import quarterfold.law.Law;
import quarterfold.ledger.Close;
import quarterfold.money.Amount;

/**
 * How long an error of a closed return may be put right on a later one.
 *
 * <p>Output tax, and input tax over-claimed: while the years since the END of the period in error
 * run out in the period of discovery or later (VAT Regulations 1995 reg 34(1A); HMRC manual
 * VAEC7410). Input tax under-claimed: on a return that can be made before the years since the DUE
 * date of that period's return are over (reg 29(1A); VAEC7410). Where an error is both, the shorter
 * counts. Some old periods are put right no more (reg 34(1C)).
 *
 * @param last the last day of the time, where there is an end to it
 * @param over whether the return of the period of discovery is too late
 * @param strict where a claim is in time but the return is due after this day, which is when it
 *     ends if the days given for returns sent online are not counted (HMRC manual VRM8300)
 */
record ErrorTime(Optional<LocalDate> last, boolean over, Optional<LocalDate> strict) {

    private static final ErrorTime ENDLESS =
            new ErrorTime(Optional.empty(), false, Optional.empty());

    static ErrorTime of(Law law, Close of, Period discovery, Amount output, Amount input) {
        LocalDate start = discovery.start();
        Optional<LocalDate> dead =
                law.periodRuleOn("errors-disregarded-to", start)
                        .map(r -> LocalDate.parse(r.value()))
                        .filter(day -> !of.end().isAfter(day));
        if (dead.isPresent()) {
            return new ErrorTime(dead, true, Optional.empty());
        }
        if (!output.isZero() || input.signum() < 0) {
            return law.limit("error-time-limit", start)
                    .map(years -> years.value().after(of.end()))
                    .map(
                            last ->
                                    new ErrorTime(
                                            Optional.of(last),
                                            last.isBefore(start),
                                            Optional.empty()))
                    .orElse(ENDLESS);
        }
        if (input.isZero()) {
            return ENDLESS;
        }
        return law.limit("claim-cap-years", start)
                .map(years -> claim(law, of, discovery, years))
                .orElse(ENDLESS);
    }

    private static ErrorTime claim(Law law, Close of, Period discovery, Dated<Law.Limit> years) {
        LocalDate last = years.value().after(of.due());
        LocalDate strict =
                years.value()
                        .after(
                                YearMonth.from(of.end())
                                        .plusMonths(
                                                Integer.parseInt(
                                                        law.periodRule(
                                                                        "due-month-ends-after",
                                                                        of.end())
                                                                .value()))
                                        .atEndOfMonth());
        boolean over = !discovery.end().isBefore(last);
        return new ErrorTime(
                Optional.of(last),
                over,
                Optional.of(strict).filter(day -> !over && discovery.due().isAfter(day)));
    }
}
