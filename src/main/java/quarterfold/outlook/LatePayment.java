package quarterfold.outlook;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import quarterfold.law.Dated;
import quarterfold.law.Law;
import quarterfold.money.Amount;
import quarterfold.money.Percent;
import quarterfold.money.Rounding;

/**
 * What it costs to pay one sum late: penalties (Finance Act 2021 Sch 26, by the first day of the
 * period) and simple interest (by each day it runs). Day 1 is the day after the due day (CH193140).
 *
 * @param due the last day of payment
 * @param owed what was owed then
 * @param paid what was paid after it, by day
 */
record LatePayment(
        Law law,
        LocalDate periodStart,
        LocalDate due,
        Amount owed,
        NavigableMap<LocalDate, Amount> paid) {

    private static final int DECIMALS = 4;

    /** Nothing is paid before the day it is all paid. */
    static LatePayment whole(Law law, LocalDate periodStart, LocalDate due, Amount owed) {
        return new LatePayment(law, periodStart, due, owed, new TreeMap<>());
    }

    /**
     * The penalties where all is paid on the day, or still owed at its end; empty where the table
     * has none for the period: before 2023 another regime held.
     */
    Optional<Amount> penalty(LocalDate until) {
        if (rule("late-payment-first-days").isEmpty()) {
            return Optional.empty();
        }
        long first = Long.parseLong(rule("late-payment-first-days").orElseThrow());
        long second = Long.parseLong(rule("late-payment-second-days").orElseThrow());
        LocalDate firstDay = due.plusDays(first);
        LocalDate secondDay = due.plusDays(second);
        return Optional.of(
                share("late-payment-after-day-15", firstDay, until)
                        .plus(share("late-payment-after-day-30", secondDay, until))
                        .plus(daily(secondDay, until)));
    }

    /** A percentage of what is owed at the end of a day, if that is before all is paid. */
    private Amount share(String rate, LocalDate day, LocalDate until) {
        return until.isAfter(day)
                ? owedAfter(day)
                        .portion(Percent.of(rule(rate).orElseThrow()))
                        .rounded(Rounding.NEAREST_PENNY)
                : Amount.ZERO;
    }

    private Amount daily(LocalDate after, LocalDate until) {
        BigDecimal rate = new BigDecimal(rule("late-payment-daily-from-day-31").orElseThrow());
        BigDecimal sum = BigDecimal.ZERO;
        for (LocalDate day = after.plusDays(1); !day.isAfter(until); day = day.plusDays(1)) {
            sum = sum.add(owedAfter(day.minusDays(1)).decimal().multiply(rate));
        }
        return ofYear(sum);
    }

    /** Interest from day 1 to the day; empty where the table has no rate for one of the days. */
    Optional<Amount> interest(LocalDate until) {
        BigDecimal sum = BigDecimal.ZERO;
        for (LocalDate day = due.plusDays(1); !day.isAfter(until); day = day.plusDays(1)) {
            Optional<Dated<String>> rate = law.periodRuleOn("late-interest", day);
            if (rate.isEmpty()) {
                return Optional.empty();
            }
            sum =
                    sum.add(
                            owedAfter(day.minusDays(1))
                                    .decimal()
                                    .multiply(new BigDecimal(rate.get().value())));
        }
        return Optional.of(ofYear(sum));
    }

    /** A sum of daily amounts, each times a percentage a year, to the penny. */
    private Amount ofYear(BigDecimal sum) {
        BigDecimal days = new BigDecimal(law.periodRule("late-payment-year", due).value());
        return Amount.of(
                        sum.divide(
                                days.multiply(BigDecimal.valueOf(100)),
                                DECIMALS,
                                RoundingMode.HALF_UP))
                .rounded(Rounding.NEAREST_PENNY);
    }

    private Amount owedAfter(LocalDate day) {
        return paid.headMap(day, true).values().stream().reduce(owed, Amount::minus);
    }

    /** The number of the day: 1 is the first late one. */
    long number(LocalDate day) {
        return ChronoUnit.DAYS.between(due, day);
    }

    private Optional<String> rule(String name) {
        return law.periodRuleOn(name, periodStart).map(Dated::value);
    }
}
