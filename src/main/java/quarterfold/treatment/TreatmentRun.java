package quarterfold.treatment;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import quarterfold.law.BoxRule;
import quarterfold.law.Dated;
import quarterfold.law.EvidenceRule;
import quarterfold.law.Measure;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.Entry;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/**
 * Treats the entries of a period, one after another in the order of their numbers. The same
 * entries, settings and tables give the same results on any day and any machine.
 */
public final class TreatmentRun {

    private final Context context;
    private final Liabilities liabilities;
    private final Decider decider;
    private final Questions questions;
    private final RareFinder rare;
    private final Documents documents = new Documents();

    public TreatmentRun(Context context) {
        this.context = context;
        this.liabilities = new Liabilities(context.law(), context.products());
        this.decider = new Decider(context.law(), context.settings());
        this.questions = new Questions(context);
        this.rare = new RareFinder(context.law(), context.settings());
    }

    /** One share of an entry under one rule. */
    private record Part(Ruling ruling, Figures figures, Amount claim) {

        Amount measure(Measure measure) {
            return switch (measure) {
                case NET -> figures.net();
                case VAT -> figures.vat();
                case CLAIM -> claim;
                case GROSS -> figures.net().plus(figures.vat());
            };
        }
    }

    /** How VAT applies to the supply of the whole entry. */
    public Treated treat(Entry entry) {
        return treat(Occasion.of(entry));
    }

    /** How VAT applies to an occasion of an entry. */
    public Treated treat(Occasion occasion) {
        Answered answered = Answered.of(occasion.entry(), context.answers());
        Entry entry = answered.entry();
        List<Part> parts = parts(occasion, answered);
        Ruling first = told(parts).ruling();
        Figures figures = parts.get(0).figures();
        Amount claim = parts.get(0).claim();
        for (int i = 1; i < parts.size(); i++) {
            figures = figures.plus(parts.get(i).figures());
            claim = claim.plus(parts.get(i).claim());
        }
        Share share = occasion.share();
        return new Treated(
                occasion,
                TakenUp.IN_ITS_PERIOD,
                first.row().treatment(),
                first.row().rule(),
                first.row().why(),
                first.citation(),
                parts.size() == 1 ? first.rateWords() : rate(parts),
                share.of(figures.net()),
                share.of(figures.vat()),
                share.of(claim),
                boxes(parts, share),
                queries(entry, parts, figures).stream()
                        .map(q -> q.isOpen() ? answered.setAside().map(q::setAside).orElse(q) : q)
                        .toList());
    }

    private List<Query> queries(Entry entry, List<Part> parts, Figures figures) {
        Optional<String> printed = printedVatQuery(entry, parts);
        if (parts.size() == 1
                && parts.get(0).ruling().row().query().isEmpty()
                && printed.isEmpty()) {
            return List.of();
        }
        List<Query> queries = new ArrayList<>();
        Set<String> asked = new LinkedHashSet<>();
        for (Part part : parts) {
            String code = part.ruling().row().query();
            if (!code.isEmpty() && asked.add(code)) {
                queries.add(questions.ask(code, entry, figures, part.ruling().rate()));
            }
        }
        printed.ifPresent(
                code ->
                        queries.add(
                                questions.ask(code, entry, figures, parts.get(0).ruling().rate())));
        return queries;
    }

    /** The part whose rule stands for the entry: of several, one with VAT, since that is owed. */
    private static Part told(List<Part> parts) {
        for (Part part : parts) {
            if (!part.figures().vat().isZero()) {
                return part;
            }
        }
        return parts.get(0);
    }

