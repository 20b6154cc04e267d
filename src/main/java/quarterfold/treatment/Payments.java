package quarterfold.treatment;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.money.Amount;

/**
 * What the payment rows of a ledger say about its documents. A payment belongs to the document of
 * its number and party, and to the lines of that document by their money, so that rates share in
 * each payment fairly.
 */
final class Payments {

    /** No payment is entered apart from its document. */
    static final Payments NONE = new Payments();

    private final Map<Document, List<Entry>> payments = new HashMap<>();
    private final Map<Document, Amount> totals = new HashMap<>();
    private final Map<Document, Paid> paid = new HashMap<>();
    private final Set<Long> above = new HashSet<>();
    private final Set<Document> relieved = new HashSet<>();
    private final Set<String> parties = new HashSet<>();

    /** A document by who issued it or whom it went to, its number, and its currency. */
    private record Document(Kind.Side side, String party, String number, String currency) {
        /** What relief for a debt names may be in another currency than the debt. */
        static Document inAnyCurrency(Kind.Side side, Entry entry) {
            return new Document(side, entry.profile().party(), entry.line().document(), "");
        }

        static Document of(Kind.Side side, Entry entry) {
            return new Document(
                    side,
                    entry.profile().party(),
                    entry.line().document(),
                    entry.profile().currency());
        }
    }

    private Payments() {}

    static Payments of(Search ledger, Answers answers) {
        Payments all = new Payments();
        ledger.forEach(
                p -> pays(p.kind()).isPresent() || BadDebts.isRelief(p),
                entry -> {
                    if (!isDuplicate(entry, answers) && !entry.line().document().isEmpty()) {
                        all.see(entry);
                        all.parties.add(entry.profile().party());
                    }
                });
        if (all.payments.isEmpty()) {
            return all;
        }
        ledger.forEach(
                p -> all.names(p.party()) && isOfDocument(p.kind()),
                entry -> {
                    Document document = Document.of(entry.kind().side(), entry);
                    if (all.payments.containsKey(document) && !isDuplicate(entry, answers)) {
                        all.totals.merge(document, money(entry), Amount::plus);
                    }
                });
        all.payments.forEach(all::settle);
        return all;
    }

    private static boolean isDuplicate(Entry entry, Answers answers) {
        return answers.about(entry).stream()
                .anyMatch(d -> d.action() == Decision.Action.DUPLICATE_OF);
    }

    private void see(Entry entry) {
        Optional<Kind.Side> side = pays(entry.kind());
        if (side.isPresent()) {
            payments.computeIfAbsent(Document.of(side.get(), entry), d -> new ArrayList<>())
                    .add(entry);
        } else {
            relieved.add(Document.inAnyCurrency(Kind.Side.SALES, entry));
        }
    }

    /** Which documents a kind of payment pays. */
    private static Optional<Kind.Side> pays(Kind kind) {
        return kind == Kind.CUSTOMER_PAYMENT
                ? Optional.of(Kind.Side.SALES)
                : kind == Kind.SUPPLIER_PAYMENT
                        ? Optional.of(Kind.Side.PURCHASES)
                        : Optional.empty();
    }

    /** Whether a line of the kind is part of what its document asks to be paid. */
    private static boolean isOfDocument(Kind kind) {
        return kind.side() == Kind.Side.PURCHASES || isOfSale(kind);
    }

    private static boolean isOfSale(Kind kind) {
        return kind == Kind.SALE
                || kind == Kind.DELIVERY
                || kind == Kind.DISCOUNT
                || kind == Kind.DISCOUNT_REVERSED;
    }

    /** What the line adds to what is to be paid, VAT included. */
    private static Amount money(Entry entry) {
        Amount in = Figures.price(entry).times(entry.kind().direction());
        return entry.kind().side() == Kind.Side.SALES ? in : in.negated();
    }

    private void settle(Document document, List<Entry> rows) {
        Amount whole = totals.getOrDefault(document, Amount.ZERO);
        if (whole.signum() <= 0) {
            return;
        }
        Map<LocalDate, Amount> byDay = new TreeMap<>();
        Amount sum = Amount.ZERO;
        rows.sort(Comparator.comparing(Entry::taxPoint).thenComparing(Entry::number));
        for (Entry row : rows) {
            sum = sum.plus(row.amounts().money());
            if (sum.compareTo(whole) > 0) {
                above.add(row.number());
            }
            byDay.merge(row.taxPoint(), row.amounts().money(), Amount::plus);
        }
        List<Paid.Part> parts = new ArrayList<>();
        Share all = new Share(Amount.ZERO, whole, whole);
        Amount before = Amount.ZERO;
        for (Map.Entry<LocalDate, Amount> day : byDay.entrySet()) {
            Amount after = before.plus(day.getValue());
            Share share = all.between(before, after);
            if (!share.part().isZero()) {
                parts.add(new Paid.Part(day.getKey(), share));
            }
            before = after;
        }
        paid.put(document, new Paid(whole, parts));
    }

    /**
     * What was paid of an entry: by payment rows of its document; else, for a line of a channel, on
     * its date, since the channel collects for the seller (HMRC manual VCAS5150) and keeps its own
     * fees; else on the day it states.
     */
    Paid of(Entry entry) {
        Kind kind = entry.kind();
        if (isOfDocument(kind) && !entry.line().document().isEmpty()) {
            Paid rows = paid.get(Document.of(kind.side(), entry));
            if (rows != null) {
                return rows;
            }
        }
        Amount whole = Figures.price(entry);
        boolean collected =
                kind.side() == Kind.Side.SALES
                        && !(entry.profile().channel().isEmpty()
                                && entry.profile().settlement().isEmpty());
        boolean keptBack =
                (kind == Kind.FEE || kind == Kind.FEE_REFUND)
                        && !entry.profile().channel().isEmpty()
                        && entry.line().paid().isEmpty();
        return collected || keptBack
                ? Paid.on(entry.taxPoint(), whole)
                : entry.line().paid().map(day -> Paid.on(day, whole)).orElse(Paid.nothing(whole));
    }

    /** Whether a payment row names the party. */
    boolean names(String party) {
        return parties.contains(party);
    }

    /** Whether relief for the document as a bad debt is entered. */
    boolean isRelieved(Entry sale) {
        return relieved.contains(Document.inAnyCurrency(Kind.Side.SALES, sale));
    }

    /** The query a payment raises: it is of no document, or more than its document asks. */
    Optional<String> query(Entry entry) {
        if (entry.kind().side() != Kind.Side.MONEY) {
            return Optional.empty();
        }
        Optional<Kind.Side> side = pays(entry.kind());
        if (side.isEmpty()) {
            return Optional.empty();
        }
        boolean customer = side.get() == Kind.Side.SALES;
        if (!paid.containsKey(Document.of(side.get(), entry))) {
            return Optional.of(
                    customer
                            ? "customer-payment-without-document"
                            : "supplier-payment-without-document");
        }
        return above.contains(entry.number())
                ? Optional.of(
                        customer
                                ? "customer-payment-above-document"
                                : "supplier-payment-above-document")
                : Optional.empty();
    }
}
