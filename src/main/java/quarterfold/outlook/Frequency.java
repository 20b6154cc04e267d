package quarterfold.outlook;

import java.time.LocalDate;
import java.util.Locale;
import quarterfold.law.Law;

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
     * By the length of a period: up to 8 weeks as monthly, up to 20 as quarterly (HMRC manual
     * CH192070; Finance Act 2021 Sch 24). Needs a day on which points are given.
     */
    static Frequency of(long days, LocalDate start, Law law) {
        if (days <= 7L * weeks("late-return-weeks-monthly", start, law)) {
            return MONTHLY;
        }
        return days <= 7L * weeks("late-return-weeks-quarterly", start, law) ? QUARTERLY : ANNUAL;
    }

    private static int weeks(String rule, LocalDate start, Law law) {
        return Integer.parseInt(law.periodRule(rule, start).value());
    }
}