    private List<Part> parts(Occasion occasion, Answered answered) {
        Entry entry = answered.entry();
        Rare facts = rare.of(entry, occasion, answered.decided());
        List<Liability.Share> shares = liabilities.of(entry, context.baskets());
        if (shares.size() == 1) {
            return List.of(
                    part(entry, entry.amounts(), shares.get(0).liability(), facts, answered));
        }
        Amount whole =
                shares.stream().map(Liability.Share::price).reduce(Amount::plus).orElseThrow();
        Amount left = entry.amounts().money();
        List<Part> parts = new ArrayList<>();
        for (int i = 0; i < shares.size(); i++) {
            boolean last = i == shares.size() - 1;
            Amount share =
                    last ? left : entry.amounts().money().shared(shares.get(i).price(), whole);
            left = left.minus(share);
            parts.add(
                    part(
                            entry,
                            Amounts.ofGross(share),
                            shares.get(i).liability(),
                            facts,
                            answered));
        }
        return parts;
    }

    private Part part(
            Entry entry, Amounts amounts, Liability liability, Rare facts, Answered answered) {
        String printed = amounts.vat().map(v -> v.isZero() ? "nil" : "printed").orElse("unstated");
        Ruling ruling =
                decider.decide(
                        entry.profile(),
                        entry.taxPoint(),
                        new Decider.Varying(
                                liability,
                                printed,
                                claims(entry, liability),
                                facts,
                                answered.treatment()));
        Figures figures = figures(entry, amounts, ruling);
        Amount claim =
                ruling.row().claims()
                        ? figures.vat()
                                .portion(ruling.deductible())
                                .portion(entry.profile().businessUse())
                        : Amount.ZERO;
        return new Part(ruling, figures, claim);
    }

    private Figures figures(Entry entry, Amounts amounts, Ruling ruling) {
        Percent rate = ruling.rate().orElse(Percent.ZERO);
        return switch (ruling.row().vatRule()) {
            case NONE -> Figures.none(amounts);
            case INSIDE -> Figures.inside(amounts, rate, context.lineRounding());
            case IMPORT -> Figures.ofImport(amounts, rate);
            case ON_DOCUMENT -> {
                Amount value = Figures.valueWithoutTax(amounts);
                yield new Figures(value, documents.vat(entry, value, rate));
            }
        };
    }

    /** What the entry's evidence supports by its amount and category. */
    private String claims(Entry entry, Liability liability) {
        Optional<EvidenceRule> rule = decider.evidence(entry.profile(), entry.taxPoint());
        if (rule.isEmpty() || !rule.get().claims()) {
            return "no";
        }
        List<String> categories = rule.get().onlyCategories();
        if (!categories.isEmpty() && !categories.contains(entry.profile().category())) {
            return "not-this-category";
        }
        boolean over =
                rule.get()
                        .upTo()
                        .filter(limit -> price(entry, liability).abs().compareTo(limit) > 0)
                        .isPresent();
        return over ? "over-limit" : "yes";
    }

    private static Amount price(Entry entry, Liability liability) {
        return Figures.price(entry.amounts(), liability.percent());
    }

    private Optional<String> printedVatQuery(Entry entry, List<Part> parts) {
        return parts.size() == 1
                ? PrintedVat.query(
                        entry,
                        parts.get(0).ruling(),
                        parts.get(0).figures(),
                        () ->
                                context.law()
                                        .rates()
                                        .on("standard", entry.taxPoint())
                                        .map(Dated::value))
                : Optional.empty();
    }

    private static String rate(List<Part> parts) {
        Set<String> rates = new LinkedHashSet<>();
        for (Part part : parts) {
            if (part.ruling().rate().isPresent()) {
                rates.add(part.ruling().rateWords());
            } else if (parts.size() > 1) {
                rates.add("no rate");
            }
        }
        return String.join(" and ", rates);
    }

    private static Map<String, Amount> boxes(List<Part> parts, Share share) {
        Map<String, Amount> boxes = new LinkedHashMap<>();
        for (Part part : parts) {
            for (BoxRule rule : part.ruling().boxes()) {
                Amount amount = share.of(part.measure(rule.measure())).times(rule.sign());
                if (!amount.isZero()) {
                    boxes.merge(rule.box(), amount, Amount::plus);
                }
            }
        }
        return boxes;
    }
}
