package quarterfold.cli;

import java.io.PrintWriter;
import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import quarterfold.money.Amount;
import quarterfold.outlook.Deadline;
import quarterfold.outlook.Interim;
import quarterfold.outlook.PaymentDates;

/** Deadlines as people read them on a terminal. */
record DeadlinesText(PrintWriter out, LocalDate today, Optional<LocalDate> paidOn) {

    private static final int WIDTH = 78;

    void print(List<Deadline> deadlines) {
        out.printf("Deadlines, seen from %s%n%n", Texts.day(today));
        if (deadlines.isEmpty()) {
            out.printf(
                    "No period is open or due then. Name one: quarterfold deadlines 2026-09%n%n");
        }
        deadlines.forEach(this::print);
    }

    private void print(Deadline deadline) {
        LocalDate due = deadline.period().due();
        out.printf(
                "%s, %s to %s, %s%n",
                deadline.period().name(),
                Texts.day(deadline.period().start()),
                Texts.day(deadline.period().end()),
                deadline.status().code());
        row("Return due", dated(due), "");
        deadline.interims().forEach(this::interim);
        out.printf(
                "%n  %s; this book pays by %s%n",
                deadline.owed().isZero()
                        ? "Nothing to pay with the return, as the figures stand"
                        : "%s to pay with the return, as the figures stand"
                                .formatted(Texts.money(deadline.owed())),
                deadline.payments().get(0).method().code());
        deadline.payments().forEach(this::payment);
        if (!deadline.late().isEmpty()) {
            out.printf(
                    "%n  %-36s %12s %12s %12s%n",
                    "If all is paid late", "penalty", "interest", "together");
            deadline.late().forEach(this::late);
            explain(deadline);
        }
        out.println();
        deadline.points()
                .ifPresentOrElse(
                        this::points,
                        () ->
                                paragraph(
                                        "A late return: the period began before points for late returns, and the tables have no penalty for it."));
        out.println();
    }

    private void row(String what, String when, String note) {
        out.printf("  %-18s %s%s%n", what, when, note.isEmpty() ? "" : "; " + note);
    }

    private void interim(Interim interim) {
        row("Payment within", dated(interim.due()), Texts.money(interim.amount()));
    }

    private void payment(PaymentDates dates) {
        String by = dated(dates.actBy());
        switch (dates.method()) {
            case DIRECT_DEBIT -> {
                row(
                        "direct-debit",
                        "set up before the return is sent, by " + by + otherActBy(dates),
                        "");
                row(
                        "",
                        dates.taken()
                                .map(t -> "taken " + dated(t))
                                .orElse("no text read says when it is taken"),
                        "");
            }
            case CARD, BACS ->
                    row(
                            dates.method().code(),
                            "send by " + by,
                            "there by " + dated(dates.arrivesBy()));
            case CHAPS, FASTER_PAYMENT -> row(dates.method().code(), "there by " + by, "");
        }
    }

    /** The stricter day stands; a person is told that another text gives a later one. */
    private static String otherActBy(PaymentDates dates) {
        return dates.otherActBy()
                .map(other -> " (another official text: %s)".formatted(dated(other)))
                .orElse("");
    }

    private void late(Deadline.Late late) {
        Optional<Amount> together =
                late.penalty().flatMap(p -> late.interest().map(i -> i.plus(p)));
        out.printf(
                "  %-36s %12s %12s %12s%n",
                "day %d, %s".formatted(late.number(), dated(late.day())),
                amount(late.penalty()),
                amount(late.interest()),
                amount(together));
    }

    private static String amount(Optional<Amount> amount) {
        return amount.map(Texts::money).orElse("not known");
    }

    private void explain(Deadline deadline) {
        if (deadline.late().stream().anyMatch(l -> l.penalty().isEmpty())) {
            paragraph(
                    "The period began before the penalties in the tables; what held before, the default surcharge, is not worked out.");
        }
        if (deadline.late().stream().anyMatch(l -> l.interest().isEmpty())) {
            paragraph("The tables have no rate of interest for some of these days.");
        }
        paidOn.filter(day -> !day.isAfter(deadline.lastDay()))
                .ifPresent(
                        day -> paragraph("Paid by %s it is not late.".formatted(Texts.day(day))));
        deadline.newestRate()
                .ifPresent(
                        rate ->
                                paragraph(
                                        "Interest is at %s%% a year, the newest rate in the tables, from %s; look for a later one."
                                                .formatted(rate.value(), Texts.day(rate.from()))));
    }

    private void points(Deadline.Points points) {
        paragraph(
                "A late return: %s (%s returns)%s. %s"
                        .formatted(
                                "%d of %d points".formatted(points.after(), points.threshold()),
                                points.frequency().code(),
                                points.penalty().isZero()
                                        ? ", no penalty yet"
                                        : ", a penalty of " + Texts.money(points.penalty()),
                                points.isAtThreshold()
                                        ? "All points go after every return is on time from %s to %s and those due in the %d months before are in."
                                                .formatted(
                                                        Texts.day(points.clearFrom()),
                                                        Texts.day(points.clearTo()),
                                                        points.backMonths())
                                        : "The point is gone at the end of %s."
                                                .formatted(Texts.day(points.expires()))));
        if (points.exempt()) {
            paragraph(
                    "No point is given for a first return, for a final one, or for one of odd length that was notified once; look at which this is.");
        }
    }

    private void paragraph(String text) {
        out.println(
                Texts.wrapped(text, WIDTH).stream()
                        .map(line -> "  " + line)
                        .collect(Collectors.joining(System.lineSeparator())));
    }

    /** Such as {@code Sat 7 November 2026}. */
    private static String dated(LocalDate day) {
        return day.getDayOfWeek().getDisplayName(TextStyle.SHORT, Locale.UK) + " " + Texts.day(day);
    }
}
