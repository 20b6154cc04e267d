package quarterfold.cli;

import java.time.YearMonth;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.stream.Collectors;
import quarterfold.law.Law;
import quarterfold.ledger.Book;
import quarterfold.ledger.Close;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.LedgerException.Fault;
import quarterfold.ledger.Settings;
import quarterfold.period.Calendar;
import quarterfold.period.Period;
import quarterfold.period.Returns;

/** A book with its ledger and law open, as a command works on it. */
record OpenBook(Book book, Ledger ledger, Law law, Returns returns) implements AutoCloseable {

    /**
     * The country whose return a book is for; the United Kingdom's tables are the only ones yet.
     */
    static final String COUNTRY = "GB";

    /** Opens the book the command line names, and refuses settings that the law does not know. */
    static OpenBook of(Main main) throws LedgerException {
        CompletableFuture<Law> tables = CompletableFuture.supplyAsync(() -> Law.of(COUNTRY));
        Book book = Book.open(main.book());
        Ledger ledger = book.ledger();
        try {
            Law law = tables.get(); // reading them takes as long as opening the ledger
            refuseUnlawful(book.settings(), law);
            refuseUnfitting(book.settings(), law);
            OpenBook open = new OpenBook(book, ledger, law, new Returns(book, ledger, law));
            open.refuseCutAnew();
            return open;
        } catch (ExecutionException e) {
            ledger.close();
            throw fault(e);
        } catch (InterruptedException e) {
            ledger.close();
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while reading the law's tables", e);
        } catch (RuntimeException e) {
            ledger.close();
            throw e;
        }
    }

    /** What reading the tables failed with, as itself: its message may be meant for a person. */
    static RuntimeException fault(ExecutionException e) {
        if (e.getCause() instanceof Error error) {
            throw error;
        }
        return e.getCause() instanceof RuntimeException told
                ? told
                : new IllegalStateException("the law's tables could not be read", e.getCause());
    }

    /** Refuses settings that are sound in themselves but that the country's tables do not know. */
    private static void refuseUnlawful(Settings settings, Law law) {
        if (!settings.currency().equals(law.currency())) {
            throw new LedgerException(
                    Fault.BAD_INPUT,
                    "book.yaml [currency]: found '%s'; expected the currency of the return, such as %s"
                            .formatted(settings.currency(), law.currency()));
        }
        List<String> unknown = law.choices().unknown(settings.choices());
        if (!unknown.isEmpty()) {
            throw new LedgerException(
                    Fault.BAD_INPUT,
                    "book.yaml [choices]: found %s; expected names and values of choices.csv, such as %s"
                            .formatted(
                                    unknown,
                                    law.choices().all().stream()
                                            .map(c -> c.name() + ": " + c.standard())
                                            .findFirst()
                                            .orElse("none")));
        }
    }

    /** Refuses settings of schemes and periods that do not fit together. */
    private static void refuseUnfitting(Settings settings, Law law) {
        List<String> problems = new Calendar(settings, law).problems();
        if (!problems.isEmpty()) {
            throw new LedgerException(
                    Fault.BAD_INPUT,
                    problems.stream().map(p -> "book.yaml " + p).collect(Collectors.joining("\n")));
        }
    }

    private void refuseCutAnew() {
        Optional<Close> cut = returns.calendar().cutAnew(ledger.closes());
        if (cut.isPresent()) {
            throw new LedgerException(
                    Fault.BAD_INPUT,
                    "book.yaml [period_ends, periods, registered_from]: %s was closed as %s to %s, and with these settings it would be no such period, so that an entry could get into two returns; put back the settings it was closed with, or list its days under periods"
                            .formatted(
                                    cut.get().period(),
                                    Texts.day(cut.get().start()),
                                    Texts.day(cut.get().end())));
        }
    }

    /** The period a person named, or what is wrong with the name. */
    Period period(String name) throws LedgerException {
        if (!name.matches("[0-9]{4}-(0[1-9]|1[0-2])")) {
            throw new LedgerException(
                    Fault.USAGE,
                    "PERIOD: found '%s'; expected the last month of a period, such as 2026-09"
                            .formatted(name));
        }
        YearMonth month = YearMonth.parse(name);
        return returns.calendar()
                .named(month)
                .orElseThrow(
                        () ->
                                new LedgerException(
                                        Fault.USAGE,
                                        "PERIOD: found %s; expected a month in which a period of this book ends (%s, from %s)"
                                                .formatted(
                                                        month,
                                                        ends(),
                                                        book.settings().registeredFrom())));
    }

    private String ends() {
        return returns.calendar().ends().stream()
                .map(m -> m.getDisplayName(TextStyle.FULL, Locale.UK))
                .collect(Collectors.joining(", "));
    }

    @Override
    public void close() {
        ledger.close();
    }
}
