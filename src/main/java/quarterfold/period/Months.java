package quarterfold.period;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import quarterfold.money.Amount;

/**
 * The length of a span of days in months: whole months, and days over as a share of the month they
 * are in. The law gives limits a month on average and no rule for part of one; the share is our
 * reading.
 */
record Months(BigDecimal count) {

    private static final BigDecimal TWELVE = new BigDecimal(12);

    /** Both days included. */
    static Months of(LocalDate first, LocalDate last) {
        LocalDate after = last.plusDays(1);
        long whole = ChronoUnit.MONTHS.between(first, after);
        LocalDate rest = first.plusMonths(whole);
        BigDecimal days = BigDecimal.valueOf(ChronoUnit.DAYS.between(rest, after));
        BigDecimal month = BigDecimal.valueOf(YearMonth.from(rest).lengthOfMonth());
        return new Months(
                BigDecimal.valueOf(whole)
                        .add(days.divide(month, 4, RoundingMode.HALF_UP))
                        .stripTrailingZeros());
    }

    /** So much a month, over these months. */
    Amount of(Amount monthly) {
        return Amount.of(monthly.decimal().multiply(count).setScale(4, RoundingMode.HALF_UP));
    }

    /** The part of a yearly amount. */
    Amount ofYear(Amount yearly) {
        return Amount.of(yearly.decimal().multiply(count).divide(TWELVE, 4, RoundingMode.HALF_UP));
    }

    /** An amount of the whole span as an average of one month. */
    Amount average(Amount whole) {
        return Amount.of(whole.decimal().divide(count, 4, RoundingMode.HALF_UP));
    }

    /** Such as {@code 3 months}. */
    @Override
    public String toString() {
        return count.toPlainString()
                + (count.compareTo(BigDecimal.ONE) == 0 ? " month" : " months");
    }
}
