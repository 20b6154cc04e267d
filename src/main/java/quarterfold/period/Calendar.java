package quarterfold.period;

import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quarterfold.law.Law;
import quarterfold.ledger.Close;
import quarterfold.ledger.Settings;

/**
 * The return periods of a book: each ends with one of its period-end months and begins where the
 * one before ended, the first with the registration (VAT Regulations 1995 reg 25(1)). The due day
 * comes from {@code periods.csv}.
 */
public final class Calendar {

    private final Settings settings;
    private final Law law;

    public Calendar(Settings settings, Law law) {
        this.settings = settings;
        this.law = law;
    }

    /** The period named by its last month; empty where no period of the book ends in that month. */
    public Optional<Period> named(YearMonth name) {
        if (!settings.periodEnds().contains(name.getMonth())
                || name.atEndOfMonth().isBefore(settings.registeredFrom())) {
            return Optional.empty();
        }
        YearMonth before = name.minusMonths(1);
        while (!settings.periodEnds().contains(before.getMonth())) {
            before = before.minusMonths(1);
        }
        LocalDate start = before.atEndOfMonth().plusDays(1);
        LocalDate first =
                start.isBefore(settings.registeredFrom()) ? settings.registeredFrom() : start;
        return Optional.of(new Period(name, first, name.atEndOfMonth(), due(name.atEndOfMonth())));
    }

    /** The period a day falls in; empty before the registration. */
    public Optional<Period> of(LocalDate day) {
        if (day.isBefore(settings.registeredFrom())) {
            return Optional.empty();
        }
        YearMonth name = YearMonth.from(day);
        while (!settings.periodEnds().contains(name.getMonth())) {
            name = name.plusMonths(1);
        }
        return named(name);
    }

    /**
     * A closed period that these settings would cut in another way, so that an entry could get into
     * two returns.
     */
    public Optional<Close> cutAnew(List<Close> closes) {
        return closes.stream()
                .filter(
                        close ->
                                named(close.period())
                                        .filter(p -> p.start().equals(close.start()))
                                        .isEmpty())
                .findFirst();
    }

    /** Every period with a day from {@code first} to {@code last}, in order. */
    List<Period> from(LocalDate first, LocalDate last) {
        List<Period> periods = new ArrayList<>();
        LocalDate day =
                first.isBefore(settings.registeredFrom()) ? settings.registeredFrom() : first;
        while (!day.isAfter(last)) {
            Period period = of(day).orElseThrow();
            periods.add(period);
            day = period.end().plusDays(1);
        }
        return periods;
    }

    public LocalDate registeredFrom() {
        return settings.registeredFrom();
    }

    /** The last day of the registration, where it was cancelled. */
    public Optional<LocalDate> registeredTo() {
        return settings.registeredTo();
    }

    /**
     * The months a period of this book may be named by, for an error that says what was expected.
     */
    public List<Month> ends() {
        return settings.periodEnds();
    }

    private LocalDate due(LocalDate end) {
        int months = Integer.parseInt(law.periodRule("due-month-ends-after", end).value());
        int days = Integer.parseInt(law.periodRule("due-extra-days", end).value());
        return YearMonth.from(end).plusMonths(months).atEndOfMonth().plusDays(days);
    }
}
