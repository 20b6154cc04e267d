package quarterfold.treatment;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import quarterfold.law.BoxRule;
import quarterfold.law.Dated;
import quarterfold.law.Measure;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.Entry;
import quarterfold.money.Amount;
import quarterfold.money.Percent;
import quarterfold.money.Rounding;

/**
 * Treats the entries of a period, one after another in the order of their numbers. The same
 * entries, settings and tables give the same results on any day and any machine.
 */
public final class TreatmentRun {

    private final Context context;
    private final Rulings rulings;
    private final Questions questions;
    private final Exchange exchange;
    private final ExportEvidence exports;
    private final Documents documents = new Documents();
    private final Set<String> askedOfParts = new HashSet<>();

    public TreatmentRun(Context context) {
        this.context = context;
        this.exchange = Exchange.of(context);
        this.rulings = new Rulings(context, exchange);
        this.questions = new Questions(context);
        this.exports = new ExportEvidence(context.law());
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
        Exchange.Exchanged exchanged =
                exchange.of(exports.asSupplied(answered.entry().at(occasion.taxPoint())));
        Entry entry = exchanged.entry();
        List<Portion> portions = rulings.portions(entry);
        EvidenceWeigher.Weighed weighed =
                rulings.weigh(exchanged, answered, portions.get(0).liability());
        Rare facts = rulings.rare(entry, occasion, answered);
        List<Part> parts =
                portions.stream().map(p -> part(exchanged, p, facts, answered, weighed)).toList();
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
                entry.taxPoint().isBefore(context.settings().registeredFrom())
                        ? TakenUp.BEFORE_REGISTRATION
                        : TakenUp.IN_ITS_PERIOD,
                first.row().treatment(),
                first.row().rule(),
                first.row().why(),
                first.citation(),
                parts.size() == 1 ? first.rateWords() : rates(parts),
                share.of(figures.net()),
                share.of(figures.vat()),
                share.of(claim),
                boxes(parts, share),
                queries(
                                occasion,
                                exchanged,
                                parts,
                                figures,
                                weighed,
                                claims -> rulings.treatment(entry, portions.get(0), facts, claims))
                        .stream()
                        .map(q -> q.isOpen() ? answered.setAside().map(q::setAside).orElse(q) : q)
                        .toList(),
                weighed.grade(),
                exchanged.conversion());
    }

    private List<Query> queries(
            Occasion occasion,
            Exchange.Exchanged exchanged,
            List<Part> parts,
            Figures figures,
            EvidenceWeigher.Weighed weighed,
            UnaryOperator<String> treatment) {
        Optional<String> printed = printedVatQuery(occasion, exchanged, parts);
        Optional<String> sterling = sterlingVatQuery(occasion, exchanged);
        Optional<String> payment = context.ties().payments().query(exchanged.stated());
        Optional<AmendedDocuments.Unplaced> unplaced =
                context.ties()
                        .imports()
                        .unplaced(exchanged.entry())
                        .filter(u -> context.law().asks("import-month-missing"));
        List<String> asked = weighed.asks();
        if (parts.size() == 1
                && parts.get(0).ruling().row().query().isEmpty()
                && printed.isEmpty()
                && sterling.isEmpty()
                && asked.isEmpty()
                && unplaced.isEmpty()
                && payment.isEmpty()) {
            return List.of();
        }
        Set<String> codes = new LinkedHashSet<>();
        parts.forEach(part -> codes.add(part.ruling().row().query()));
        printed.ifPresent(codes::add);
        sterling.ifPresent(codes::add);
        codes.addAll(asked);
        payment.ifPresent(codes::add);
        unplaced.ifPresent(u -> codes.add("import-month-missing"));
        codes.remove("");
        if (isCreditBelowNothing(exchanged.entry()) && codes.remove("credit-unevidenced")) {
            codes.add("credit-adds-to-claim");
        }
        if (isImporterUnstated(exchanged.entry()) && codes.remove("import-of-another")) {
            codes.add("import-importer-unstated");
        }
        return codes.stream()
                .map(
                        code ->
                                questions.ask(
                                        code,
                                        exchanged.entry(),
                                        figures,
                                        rate(code, parts),
                                        words(
                                                code,
                                                occasion,
                                                exchanged,
                                                figures.vat(),
                                                weighed,
                                                treatment)))
                .filter(q -> occasion.share().isWhole() || askedOfParts.add(q.id()))
                .toList();
    }

    private boolean isCreditBelowNothing(Entry entry) {
        return SupplierDocuments.isCredit(entry)
                && entry.amounts().money().signum() < 0
                && context.law().asks("credit-adds-to-claim");
    }

    private boolean isImporterUnstated(Entry entry) {
        return entry.profile().partyVat().isEmpty()
                && context.law().asks("import-importer-unstated");
    }

    private Map<String, String> words(
            String code,
            Occasion occasion,
            Exchange.Exchanged exchanged,
            Amount vat,
            EvidenceWeigher.Weighed weighed,
            UnaryOperator<String> treatment) {
        return switch (code) {
            case "no-exchange-rate" -> exchange.lacking(exchanged.stated());
            case "import-month-missing" ->
                    context.ties().imports().unplaced(exchanged.entry()).orElseThrow().words();
            case SterlingVatStated.QUERY -> SterlingVatStated.words(exchanged);
            case "vat-not-in-sterling" ->
                    Map.of(
                            "foreign",
                            exchanged.stated().profile().currency(),
                            "converted",
                            vat.rounded(Rounding.NEAREST_PENNY).toString());
            case "export-overdue" ->
                    Map.of(
                            "less",
                            context.ties()
                                    .exportSales()
                                    .credited(occasion.entry(), occasion.day()));
            case "credit-adds-to-claim" ->
                    Map.of(
                            "charge",
                            exchanged.entry().amounts().money().negated().toString(),
                            "charge_vat",
                            vat.negated().rounded(Rounding.NEAREST_PENNY).toString());
            case "credit-unevidenced" -> Map.of("treatment", fitting(treatment.apply("yes")));
            default -> {
                Map<String, String> words = weighed.words();
                if (weighed.again().isPresent()) {
                    words.put("treatment", fitting(treatment.apply(weighed.unlessAgain())));
                }
                yield words;
            }
        };
    }

    /** A treatment by its name; where the tables have none that decides, how one is found. */
    private static String fitting(String treatment) {
        return treatment.equals("undecided")
                ? "TREATMENT, one of those that --treat-as ? lists"
                : treatment;
    }

    /** The rate of the part that asks; of the first where none does. */
    private static Optional<Percent> rate(String code, List<Part> parts) {
        return parts.stream()
                .map(Part::ruling)
                .filter(r -> r.row().query().equals(code))
                .findFirst()
                .orElse(parts.get(0).ruling())
                .rate();
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

    private Part part(
            Exchange.Exchanged exchanged,
            Portion portion,
            Rare facts,
            Answered answered,
            EvidenceWeigher.Weighed weighed) {
        Entry entry = exchanged.entry();
        Amounts amounts = portion.amounts();
        Ruling ruling = rulings.of(entry, portion, facts, answered, weighed);
        boolean exported =
                facts.cause() == Cause.EXPORT_TIME_UP || facts.cause() == Cause.EXPORT_EVIDENCED;
        Figures figures = figures(entry, exported ? Figures.asPaid(amounts) : amounts, ruling);
        Amount claim =
                ruling.row().claims()
                        ? PrintedVat.claimable(exchanged, ruling, figures, () -> standard(entry))
                                .portion(ruling.deductible())
                                .portion(entry.profile().businessUse())
                        : Amount.ZERO;
        return new Part(ruling, figures, claim);
    }

    private Figures figures(Entry entry, Amounts amounts, Ruling ruling) {
        Percent rate = ruling.rate().orElse(Percent.ZERO);
        return switch (ruling.row().vatRule()) {
            case NONE -> Figures.none(amounts);
            case ON_MARGIN ->
                    context.related()
                            .stock()
                            .position(entry)
                            .map(
                                    p ->
                                            Figures.onMargin(
                                                    amounts.money(),
                                                    p.added().times(entry.kind().direction()),
                                                    rate,
                                                    context.lineRounding()))
                            .orElseGet(() -> Figures.none(amounts));
            case INSIDE -> Figures.inside(amounts, rate, context.lineRounding());
            case IMPORT -> Figures.ofImport(amounts, rate);
            case ON_DOCUMENT -> {
                Amount value = Figures.valueWithoutTax(amounts);
                yield new Figures(value, documents.vat(entry, value, rate));
            }
        };
    }

    /** Asked once of an entry: of its supply, with the first part of it. */
    private Optional<String> printedVatQuery(
            Occasion occasion, Exchange.Exchanged exchanged, List<Part> parts) {
        Entry entry = exchanged.entry();
        if (!isFirst(occasion)) {
            return Optional.empty();
        }
        return parts.size() == 1
                ? PrintedVat.query(
                        exchanged.printed(),
                        parts.get(0).ruling(),
                        exchanged.printed(parts.get(0).figures()),
                        () -> standard(entry))
                : PrintedVat.ofSeveral(
                        entry,
                        parts.stream()
                                .map(p -> p.figures().vat())
                                .reduce(Amount.ZERO, Amount::plus));
    }

    private static boolean isFirst(Occasion occasion) {
        return occasion.cause() == Cause.SUPPLY && occasion.share().before().isZero();
    }

    private Optional<String> sterlingVatQuery(Occasion occasion, Exchange.Exchanged exchanged) {
        return isFirst(occasion)
                ? SterlingVatStated.query(exchanged, context.law())
                : Optional.empty();
    }

    private Optional<Percent> standard(Entry entry) {
        return context.law().rates().on("standard", entry.taxPoint()).map(Dated::value);
    }

    private static String rates(List<Part> parts) {
        return parts.stream()
                .map(p -> p.ruling().rate().isPresent() ? p.ruling().rateWords() : "no rate")
                .distinct()
                .collect(Collectors.joining(" and "));
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
