package quarterfold.outlook;

import java.time.LocalDate;
import java.time.Year;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import quarterfold.law.Box;
import quarterfold.law.Dated;
import quarterfold.law.Law;
import quarterfold.ledger.PaymentMethod;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;
import quarterfold.period.BoxFigure;
import quarterfold.period.Calendar;
import quarterfold.period.Direction;
import quarterfold.period.Period;
import quarterfold.period.VatReturn;

/** When the returns of a book and their payments are due, and what being late costs. */
public final class Deadlines {

    private final Settings settings;
    private final Calendar calendar;
    private final Law law;
    private final WorkingDays days = new WorkingDays();

    public Deadlines(Settings settings, Calendar calendar, Law law) {
        this.settings = settings;
        this.calendar = calendar;
        this.law = law;
    }

    /**
     * The periods with something to do on a day: those ended and not past due, and the day's own.
     */
    public List<Period> around(LocalDate day) {
        List<Period> periods = new ArrayList<>();
        Optional<Period> period =
                calendar.of(day).or(() -> calendar.registeredTo().flatMap(calendar::of));
        while (period.isPresent()
                && (!period.get().due().isBefore(day) || period.get().contains(day))) {
            periods.add(0, period.get());
            period = calendar.of(period.get().start().minusDays(1));
        }
        return periods;
    }

    /**
     * What a period asks, and when.
     *
     * @param vatReturn the period's return, a draft or closed
     * @param pointsBefore points for late returns that the business has
     * @param paidOn a late day to work the cost out for, beside the usual ones
     */
    public Deadline of(VatReturn vatReturn, int pointsBefore, Optional<LocalDate> paidOn) {
        Period period = vatReturn.period();
        List<Interim> within = interims(period);
        boolean extended =
                calendar.annual(period).isEmpty() && calendar.onAccount(period).isEmpty();
        Amount owed = within.stream().map(Interim::amount).reduce(net(vatReturn), Amount::minus);
        Amount left = owed.signum() > 0 ? owed : Amount.ZERO;
        LocalDate due = extended ? period.due() : days.onOrBefore(period.due());
        List<Deadline.Late> late = left.isZero() ? List.of() : late(period, due, left, paidOn);
        return new Deadline(
                period,
                vatReturn.status(),
                within,
                ownFirst(new Payments(law, days).by(period.due(), extended)),
                left,
                due,
                late,
                newestRate(late),
                points(period, pointsBefore));
    }

    /** The payments due within a period: instalments of the year, or payments on account. */
    public List<Interim> interims(Period period) {
        Interims interims = new Interims(law, days);
        List<Interim> within = new ArrayList<>();
        calendar.annual(period).map(a -> interims.instalments(period, a)).ifPresent(within::addAll);
        calendar.onAccount(period)
                .map(p -> interims.onAccount(period, p))
                .ifPresent(within::addAll);
        return within;
    }

    /** What the return says is payable; negative where it is repaid. */
    public static Amount net(VatReturn vatReturn) {
        Amount gap =
                vatReturn.boxes().stream()
                        .filter(b -> b.box().formula().operation() == Box.Operation.GAP)
                        .map(BoxFigure::figure)
                        .findFirst()
                        .orElse(Amount.ZERO);
        return vatReturn.direction() == Direction.RECLAIM ? gap.negated() : gap;
    }

    private List<PaymentDates> ownFirst(List<PaymentDates> payments) {
        PaymentMethod own = settings.paysBy();
        return payments.stream()
                .sorted(Comparator.comparing((PaymentDates p) -> p.method() != own))
                .toList();
    }

    private List<Deadline.Late> late(
            Period period, LocalDate due, Amount owed, Optional<LocalDate> paidOn) {
        LatePayment payment = LatePayment.whole(law, period.start(), due, owed);
        TreeSet<LocalDate> shown = new TreeSet<>();
        for (String day : law.periodRule("late-payment-shown-days", due).value().split(" ", -1)) {
            shown.add(due.plusDays(Long.parseLong(day)));
        }
        paidOn.filter(due::isBefore).ifPresent(shown::add);
        return shown.stream()
                .map(
                        day ->
                                new Deadline.Late(
                                        payment.number(day),
                                        day,
                                        payment.penalty(day),
                                        payment.interest(day)))
                .toList();
    }

    /** The rate of the last day shown, where the table has no later one. */
    private Optional<Dated<String>> newestRate(List<Deadline.Late> late) {
        return late.stream()
                .reduce((one, next) -> next)
                .flatMap(last -> law.periodRuleOn("late-interest", last.day()))
                .filter(rate -> rate.to().equals(LocalDate.MAX));
    }

    private Optional<Deadline.Points> points(Period period, int before) {
        LocalDate start = period.start();
        if (law.periodRuleOn("late-return-penalty", start).isEmpty()) {
            return Optional.empty();
        }
        LatePoints rules = new LatePoints(law, start);
        Frequency frequency = Frequency.of(usualDays(period), start, law);
        LatePoints.After after = rules.late(before, frequency);
        return Optional.of(
                new Deadline.Points(
                        frequency,
                        before,
                        after.points(),
                        rules.threshold(frequency),
                        after.penalty(),
                        rules.expiry(period.due()),
                        rules.complianceBegins(period.due()),
                        rules.complianceEnds(period.due(), frequency),
                        rules.backMonths(),
                        isSpecial(period)));
    }

    /** The length that counts: of a notified period its own, of others that of a usual one. */
    private long usualDays(Period period) {
        if (isNotified(period)) {
            return ChronoUnit.DAYS.between(period.start(), period.end()) + 1;
        }
        int returns = calendar.annual(period).isPresent() ? 1 : calendar.ends().size();
        return Year.of(period.end().getYear()).length() / returns;
    }

    private boolean isNotified(Period period) {
        return settings.periods().notified().stream()
                .anyMatch(n -> n.from().equals(period.start()));
    }

    /** A first or last return, or one of a length notified for it: some of these get no point. */
    private boolean isSpecial(Period period) {
        return period.start().equals(settings.registeredFrom())
                || calendar.registeredTo().filter(period.end()::equals).isPresent()
                || isNotified(period);
    }
}
