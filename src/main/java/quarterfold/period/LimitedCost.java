package quarterfold.period;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import quarterfold.law.Law;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/**
 * The test for limited-cost traders under the flat-rate scheme, for a span of days: relevant goods
 * under the part of the year's amount for its length, or under the percentage of the turnover, make
 * one (VAT Regulations 1995 reg 55A(4) as inserted by SI 2017/295 reg 3).
 *
 * @param words how it came out, as a sentence
 */
record LimitedCost(boolean limited, String words) {

    /** The span is within the test's own time in force. */
    static LimitedCost of(
            LocalDate first, LocalDate last, Amount goods, Amount turnover, Basis basis) {
        Law law = basis.law();
        Amount yearly = limit(law, "limited-cost-goods-year", first);
        Percent share = new Percent(limit(law, "limited-cost-goods-percent", first).decimal());
        boolean byDays = basis.chose("limited-cost-goods-limit=by-days");
        Months months = Months.of(first, last);
        long days = ChronoUnit.DAYS.between(first, last.plusDays(1));
        Amount least = byDays ? ofYear(yearly, first, days) : months.ofYear(yearly);
        Amount part = turnover.portion(share);
        boolean underLeast = goods.compareTo(least) < 0;
        boolean underPart = goods.compareTo(part) < 0;
        return new LimitedCost(
                underLeast || underPart,
                "Relevant goods with VAT %s are %s %s, the part of %s a year for %s, and %s %s, %s%% of the turnover: %s."
                        .formatted(
                                goods,
                                underLeast ? "under" : "not under",
                                least,
                                yearly,
                                byDays ? days + " days" : months,
                                underPart ? "under" : "not under",
                                part,
                                share,
                                underLeast || underPart
                                        ? "a limited-cost trader"
                                        : "no limited-cost trader"));
    }

    private static Amount ofYear(Amount yearly, LocalDate first, long days) {
        long year = ChronoUnit.DAYS.between(first, first.plusYears(1));
        return Amount.of(
                yearly.decimal()
                        .multiply(BigDecimal.valueOf(days))
                        .divide(BigDecimal.valueOf(year), 4, RoundingMode.HALF_UP));
    }

    private static Amount limit(Law law, String name, LocalDate day) {
        return law.limit(name, day).orElseThrow().value().amount();
    }
}
