package quarterfold.treatment;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Kind;
import quarterfold.money.Amount;

/**
 * What the documents of suppliers come to over all their rows and rates, and which of them seem to
 * be entered twice.
 *
 * <p>The limit of a simplified invoice is on the whole of it: VAT Regulations 1995 reg 16A. Input
 * tax is never deducted twice: reg 29(4). Two entries are the same where supplier, document number
 * and gross agree, or, for imports, entry reference, date and amount; where rows of one file agree,
 * they must agree in all, since two rows of a document may be for the same money. A document whose
 * rows make the same total as one in an earlier file is the same too. What a person decided to be a
 * duplicate is passed over.
 */
public final class SupplierDocuments {

    /** Of a ledger without documents. */
    static final SupplierDocuments NONE = new SupplierDocuments();

    private final Map<DocumentNumber, List<Document>> byNumber = new HashMap<>();
    private final Map<Long, Long> repeats = new HashMap<>();

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

    private SupplierDocuments() {}

    /**
     * The documents of a ledger.
     *
     * @param scan shows every entry with a document, in the order of its number
     */
    static SupplierDocuments of(Together.Scan scan, Answers answers) {
        SupplierDocuments all = new SupplierDocuments();
        scan.forEach(
                entry -> {
                    if (isOfDocument(entry)) {
                        Answered answered = Answered.of(entry, answers);
                        if (!answered.decided().equals("duplicate")) {
                            all.add(answered.entry());
                        }
                    }
                });
        all.byNumber.values().forEach(all::compareTotals);
        return all;
    }

    /** Whether the entry is a purchase or an import with a document of its own. */
    static boolean isOfDocument(Entry entry) {
        return !entry.line().document().isEmpty() && isWeighed(entry);
    }

    /** Whether an entry's document is weighed: not of a settlement's fee line, nor of duty. */
    static boolean isWeighed(Entry entry) {
        return switch (entry.kind().side()) {
            case PURCHASES ->
                    entry.profile().settlement().isEmpty()
                            || entry.profile().evidence() != Evidence.UNSTATED;
            case IMPORTS -> entry.kind() != Kind.IMPORT_DUTY;
            case SALES, MONEY -> false;
        };
    }

    /** Whether the entry is a supplier's credit, which takes from a claim. */
    static boolean isCredit(Entry entry) {
        return entry.kind().side() == Kind.Side.PURCHASES && entry.kind().direction() == 1;
    }

    private void add(Entry entry) {
        List<Document> known = byNumber.computeIfAbsent(number(entry), n -> new ArrayList<>());
        Supplier supplier = Supplier.of(entry);
        for (Document document : known) {
            Optional<Entry> same = sameRow(document, supplier, entry);
            if (same.isPresent()) {
                repeats.put(entry.number(), same.get().number());
                break;
            }
        }
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
                entry.line().document(), imported, imported ? 0 : entry.kind().direction());
    }

    /** A row of a document that an entry repeats, and that no other entry of its file repeats. */
    private Optional<Entry> sameRow(Document document, Supplier supplier, Entry entry) {
        boolean imported = entry.kind().side() == Kind.Side.IMPORTS;
        if (!imported && !document.supplier.isSame(supplier)) {
            return Optional.empty();
        }
        return document.byMoney.getOrDefault(money(entry), List.of()).stream()
                .filter(r -> !imported || r.taxPoint().equals(entry.taxPoint()))
                .filter(r -> imported || document.source != entry.source() || isAlike(r, entry))
                .filter(r -> !repeats.containsKey(r.number()))
                .filter(r -> !isRepeatedIn(entry.source(), r))
                .findFirst();
    }

    /** For imports the VAT alone: one list may state the value of the goods, another not. */
    private static Amount money(Entry entry) {
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

    /** Whether an entry of a later file repeats the row already: rows are met one for one. */
    private boolean isRepeatedIn(long source, Entry row) {
        return byNumber.getOrDefault(number(row), List.of()).stream()
                .filter(d -> d.source == source && row.source() != source)
                .flatMap(d -> d.byMoney.getOrDefault(money(row), List.of()).stream())
                .anyMatch(r -> repeats.getOrDefault(r.number(), 0L) == row.number());
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

    /** The entry that this one seems to repeat, by its number. */
    OptionalLong earlier(Entry entry) {
        Long found = repeats.get(entry.number());
        return found == null ? OptionalLong.empty() : OptionalLong.of(found);
    }

    /**
     * What the entry's document comes to, VAT included, over all rows but those that repeat
     * another.
     */
    Amount total(Entry entry) {
        if (!isOfDocument(entry)) {
            return Figures.price(entry);
        }
        Supplier supplier = Supplier.of(entry);
        return byNumber.getOrDefault(number(entry), List.of()).stream()
                .filter(d -> d.supplier.isSame(supplier))
                .flatMap(d -> d.rows.stream())
                .filter(r -> !repeats.containsKey(r.number()) || r.number() == entry.number())
                .map(Figures::price)
                .reduce(Amount::plus)
                .orElseGet(() -> Figures.price(entry));
    }
}
