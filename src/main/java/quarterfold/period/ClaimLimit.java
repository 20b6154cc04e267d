package quarterfold.period;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Optional;
import quarterfold.law.Dated;
import quarterfold.law.Law;
import quarterfold.ledger.Settings;

/**
 * How late input tax may be claimed: {@code claim-cap-years} from the day by which the first return
 * it could have been on was due (VAT Regulations 1995 reg 29(1A) as amended by SI 2009/586). The
 * example in HMRC manual VRM8300 runs them from the month end, without the days a return sent
 * online has more; the book's choice {@code claim-cap-from} says which. A claim counts as made on
 * the day its own return is due: an earlier day is not known.
 */
final class ClaimLimit {

    private static final String FROM_DUE_DAY = "claim-cap-from=due-day";

    private final Law law;
    private final Settings settings;

    ClaimLimit(Law law, Settings settings) {
        this.law = law;
        this.settings = settings;
    }

    /**
     * The last day of a claim that could have been made on the return of {@code first}; empty where
     * no limit is in force.
     *
     * @param on the day of the claim, by which the limit is looked up
     */
    Optional<LocalDate> lastDay(Period first, LocalDate on) {
        return law.limit("claim-cap-years", on)
                .map(Dated::value)
                .map(limit -> limit.after(runsFrom(first)));
    }

    /** Whether the return of {@code claiming} is in time for what {@code first} could have had. */
    boolean isInTime(Period first, Period claiming) {
        return lastDay(first, claiming.end())
                .filter(last -> claiming.due().isAfter(last))
                .isEmpty();
    }

    private LocalDate runsFrom(Period first) {
        if (law.choices().holds(FROM_DUE_DAY, settings.choices())) {
            return first.due();
        }
        int months = Integer.parseInt(law.periodRule("due-month-ends-after", first.end()).value());
        return YearMonth.from(first.end()).plusMonths(months).atEndOfMonth();
    }
}
