package quarterfold.treatment;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import quarterfold.law.Law;
import quarterfold.ledger.Bundles;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Entry;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Settings;

/** A book's entries being treated by the shipped law, and the outcome in one line of text. */
final class Treating {

    static final Law LAW = Law.of("GB");

    private static final Context.Products NO_GOODS = (product, day) -> Optional.empty();

    private final Law law;
    private final Settings settings;
    private final Context.Products products;
    private final boolean perLine;
    private final Answers answers;
    private final Exchange.Rates rates;

    private Treating(
            Law law,
            Settings settings,
            Context.Products products,
            boolean perLine,
            Answers answers,
            Exchange.Rates rates) {
        this.law = law;
        this.settings = settings;
        this.products = products;
        this.perLine = perLine;
        this.answers = answers;
        this.rates = rates;
    }

    private DoubleClaims.Known closed = entry -> Optional.empty();

    static Treating gb() {
        return of(SampleSettings.GB);
    }

    static Treating of(Settings settings) {
        return new Treating(
                LAW,
                settings,
                NO_GOODS,
                settings.roundingPerLine(),
                Answers.NONE,
                Exchange.Rates.NONE);
    }

    Treating under(Law otherLaw) {
        return new Treating(otherLaw, settings, products, perLine, answers, rates);
    }

    Treating selling(Map<String, String> liabilities) {
        return with((product, day) -> Optional.ofNullable(liabilities.get(product)));
    }

    /** Goods of these liabilities, some of them in bundles. */
    Treating selling(Map<String, String> liabilities, Map<String, List<Bundles.Part>> bundles) {
        return with(
                new Context.Products() {
                    @Override
                    public Optional<String> liability(String product, LocalDate day) {
                        return Optional.ofNullable(liabilities.get(product));
                    }

                    @Override
                    public List<Bundles.Part> parts(String product, LocalDate day) {
                        return bundles.getOrDefault(product, List.of());
                    }
                });
    }

    private Treating with(Context.Products goods) {
        return new Treating(law, settings, goods, perLine, answers, rates);
    }

    /** The same with what people decided. */
    Treating deciding(Decision... decisions) {
        return new Treating(
                law, settings, products, perLine, Answers.of(List.of(decisions)), rates);
    }

    /** This one, where closed returns have claimed entries; said last. */
    Treating claimed(DoubleClaims.Known inReturns) {
        closed = inReturns;
        return this;
    }

    /** The same with these exchange rates held. */
    Treating holding(Exchange.Rates held) {
        return new Treating(law, settings, products, perLine, answers, held);
    }

    /** What an occasion of the line, as the only entry, comes to. */
    Treated one(SampleLine line, Cause cause) {
        Entry entry = line.entry(1);
        return new TreatmentRun(context(List.of(entry)))
                .treat(new Occasion(entry, entry.taxPoint(), cause, Share.WHOLE));
    }

    /** The lines as entries 1, 2, 3 … of one file. */
    List<Treated> all(SampleLine... lines) {
        List<Entry> entries = new ArrayList<>();
        for (SampleLine line : lines) {
            entries.add(line.entry(entries.size() + 1));
        }
        TreatmentRun run = new TreatmentRun(context(entries));
        return entries.stream().map(run::treat).toList();
    }

    /**
     * What happens of the lines, as the entries of one file, in the order of entries and days: such
     * as {@code 2026-07-05 supply uk-sale 20%: 100.00 + 20.00; 1=20.00 6=100.00}.
     */
    List<String> happens(SampleLine... lines) {
        return treated(lines).stream().map(Treating::happening).toList();
    }

    /** The same as treated. */
    List<Treated> treated(SampleLine... lines) {
        List<Entry> entries = new ArrayList<>();
        for (SampleLine line : lines) {
            entries.add(line.entry(entries.size() + 1));
        }
        Context context = context(entries);
        Timing timing = new Timing(context);
        TreatmentRun run = new TreatmentRun(context);
        return entries.stream().flatMap(e -> timing.of(e).stream()).map(run::treat).toList();
    }

    private static String happening(Treated treated) {
        String boxes =
                new TreeMap<>(treated.boxes())
                        .entrySet().stream()
                                .map(b -> b.getKey() + "=" + b.getValue())
                                .collect(Collectors.joining(" "));
        return "%s %s %s: %s"
                .formatted(
                        treated.occasion().day(),
                        treated.occasion().cause().code(),
                        treated.treatment(),
                        boxes.isEmpty() ? "no box" : boxes);
    }

    Treated one(SampleLine line) {
        return all(line).get(0);
    }

    Context context(List<Entry> ledger) {
        Liabilities liabilities = new Liabilities(law, products);
        Baskets baskets = Baskets.of(ledger::forEach, liabilities);
        Exchange exchange = new Exchange(law, settings, rates);
        Ties ties =
                Ties.of(
                        (which, each) ->
                                ledger.stream().filter(e -> which.test(e.profile())).forEach(each),
                        law,
                        answers);
        return new Context(
                law,
                settings,
                products,
                baskets,
                Together.of(
                        ledger::forEach,
                        ledger::forEach,
                        law,
                        settings,
                        liabilities,
                        answers,
                        exchange,
                        closed,
                        ties.imports()),
                answers,
                ties,
                source -> "sheet-" + source + ".csv",
                perLine,
                new Related(
                        Gifts.of(ledger::forEach, law, liabilities, answers, exchange),
                        StockBook.of(ledger::forEach, liabilities, baskets, answers, exchange),
                        day -> Optional.of(quarter(day)),
                        rates));
    }

    /** The quarter to the end of March, June, September or December. */
    private static Related.Span quarter(LocalDate day) {
        LocalDate start = day.withDayOfMonth(1).minusMonths((day.getMonthValue() - 1) % 3);
        return new Related.Span(start, start.plusMonths(3).minusDays(1));
    }

    /**
     * Treatment, rule, rate, figures, boxes and queries, such as {@code uk-sale S17a 20%: 100.00 +
     * 20.00, claim 0.00; 1=20.00 6=100.00; asks nothing}.
     */
    static String told(Treated treated) {
        String boxes =
                new TreeMap<>(treated.boxes())
                        .entrySet().stream()
                                .map(b -> b.getKey() + "=" + b.getValue())
                                .collect(Collectors.joining(" "));
        String queries =
                treated.queries().stream()
                        .map(q -> q.id().substring(q.id().indexOf('/') + 1))
                        .collect(Collectors.joining(" "));
        return "%s %s %s: %s + %s, claim %s; %s; asks %s"
                .formatted(
                        treated.treatment(),
                        treated.rule(),
                        treated.rate().isEmpty() ? "no rate" : treated.rate(),
                        treated.net(),
                        treated.vat(),
                        treated.claim(),
                        boxes.isEmpty() ? "no box" : boxes,
                        queries.isEmpty() ? "nothing" : queries);
    }

    String told(SampleLine line) {
        return told(one(line));
    }
}
