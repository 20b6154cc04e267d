package quarterfold.period;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import quarterfold.law.Law;
import quarterfold.ledger.Book;
import quarterfold.ledger.Close;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.Settings;
import quarterfold.ledger.Source;
import quarterfold.ledger.TableText;
import quarterfold.money.Amount;
import quarterfold.treatment.Cause;
import quarterfold.treatment.Context;
import quarterfold.treatment.Occasion;
import quarterfold.treatment.Query;
import quarterfold.treatment.Questions;
import quarterfold.treatment.Timing;
import quarterfold.treatment.Treated;
import quarterfold.treatment.TreatmentRun;

/**
 * The returns of one book: a draft worked out from the ledger as it stands, or the figures a close
 * froze. Holds the ledger open; for one thread.
 */
public final class Returns {

    /** What returns take up beside their entries, in the order it is shown. */
    private static final List<Adjuster.Maker> ADJUSTERS =
            List.of(FlatRateVat::new, PartialExemption::new);

    private final Book book;
    private final Ledger ledger;
    private final Law law;
    private final Calendar calendar;
    private final Map<Long, String> fileNames = new HashMap<>();
    private final EarlierPeriods earlier;
    private final ExemptTrade exemptTrade;
    private Optional<Context> context = Optional.empty();

    public Returns(Book book, Ledger ledger, Law law) {
        this.book = book;
        this.ledger = ledger;
        this.law = law;
        this.calendar = new Calendar(book.settings(), law);
        this.earlier = new EarlierPeriods(ledger, calendar);
        this.exemptTrade = new ExemptTrade(ledger, book.products());
    }

    public Calendar calendar() {
        return calendar;
    }

    Settings settings() {
        return book.settings();
    }

    /** The tables that made the figures: the law's, and the book's own lists of goods. */
    List<TableText> tables() {
        return Stream.of(
                        law.files().stream()
                                .map(f -> new TableText(f.name(), f.sha256(), f.text())),
                        book.products().table().stream(),
                        book.bundles().table().stream())
                .flatMap(t -> t)
                .toList();
    }

    /** The return of a period: as it was closed, or a draft. */
    public VatReturn of(Period period) {
        return ledger.close(period.name())
                .map(close -> ClosedReturn.of(close, ledger.corrections(period.name())))
                .orElseGet(() -> draft(period));
    }

    /**
     * The period that has or will have what was wrong in closed returns; empty where none is closed
     * or the registration has ended.
     */
    public Optional<Period> takesUpErrors() {
        return earlier.takesUp();
    }

    /**
     * The period whose return takes an occasion up: that of its close, or of its day, or the one
     * that takes up what is wrong in closed returns; empty where none does.
     */
    public Optional<Period> takenUpIn(Treated treated) {
        Occasion occasion = treated.occasion();
        Optional<Period> closed =
                ledger.closedEntry(occasion.entry().number()).stream()
                        .filter(c -> EntryStories.isOf(c, occasion))
                        .findFirst()
                        .flatMap(c -> calendar.named(c.closedIn()));
        if (closed.isPresent()) {
            return closed;
        }
        Optional<Period> own = calendar.of(occasion.day());
        return own.filter(p -> !isClosed(p.name())).or(() -> own.flatMap(p -> takesUpErrors()));
    }

    /** Whether closed returns are wrong in something that no return has taken up. */
    boolean hasErrors() {
        return earlier.hasAny(context());
    }

    /** Whether the period is closed. */
    public boolean isClosed(YearMonth period) {
        return ledger.close(period).isPresent();
    }

    /** Whether any entry is dated in the period. */
    boolean hasEntries(Period period) {
        return ledger.hasEntries(period.start(), period.end());
    }

    /** A draft. */
    VatReturn draft(Period period) {
        return draft(period, ledger::forEachFigured, t -> {});
    }

    /** Every entry of a period as it would be treated now. */
    void forEachTreated(Period period, Consumer<Treated> each) {
        draft(period, each);
    }

    /** A draft, showing each entry of the period to {@code each} as it is treated. */
    VatReturn draft(Period period, Consumer<Treated> each) {
        return draft(period, ledger::forEach, each);
    }

