package quarterfold.treatment;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Profile;
import quarterfold.money.Amount;

/**
 * What the documents of suppliers come to over all their rows and rates, and which of them seem to
 * be entered twice.
 *
 * <p>The limit of a simplified invoice is on the whole of it: VAT Regulations 1995 reg 16A. Two
 * entries are the same where supplier, document number ({@link Plain#number}) and gross agree, or,
 * for imports, entry reference, date and amount; where rows of one file agree, they must agree in
 * all, since two rows of a document may be for the same money. A document whose rows make the same
 * total as one in an earlier file is the same too, and so is a credit entered as a purchase of less
 * than nothing.
 */
final class SupplierDocuments {

    private final Map<DocumentNumber, List<Document>> byNumber = new HashMap<>();
    private final Map<Long, Long> repeats = new HashMap<>();
    private final Set<Met> met = new HashSet<>();
    private final Set<Long> leftOut = new HashSet<>();

    /** A row that an entry of the file repeats: rows are met one for one. */
    private record Met(long row, long source) {}

    private record DocumentNumber(String document, boolean imported, int direction) {}

    /** The rows of one document in one file. */
    private static final class Document {
        private final Supplier supplier;
        private final long source;
        private final List<Entry> rows = new ArrayList<>();
        private final Map<Amount, List<Entry>> byMoney = new HashMap<>();
        private Amount total = Amount.ZERO;

        Document(Supplier supplier, long source) {
            this.supplier = supplier;
            this.source = source;
        }

        void add(Entry row) {
            rows.add(row);
            byMoney.computeIfAbsent(money(row), m -> new ArrayList<>()).add(row);
            total = total.plus(row.amounts().money());
        }
    }

    /** Compares whole documents, once all rows are there. */
    void compare() {
        byNumber.values().forEach(this::compareTotals);
    }

    /** The rows of each document in one file. */
    List<List<Entry>> rows() {
        return byNumber.values().stream().flatMap(List::stream).map(d -> d.rows).toList();
    }

    /** The entries that seem to repeat another, and which, by their numbers. */
    Map<Long, Long> repeats() {
        return repeats;
    }

    /** Leaves rows out of what their documents come to, besides those that repeat another. */
    void leaveOut(Set<Long> rows) {
        leftOut.addAll(rows);
    }

    /** Whether the entry is a purchase or an import with a document of its own. */
    static boolean isOfDocument(Entry entry) {
        return !entry.line().document().isEmpty() && isWeighed(entry);
    }

    /** Whether an entry's document is weighed: not of a settlement's fee line, nor of duty. */
    static boolean isWeighed(Entry entry) {
        return switch (entry.kind().side()) {
            case PURCHASES -> isWeighed(entry.profile());
            case IMPORTS -> entry.kind() != Kind.IMPORT_DUTY;
            case SALES, MONEY -> false;
        };
    }

    static boolean isWeighed(Profile purchase) {
        return purchase.settlement().isEmpty() || purchase.evidence() != Evidence.UNSTATED;
    }

    /** Whether the entry is a supplier's credit, which takes from a claim. */
    static boolean isCredit(Entry entry) {
        return entry.kind().side() == Kind.Side.PURCHASES && entry.kind().direction() == 1;
    }

    /** Adds a row of a document; in the order of the entries' numbers. */
    void add(Entry entry) {
        List<Document> known = byNumber.computeIfAbsent(number(entry), n -> new ArrayList<>());
        Supplier supplier = Supplier.of(entry);
        Amount money = money(entry);
        sameRow(known, supplier, entry, money)
                .or(() -> sameRow(turned(entry), supplier, entry, money.negated()))
                .ifPresent(
                        same -> {
                            repeats.put(entry.number(), same.number());
                            met.add(new Met(same.number(), entry.source()));
                        });
        Document own =
                known.stream()
                        .filter(d -> d.source == entry.source() && d.supplier.isSame(supplier))
                        .findFirst()
                        .orElseGet(
                                () -> {
                                    Document first = new Document(supplier, entry.source());
                                    known.add(first);
                                    return first;
                                });
        own.add(entry);
    }

