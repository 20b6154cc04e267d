package quarterfold.treatment;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import quarterfold.law.Law;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Entry;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Settings;

/** A book's entries being treated by the shipped law, and the outcome in one line of text. */
final class Treating {

    static final Law LAW = Law.of("GB");

    private final Law law;
    private final Settings settings;
    private final Map<String, String> products;
    private final boolean perLine;
    private final Answers answers;

    private Treating(
            Law law,
            Settings settings,
            Map<String, String> products,
            boolean perLine,
            Answers answers) {
        this.law = law;
        this.settings = settings;
        this.products = products;
        this.perLine = perLine;
        this.answers = answers;
    }

    static Treating gb() {
        return of(SampleSettings.GB);
    }

    static Treating of(Settings settings) {
        return new Treating(LAW, settings, Map.of(), settings.roundingPerLine(), Answers.NONE);
    }

    Treating under(Law otherLaw) {
        return new Treating(otherLaw, settings, products, perLine, answers);
    }

    Treating selling(Map<String, String> liabilities) {
        return new Treating(law, settings, liabilities, perLine, answers);
    }

    /** The same with what people decided. */
    Treating deciding(Decision... decisions) {
        return new Treating(law, settings, products, perLine, Answers.of(List.of(decisions)));
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

    Treated one(SampleLine line) {
        return all(line).get(0);
    }

    Context context(List<Entry> ledger) {
        Context.Products listed = (product, day) -> Optional.ofNullable(products.get(product));
        Liabilities liabilities = new Liabilities(law, listed);
        return new Context(
                law,
                settings,
                listed,
                Baskets.of(ledger::forEach, liabilities),
                Together.of(ledger::forEach, ledger::forEach, law, settings, liabilities, answers),
                answers,
                source -> "sheet-" + source + ".csv",
                perLine);
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