    private VatReturn draft(Period period, Occasions.Scan scan, Consumer<Treated> each) {
        Figured figured = new Figured();
        List<Adjuster> adjusters = adjusters(period, context());
        List<Query> queries = new ArrayList<>();
        List<Correction> rows = new ArrayList<>();
        FeeWatch fees = new FeeWatch(context());
        treat(
                period,
                scan,
                context(),
                treated -> {
                    figured.add(treated.boxes());
                    adjusters.forEach(a -> a.see(treated));
                    queries.addAll(treated.queries());
                    if (treated.occasion().cause() == Cause.SUPPLY) {
                        fees.see(treated);
                    }
                    earlier.row(treated).ifPresent(rows::add);
                    each.accept(treated);
                });
        List<Wrong> wrongs = earlier.of(period, context());
        List<Treated> late = wrongs.stream().filter(Wrong::late).map(Wrong::treated).toList();
        late.forEach(fees::see);
        Questions questions = new Questions(context());
        fees.withoutInvoice()
                .forEach(
                        (channel, money) ->
                                queries.add(
                                        questions.ask(
                                                "fees-without-invoice",
                                                period.name() + "/" + channel,
                                                money,
                                                Map.of("channel", named(channel)))));
        queries.addAll(
                new Raised(
                                ledger,
                                this::fileName,
                                questions,
                                context().answers(),
                                settings().registeredFrom())
                        .of(
                                period,
                                late.stream()
                                        .map(t -> t.entry().source())
                                        .collect(Collectors.toSet())));
        queries.addAll(
                new OutOfPeriod(
                                ledger,
                                calendar,
                                entry -> new TreatmentRun(context()).treat(entry).queries())
                        .queries(period));
        Adjuster.Found found = found(adjusters);
        found.adjustments().forEach(a -> figured.add(a.boxes()));
        queries.addAll(found.queries());
        Corrections.Taken taken = take(period, wrongs, context(), figured);
        for (Treated treated : taken.treated()) {
            queries.addAll(treated.queries());
            each.accept(treated);
        }
        queries.addAll(taken.queries());
        rows.addAll(taken.rows());
        List<BoxFigure> boxes = figured.boxes(law.form(period.end()));
        return new VatReturn(
                period,
                VatReturn.Status.DRAFT,
                boxes,
                Figured.direction(boxes),
                found.adjustments(),
                queries,
                CorrectionSheet.of(rows, Sides.of(law.form(period.end())), taken.limit()));
    }

    /** Takes up what is wrong in closed returns, after everything else the limit goes by. */
    private Corrections.Taken take(
            Period period, List<Wrong> wrongs, Context with, Figured figured) {
        Map<String, Amount> figures = new HashMap<>();
        figured.boxes(law.form(period.end())).forEach(b -> figures.put(b.box().id(), b.figure()));
        Corrections.Taken taken = new Corrections(with, period).take(wrongs, figures);
        taken.treated().forEach(t -> figured.add(t.boxes()));
        return taken;
    }

    private List<Adjuster> adjusters(Period period, Context with) {
        Basis basis =
                new Basis(
                        period,
                        with,
                        calendar,
                        new OtherPeriods(
                                ledger,
                                exemptTrade,
                                (other, each) -> treat(other, ledger::forEachFigured, with, each)));
        return ADJUSTERS.stream().map(maker -> maker.begin(basis)).toList();
    }

    /** Rows may state a settlement and no channel. */
    private static String named(String channel) {
        return channel.isEmpty() ? "A channel that no row names" : channel;
    }

    private static Adjuster.Found found(List<Adjuster> adjusters) {
        return adjusters.stream()
                .map(Adjuster::found)
                .reduce(Adjuster.Found.NOTHING, Adjuster.Found::with);
    }

    /** Each box under the rounding the book did not choose. */
    Map<String, Amount> otherRounding(Period period) {
        Figured figured = new Figured();
        Context other = context().withOtherRounding();
        List<Adjuster> adjusters = adjusters(period, other);
        treat(
                period,
                ledger::forEachFigured,
                other,
                treated -> {
                    figured.add(treated.boxes());
                    adjusters.forEach(a -> a.see(treated));
                });
        found(adjusters).adjustments().forEach(a -> figured.add(a.boxes()));
        take(period, earlier.of(period, other), other, figured);
        Map<String, Amount> figures = new HashMap<>();
        figured.boxes(law.form(period.end())).forEach(b -> figures.put(b.box().id(), b.figure()));
        return figures;
    }

    void treat(Period period, Occasions.Scan scan, Context with, Consumer<Treated> each) {
        TreatmentRun run = new TreatmentRun(with);
        TrueUps trueUps = TrueUps.of(ledger, with);
        new Occasions(ledger, new Timing(with), with.answers(), settings().registeredFrom())
                .forEach(
                        period,
                        scan,
                        occasion ->
                                each.accept(
                                        earlier.classed(
                                                trueUps.apply(run.treat(occasion), run), period)));
    }

    /**
     * Every entry of the ledger in the order of its number: as its close froze it, or as its own
     * period would treat it now. What is in no return adds to no box.
     */
    public void forEachTreated(Consumer<Treated> each) {
        new EntryStories(ledger, this, earlier, context()).forEach(each);
    }

    /** One entry's occasions as {@link #forEachTreated} shows them; none where there is no such. */
    public List<Treated> treated(long number) {
        return new EntryStories(ledger, this, earlier, context()).of(number);
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

    private Context context() {
        if (context.isEmpty()) {
            context = Optional.of(new Contexts(book, ledger, law, calendar).make(this::fileName));
        }
        return context.get();
    }

    /** The sources with an entry that a return looks at, or that it takes up. */
    static List<Source> sourcesIn(Ledger ledger, VatReturn vatReturn, LocalDate registeredFrom) {
        Set<Source> sources =
                new LinkedHashSet<>(sourcesIn(ledger, vatReturn.period(), registeredFrom));
        for (Source source : ledger.sources()) {
            if (vatReturn.corrections().rows().stream().anyMatch(r -> isIn(r.entry(), source))) {
                sources.add(source);
            }
        }
        return sources.stream().sorted(Comparator.comparing(Source::id)).toList();
    }

    private static boolean isIn(long entry, Source source) {
        return entry >= source.firstEntry() && entry < source.firstEntry() + source.entries();
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
