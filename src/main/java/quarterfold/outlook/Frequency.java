package quarterfold.outlook;

import java.time.temporal.ChronoUnit;
import java.util.Locale;
import quarterfold.law.Law;
import quarterfold.period.Period;

/** How often returns are made, which sets how many late ones cost money. */
public enum Frequency {
    ANNUAL,
    QUARTERLY,
    MONTHLY;

    /** The word for it in tables, such as {@code quarterly}. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * By the length of the period: up to 8 weeks as monthly, up to 20 as quarterly (HMRC manual
     * CH192070; Finance Act 2021 Sch 24). Needs a period in which points are given.
     */
    static Frequency of(Period period, Law law) {
        long days = ChronoUnit.DAYS.between(period.start(), period.end()) + 1;
        if (days <= 7L * weeks("late-return-weeks-monthly", period, law)) {
            return MONTHLY;
        }
        return days <= 7L * weeks("late-return-weeks-quarterly", period, law) ? QUARTERLY : ANNUAL;
    }

    private static int weeks(String rule, Period period, Law law) {
        return Integer.parseInt(law.periodRule(rule, period.start()).value());
    }
}
