package quarterfold.period;

import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import quarterfold.law.Law;
import quarterfold.law.LawException;
import quarterfold.ledger.AnnualAccounting;
import quarterfold.ledger.Close;
import quarterfold.ledger.NotifiedPeriod;
import quarterfold.ledger.PaymentsOnAccount;
import quarterfold.ledger.Settings;

/**
 * The return periods of a book: each begins where the one before ended, the first with the
 * registration (VAT Regulations 1995 reg 25(1)); each ends as the tax authority notified, or else
 * with one of the book's period-end months, or after a year under annual accounting; the last with
 * the registration. For one thread.
 */
public final class Calendar {

    private final Settings settings;
    private final DueDays dueDays;
    private final Spans spans;
    private final Law law;

    public Calendar(Settings settings, Law law) {
        this.settings = settings;
        this.law = law;
        this.dueDays = new DueDays(settings.periods(), law);
        this.spans = new Spans(settings.periods());
    }

    /** The period named by its last month; empty where no period of the book ends in that month. */
    public Optional<Period> named(YearMonth name) {
        return spans.named(name).map(this::period);
    }

    /** The period a day falls in; empty before the registration and after it. */
    public Optional<Period> of(LocalDate day) {
        return spans.of(day).map(this::period);
    }

    private Period period(Spans.Span span) {
        return new Period(
                span.name(), span.start(), span.end(), dueDays.of(span.start(), span.end()));
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
                                        .filter(p -> p.end().equals(close.end()))
                                        .isEmpty())
                .findFirst();
    }

    /**
     * What is wrong with settings that are well written each but do not fit together, a line each,
     * such as {@code [scheme]: …}.
     */
    public List<String> problems() {
        List<String> problems = new ArrayList<>();
        spans.of(settings.registeredFrom()).flatMap(this::beforeTheTables).ifPresent(problems::add);
        settings.schemes()
                .changes()
                .forEach(day -> begins("scheme", "a change of scheme", day).forEach(problems::add));
        settings.periods().annual().map(AnnualAccounting::from).stream()
                .flatMap(day -> begins("annual_accounting", "a first day", day))
                .forEach(problems::add);
        settings.periods().onAccount().map(PaymentsOnAccount::from).stream()
                .flatMap(day -> begins("payments_on_account", "a first day", day))
                .forEach(problems::add);
        Stream.concat(
                        settings.periods().notified().stream().map(NotifiedPeriod::to),
                        settings.registeredTo().stream())
                .max(LocalDate::compareTo)
                .map(spans::twice)
                .orElse(List.of())
                .forEach(
                        name ->
                                problems.add(
                                        "[periods]: found two periods that end in %s; expected one, since a period is named by the month of its last day; list the days between under periods too"
                                                .formatted(name)));
        return problems;
    }

    /** What is wrong where the law's tables do not reach back to the registration. */
    private Optional<String> beforeTheTables(Spans.Span first) {
        try {
            period(first);
            return Optional.empty();
        } catch (LawException none) {
            return Optional.of(
                    "[registered_from]: found %s, before the tables of the law begin (%s); expected a later day, such as the first day of the earliest period that is to be worked out"
                            .formatted(first.start(), none.getMessage()));
        }
    }

    /** What is wrong where a day is within a period, which then had one thing and the other. */
    private Stream<String> begins(String setting, String what, LocalDate day) {
        return spans.of(day).filter(s -> !s.start().equals(day)).stream()
                .map(
                        s ->
                                "[%s]: found %s on %s, within the period from %s to %s; expected the first day of a period, such as %s"
                                        .formatted(
                                                setting,
                                                what,
                                                day,
                                                s.start(),
                                                s.end(),
                                                s.end().plusDays(1)));
    }

    /** Every period with a day from {@code first} to {@code last}, in order. */
    List<Period> from(LocalDate first, LocalDate last) {
        List<Period> periods = new ArrayList<>();
        LocalDate day =
                first.isBefore(settings.registeredFrom()) ? settings.registeredFrom() : first;
        Optional<Period> period = day.isAfter(last) ? Optional.empty() : of(day);
        while (period.isPresent()) {
            periods.add(period.get());
            LocalDate next = period.get().end().plusDays(1);
            period = next.isAfter(last) ? Optional.empty() : of(next);
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

    /** The annual accounting scheme, where the period is a year under it. */
    public Optional<AnnualAccounting> annual(Period period) {
        return dueDays.annual(period.start());
    }

    /** Payments on account, where they are due in the period. */
    public Optional<PaymentsOnAccount> onAccount(Period period) {
        return dueDays.onAccount(period.start());
    }

    /**
     * The month the tax year for partial exemption ends in: as the settings have it, or else March,
     * April or May by the months periods end in (VAT Regulations 1995 reg 99).
     */
    public Month partialExemptionYearEnds(LocalDate day) {
        List<Month> years =
                Arrays.stream(law.periodRule("partial-exemption-year-ends", day).value().split(" "))
                        .map(Integer::valueOf)
                        .map(Month::of)
                        .toList();
        Month first = ends().get(0);
        return settings.periods()
                .partialExemptionYearEnds()
                .or(() -> years.stream().filter(ends()::contains).findFirst())
                .or(() -> years.stream().filter(m -> sameStagger(m, first)).findFirst())
                .orElse(first);
    }

    private static boolean sameStagger(Month one, Month other) {
        return (one.getValue() - other.getValue()) % 3 == 0;
    }
}
