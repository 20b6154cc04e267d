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
    private final Documents documents = new Documents();

    public TreatmentRun(Context context) {
        this.context = context;
        this.liabilities = new Liabilities(context.law(), context.products());
        this.decider = new Decider(context.law(), context.settings());
        this.questions = new Questions(context);
    }

    /** One share of an entry under one rule. */
    private record Part(Decision decision, Figures figures, Amount claim) {

        Amount measure(Measure measure) {
            return switch (measure) {
                case NET -> figures.net();
                case VAT -> figures.vat();
                case CLAIM -> claim;
                case GROSS -> figures.net().plus(figures.vat());
            };
        }
    }

    /** How VAT applies to the entry. */
    public Treated treat(Entry entry) {
        List<Part> parts = parts(entry);
        Decision first = told(parts).decision();
        Figures figures = parts.get(0).figures();
        Amount claim = parts.get(0).claim();
        for (int i = 1; i < parts.size(); i++) {
            figures = figures.plus(parts.get(i).figures());
            claim = claim.plus(parts.get(i).claim());
        }
        return new Treated(
                entry,
                first.row().treatment(),
                first.row().rule(),
                first.row().why(),
                first.citation(),
                parts.size() == 1 ? first.rateWords() : rate(parts),
                figures.net(),
                figures.vat(),
                claim,
                boxes(parts),
                queries(entry, parts, figures));
    }

    private List<Query> queries(Entry entry, List<Part> parts, Figures figures) {
        Optional<String> printed = printedVatQuery(entry, parts);
        if (parts.size() == 1
                && parts.get(0).decision().row().query().isEmpty()
                && printed.isEmpty()) {
            return List.of();
        }
        List<Query> queries = new ArrayList<>();
        Set<String> asked = new LinkedHashSet<>();
        for (Part part : parts) {
            String code = part.decision().row().query();
            if (!code.isEmpty() && asked.add(code)) {
                queries.add(questions.ask(code, entry, figures, part.decision().rate()));
            }
        }
        printed.ifPresent(
                code ->
                        queries.add(
                                questions.ask(
                                        code, entry, figures, parts.get(0).decision().rate())));
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

    private List<Part> parts(Entry entry) {
        List<Liability.Share> shares = liabilities.of(entry, context.baskets());
        if (shares.size() == 1) {
            return List.of(part(entry, entry.amounts(), shares.get(0).liability()));
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
            parts.add(part(entry, Amounts.ofGross(share), shares.get(i).liability()));
        }
        return parts;
    }

    private Part part(Entry entry, Amounts amounts, Liability liability) {
        String printed = amounts.vat().map(v -> v.isZero() ? "nil" : "printed").orElse("unstated");
        Decision decision =
                decider.decide(
                        entry.profile(),
                        entry.taxPoint(),
                        new Decider.Varying(liability, printed, claims(entry)));
        Figures figures = figures(entry, amounts, decision);
        Amount claim =
                decision.row().claims()
                        ? figures.vat()
                                .portion(decision.deductible())
                                .portion(entry.profile().businessUse())
                        : Amount.ZERO;
        return new Part(decision, figures, claim);
    }

    private Figures figures(Entry entry, Amounts amounts, Decision decision) {
        Percent rate = decision.rate().orElse(Percent.ZERO);
        return switch (decision.row().vatRule()) {
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
    private String claims(Entry entry) {
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
                        .filter(limit -> entry.amounts().money().abs().compareTo(limit) > 0)
                        .isPresent();
        return over ? "over-limit" : "yes";
    }

    private Optional<String> printedVatQuery(Entry entry, List<Part> parts) {
        return parts.size() == 1
                ? PrintedVat.query(
                        entry,
                        parts.get(0).decision(),
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
            if (part.decision().rate().isPresent()) {
                rates.add(part.decision().rateWords());
            } else if (parts.size() > 1) {
                rates.add("no rate");
            }
        }
        return String.join(" and ", rates);
    }

    private static Map<String, Amount> boxes(List<Part> parts) {
        Map<String, Amount> boxes = new LinkedHashMap<>();
        for (Part part : parts) {
            for (BoxRule rule : part.decision().boxes()) {
                Amount amount = part.measure(rule.measure()).times(rule.sign());
                if (!amount.isZero()) {
                    boxes.merge(rule.box(), amount, Amount::plus);
                }
            }
        }
        return boxes;
    }
}