    private static DocumentNumber number(Entry entry) {
        boolean imported = entry.kind().side() == Kind.Side.IMPORTS;
        return new DocumentNumber(
                Plain.number(entry.line().document()),
                imported,
                imported ? 0 : entry.kind().direction());
    }

    /**
     * Documents whose money goes the other way: a credit may be a purchase of less than nothing.
     */
    private List<Document> turned(Entry entry) {
        DocumentNumber number = number(entry);
        return number.imported
                ? List.of()
                : byNumber.getOrDefault(
                        new DocumentNumber(number.document, false, -number.direction), List.of());
    }

    /** A row that an entry repeats, and that no other entry of its file repeats. */
    private Optional<Entry> sameRow(
            List<Document> documents, Supplier supplier, Entry entry, Amount money) {
        boolean imported = entry.kind().side() == Kind.Side.IMPORTS;
        return documents.stream()
                .filter(d -> imported || d.supplier.isSame(supplier))
                .flatMap(d -> d.byMoney.getOrDefault(money, List.of()).stream())
                .filter(r -> !imported || r.taxPoint().equals(entry.taxPoint()))
                .filter(r -> imported || r.source() != entry.source() || isAlike(r, entry))
                .filter(r -> !repeats.containsKey(r.number()))
                .filter(
                        r ->
                                r.source() == entry.source()
                                        || !met.contains(new Met(r.number(), entry.source())))
                .findFirst();
    }

    /** For imports the VAT alone: one list may state the value of the goods, another not. */
    static Amount money(Entry entry) {
        return entry.kind().side() == Kind.Side.IMPORTS
                ? entry.amounts().vat().orElseGet(() -> entry.amounts().money())
                : entry.amounts().money();
    }

    private static boolean isAlike(Entry one, Entry other) {
        return one.taxPoint().equals(other.taxPoint())
                && one.profile().equals(other.profile())
                && one.line().item().equals(other.line().item())
                && one.amounts().equals(other.amounts())
                && one.line().particulars().equals(other.line().particulars());
    }

    /** Documents that one file has in rows and a later one in another number of rows. */
    private void compareTotals(List<Document> documents) {
        for (int later = 1; later < documents.size(); later++) {
            for (int earlier = 0; earlier < later; earlier++) {
                Document first = documents.get(earlier);
                Document second = documents.get(later);
                if (first.source != second.source
                        && first.rows.size() != second.rows.size()
                        && first.supplier.isSame(second.supplier)
                        && first.total.equals(second.total)) {
                    long repeated = first.rows.get(0).number();
                    second.rows.forEach(r -> repeats.putIfAbsent(r.number(), repeated));
                }
            }
        }
    }

    private boolean isCounted(Entry row) {
        return !repeats.containsKey(row.number()) && !leftOut.contains(row.number());
    }

    /** The entry that this one seems to repeat, by its number. */
    OptionalLong earlier(Entry entry) {
        Long found = repeats.get(entry.number());
        return found == null ? OptionalLong.empty() : OptionalLong.of(found);
    }

    /**
     * What the entry's document comes to in the return's currency, VAT included, over all rows but
     * those that repeat another.
     */
    Amount total(Entry entry, Exchange exchange) {
        if (!isOfDocument(entry)) {
            return Figures.price(entry);
        }
        Supplier supplier = Supplier.of(entry);
        return byNumber.getOrDefault(number(entry), List.of()).stream()
                .filter(d -> d.supplier.isSame(supplier))
                .flatMap(d -> d.rows.stream())
                .filter(r -> isCounted(r) || r.number() == entry.number())
                .map(r -> Figures.price(exchange.home(r)))
                .reduce(Amount::plus)
                .orElseGet(() -> Figures.price(entry));
    }
}
