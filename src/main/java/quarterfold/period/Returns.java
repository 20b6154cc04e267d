package quarterfold.period;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import quarterfold.law.Law;
import quarterfold.ledger.Book;
import quarterfold.ledger.Close;
import quarterfold.ledger.ClosedEntry;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.Settings;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;
import quarterfold.treatment.Answers;
import quarterfold.treatment.Baskets;
import quarterfold.treatment.BeforeRegistration;
import quarterfold.treatment.Context;
import quarterfold.treatment.Liabilities;
import quarterfold.treatment.Occasion;
import quarterfold.treatment.Query;
import quarterfold.treatment.Questions;
import quarterfold.treatment.Timing;
import quarterfold.treatment.Together;
import quarterfold.treatment.Treated;
import quarterfold.treatment.TreatmentRun;

/**
 * The returns of one book: a draft worked out from the ledger as it stands, or the figures a close
 * froze. Holds the ledger open; for one thread.
 */
public final class Returns {

    private static final YearMonth NO_PERIOD = YearMonth.of(1, 1);

    private final Book book;
    private final Ledger ledger;
    private final Law law;
    private final Calendar calendar;
    private final Map<Long, String> fileNames = new HashMap<>();
    private final List<Adjuster> adjusters = List.of();
    private Optional<Context> context = Optional.empty();

    public Returns(Book book, Ledger ledger, Law law) {
        this.book = book;
        this.ledger = ledger;
        this.law = law;
        this.calendar = new Calendar(book.settings(), law);
    }

    public Calendar calendar() {
        return calendar;
    }

    Settings settings() {
        return book.settings();
    }

    /** The return of a period: as it was closed, or a draft. */
    public VatReturn of(Period period) {
        return ledger.close(period.name()).map(ClosedReturn::of).orElseGet(() -> draft(period));
    }

    /** Whether an entry is in none of the returns because it came after its period was closed. */
    public boolean isLate(Entry entry) {
        return calendar.of(entry.taxPoint())
                .flatMap(period -> ledger.close(period.name()))
                .filter(close -> entry.number() > close.lastEntry())
                .isPresent();
    }

    /** Whether the period is closed. */
    public boolean isClosed(YearMonth period) {
        return ledger.close(period).isPresent();
    }

    /** A draft. */
    VatReturn draft(Period period) {
        return draft(period, ledger::forEachFigured, t -> {});
    }

    /** A draft, showing each entry of the period to {@code each} as it is treated. */
    VatReturn draft(Period period, Consumer<Treated> each) {
        return draft(period, ledger::forEach, each);
    }

    private VatReturn draft(Period period, Occasions.Scan scan, Consumer<Treated> each) {
        Figured figured = new Figured();
        List<Query> queries = new ArrayList<>();
        FeeWatch fees = new FeeWatch();
        treat(
                period,
                scan,
                context(),
                treated -> {
                    figured.add(treated.boxes());
                    queries.addAll(treated.queries());
                    fees.see(treated.entry());
                    each.accept(treated);
                });
        Questions questions = new Questions(context());
        fees.withoutInvoice()
                .forEach(
                        (channel, money) ->
                                queries.add(
                                        questions.ask(
                                                "fees-without-invoice",
                                                period.name() + "/" + channel,
                                                money,
                                                Map.of("channel", channel))));
        queries.addAll(new Raised(ledger, this::fileName, settings().registeredFrom()).of(period));
        queries.addAll(
                new OutOfPeriod(
                                ledger,
                                calendar,
                                questions,
                                beforeRegistration(),
                                new ClaimLimit(law, settings()),
                                entry -> new TreatmentRun(context()).treat(entry).queries())
                        .queries(period));
        List<Adjustment> adjustments = new ArrayList<>();
        for (Adjuster adjuster : adjusters) {
            List<Adjustment> found = adjuster.of(period, figured.sums());
            found.forEach(a -> figured.add(a.boxes()));
            adjustments.addAll(found);
        }
        List<BoxFigure> boxes = figured.boxes(law.form(period.end()));
        return new VatReturn(
                period,
                VatReturn.Status.DRAFT,
                boxes,
                Figured.direction(boxes),
                adjustments,
                queries);
    }

    /** Each box under the rounding the book did not choose. */
    Map<String, Amount> otherRounding(Period period) {
        Figured figured = new Figured();
        treat(
                period,
                ledger::forEachFigured,
                context().withOtherRounding(),
                treated -> figured.add(treated.boxes()));
        Map<String, Amount> figures = new HashMap<>();
        figured.boxes(law.form(period.end())).forEach(b -> figures.put(b.box().id(), b.figure()));
        return figures;
    }

    private void treat(Period period, Occasions.Scan scan, Context with, Consumer<Treated> each) {
        TreatmentRun run = new TreatmentRun(with);
        new Occasions(ledger, timing(), settings().registeredFrom())
                .forEach(period, scan, occasion -> each.accept(run.treat(occasion)));
    }

