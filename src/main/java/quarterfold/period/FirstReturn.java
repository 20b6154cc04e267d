package quarterfold.period;

import java.time.LocalDate;

/**
 * The first return of a registration: it takes up purchases from before it (VAT Regulations 1995
 * reg 111), so it reaches back to the first entry there is.
 */
final class FirstReturn {

    /** Before every day an entry can have. */
    static final LocalDate EARLIEST = LocalDate.of(1, 1, 1);

    private FirstReturn() {}

    static boolean is(Period period, LocalDate registeredFrom) {
        return period.contains(registeredFrom);
    }

    /** The first day of the entries a period's return looks at. */
    static LocalDate scanFrom(Period period, LocalDate registeredFrom) {
        return is(period, registeredFrom) ? EARLIEST : period.start();
    }
}