    /**
     * Every entry of the ledger in the order of its number: as its close froze it, or as its own
     * period would treat it now. What is in no return, dated before the registration or come after
     * its period was closed, adds to no box.
     */
    public void forEachTreated(Consumer<Treated> each) {
        Map<YearMonth, TreatmentRun> runs = new HashMap<>();
        Map<YearMonth, ClosedPack> packs = new HashMap<>();
        ledger.closes().forEach(c -> packs.put(c.period(), new ClosedPack(ledger, c)));
        Timing timing = timing();
        ledger.forEachWithClosed(
                (entry, frozen) -> {
                    for (Occasion occasion : timing.of(entry)) {
                        each.accept(
                                frozen(occasion, frozen, packs)
                                        .orElseGet(() -> now(occasion, packs.keySet(), runs)));
                    }
                });
    }

    /** The occasion as a close froze it, if one did. */
    private static Optional<Treated> frozen(
            Occasion occasion, List<ClosedEntry> frozen, Map<YearMonth, ClosedPack> packs) {
        for (ClosedEntry closed : frozen) {
            if (closed.day().equals(occasion.day())
                    && closed.cause().equals(occasion.cause().code())) {
                for (ClosedPack pack : packs.values()) {
                    if (pack.vatReturn().period().contains(closed.day())) {
                        return Optional.of(pack.treated(occasion.entry(), closed));
                    }
                }
            }
        }
        return Optional.empty();
    }

    /** The occasion as its own period would treat it now. */
    private Treated now(
            Occasion occasion, Set<YearMonth> closed, Map<YearMonth, TreatmentRun> runs) {
        YearMonth period = calendar.of(occasion.day()).map(Period::name).orElse(NO_PERIOD);
        Treated treated =
                runs.computeIfAbsent(period, p -> new TreatmentRun(context())).treat(occasion);
        return closed.contains(period) || period.equals(NO_PERIOD) ? treated.inNoBox() : treated;
    }

    /** One entry's occasions as {@link #forEachTreated} shows them; none where there is no such. */
    public List<Treated> treated(long number) {
        List<Treated> found = new ArrayList<>();
        ledger.entry(number)
                .ifPresent(entry -> timing().of(entry).forEach(occasion -> find(occasion, found)));
        return found;
    }

    private void find(Occasion occasion, List<Treated> found) {
        Map<YearMonth, ClosedPack> packs = new HashMap<>();
        ledger.closes().forEach(c -> packs.put(c.period(), new ClosedPack(ledger, c)));
        Optional<Treated> frozen =
                frozen(occasion, ledger.closedEntry(occasion.entry().number()), packs);
        Optional<Period> period = calendar.of(occasion.day());
        if (frozen.isPresent()) {
            found.add(frozen.get());
            return;
        }
        if (period.isEmpty()) {
            found.add(new TreatmentRun(context()).treat(occasion).inNoBox());
            return;
        }
        treat(
                period.get(),
                ledger::forEach,
                context(),
                treated -> {
                    if (treated.entry().number() == occasion.entry().number()
                            && treated.occasion().cause() == occasion.cause()
                            && treated.occasion().day().equals(occasion.day())) {
                        found.add(
                                packs.containsKey(period.get().name())
                                        ? treated.inNoBox()
                                        : treated);
                    }
                });
    }

    /** What the working papers of a period show. */
    public Pack pack(Period period) {
        Optional<Close> close = ledger.close(period.name());
        return close.isPresent()
                ? new ClosedPack(ledger, close.get())
                : new DraftPack(book.settings(), law, ledger, this, period);
    }

    String fileName(long source) {
        if (fileNames.isEmpty()) {
            ledger.sources().forEach(s -> fileNames.put(s.id(), s.name()));
        }
        return fileNames.getOrDefault(source, "source " + source);
    }

    private BeforeRegistration beforeRegistration() {
        return new BeforeRegistration(settings(), context().answers());
    }

    private Timing timing() {
        return new Timing(beforeRegistration());
    }

    private Context context() {
        if (context.isEmpty()) {
            Liabilities liabilities = new Liabilities(law, book.products()::liability);
            Answers answers = Answers.of(ledger.decisions());
            boolean stock = ledger.hasKind(Kind.STOCK_ON_HAND);
            context =
                    Optional.of(
                            new Context(
                                    law,
                                    book.settings(),
                                    book.products()::liability,
                                    baskets(liabilities),
                                    Together.of(
                                            ledger::forEachWithDocument,
                                            stock ? ledger::forEach : each -> {},
                                            law,
                                            book.settings(),
                                            liabilities,
                                            answers),
                                    answers,
                                    this::fileName,
                                    book.settings().roundingPerLine()));
        }
        return context.get();
    }

    /** Baskets are only looked for where something can be other than standard-rated. */
    private Baskets baskets(Liabilities liabilities) {
        return book.products().isEmpty() && !ledger.hasStatedSaleRates()
                ? Baskets.NONE
                : Baskets.of(ledger::forEach, liabilities);
    }

    /** The sources with an entry that the period's return looks at. */
    static List<Source> sourcesIn(Ledger ledger, Period period, LocalDate registeredFrom) {
        LocalDate first = FirstReturn.scanFrom(period, registeredFrom);
        return ledger.sources().stream()
                .filter(
                        s ->
                                s.dates()
                                        .filter(
                                                d ->
                                                        !d.last().isBefore(first)
                                                                && !d.first().isAfter(period.end()))
                                        .isPresent())
                .toList();
    }
}
