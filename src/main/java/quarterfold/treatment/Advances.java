package quarterfold.treatment;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Particulars;
import quarterfold.money.Amount;

/**
 * Advances and the invoices for the whole that charge their VAT again.
 *
 * <p>An advance that is invoiced or paid is taxed then (VATA 1994 s.6(4)), and the invoice for the
 * whole takes it off before VAT, or else charges VAT on it a second time; input tax is deducted
 * once: VAT Regulations 1995 reg 29(4). An invoice that takes nothing off before VAT is held
 * against the advances of its supplier that it names, against any other document it names that
 * comes to what it takes off as paid, and, where it names none, against those that come to that.
 */
final class Advances {
    private final Map<Long, Again> again = new HashMap<>();

    /**
     * What an entry seems to charge again, or what charges it again.
     *
     * @param other by its number
     * @param keep the decisions that leave the advance out, as they are entered
     */
    record Again(long other, String keep) {}

    /** The rows of one document in one file. */
    private record Document(List<Entry> rows, Supplier supplier, Amount total) {
        static Document of(List<Entry> rows) {
            return new Document(
                    rows,
                    Supplier.of(rows.get(0)),
                    rows.stream().map(r -> r.amounts().money()).reduce(Amount.ZERO, Amount::plus));
        }

        Entry first() {
            return rows.get(0);
        }

        private Particulars stated() {
            return first().line().particulars();
        }

        boolean isAdvance() {
            return stated().isYes(Particular.ADVANCE);
        }

        /** Whether it says anything of documents or payments before it. */
        boolean isLater() {
            return !isAdvance()
                    && (stated().word(Particular.PREPAID).isPresent()
                            || stated().word(Particular.FOLLOWS).isPresent());
        }

        private Set<String> follows() {
            return Advances.follows(first());
        }

        private boolean chargesVat() {
            return rows.stream()
                    .anyMatch(
                            r ->
                                    r.amounts().vat().isPresent()
                                            ? !r.amounts().vat().get().isZero()
                                            : r.profile()
                                                    .rate()
                                                    .percent()
                                                    .filter(p -> !p.isZero())
                                                    .isPresent());
        }

        /** Whether it seems to charge the VAT of an earlier document again. */
        boolean chargesAgain(Document earlier) {
            if (first().number() == earlier.first().number()
                    || !earlier.chargesVat()
                    || earlier.total.isAbove(total)
                    || !supplier.isKnownAs(earlier.supplier)
                    || !first().profile().currency().equals(earlier.first().profile().currency())) {
                return false;
            }
            Set<String> follows = follows();
            boolean paid =
                    stated().amount(Particular.PREPAID).filter(earlier.total::equals).isPresent();
            return follows.isEmpty()
                    ? paid && earlier.isAdvance()
                    : (paid || earlier.isAdvance())
                            && follows.contains(Plain.number(earlier.first().line().document()));
        }
    }

    /**
     * The documents that one may charge again, in their order: each is looked up, since most
     * invoices of a long ledger may say that they were paid.
     *
     * @param places where in the order a document is, by the number of its first entry
     */
    private record Earlier(
            Map<String, List<Document>> byNumber,
            Map<Amount, List<Document>> advances,
            Map<Long, Integer> places) {

        static Earlier of(List<Document> charges) {
            Earlier earlier = new Earlier(new HashMap<>(), new HashMap<>(), new HashMap<>());
            for (Document document : charges) {
                earlier.places.put(document.first().number(), earlier.places.size());
                earlier.byNumber
                        .computeIfAbsent(
                                Plain.number(document.first().line().document()),
                                n -> new ArrayList<>())
                        .add(document);
                if (document.isAdvance()) {
                    earlier.advances
                            .computeIfAbsent(document.total(), t -> new ArrayList<>())
                            .add(document);
                }
            }
            return earlier;
        }

        private int place(Document document) {
            return places.getOrDefault(document.first().number(), 0);
        }

        /** Those it names; where it names none, the advances of what it says was paid. */
        Stream<Document> of(Document whole) {
            Set<String> follows = whole.follows();
            return follows.isEmpty()
                    ? whole.stated().amount(Particular.PREPAID).stream()
                            .flatMap(paid -> advances.getOrDefault(paid, List.of()).stream())
                    : follows.stream()
                            .flatMap(number -> byNumber.getOrDefault(number, List.of()).stream())
                            .sorted(Comparator.comparingInt(this::place));
        }
    }

    /**
     * Holds invoices against advances.
     *
     * @param documents the rows of each, in one file
     * @param repeated the entries that seem to repeat another, which are asked about as it is
     */
    void compare(List<List<Entry>> documents, Set<Long> repeated) {
        List<Document> charges =
                documents.stream()
                        .filter(rows -> isCharge(rows.get(0)))
                        .filter(rows -> rows.stream().noneMatch(r -> repeated.contains(r.number())))
                        .map(Document::of)
                        .filter(document -> document.total.signum() > 0)
                        .toList();
        List<Document> later = charges.stream().filter(Document::isLater).toList();
        if (later.isEmpty()) {
            return;
        }
        Earlier earlier = Earlier.of(charges);
        later.forEach(
                whole ->
                        earlier.of(whole).filter(whole::chargesAgain).forEach(a -> join(whole, a)));
    }

    /** The documents before it that an entry's document names. */
    static Set<String> follows(Entry entry) {
        return entry.line().particulars().word(Particular.FOLLOWS).stream()
                .flatMap(numbers -> Arrays.stream(numbers.split(",", -1)))
                .map(Plain::number)
                .collect(Collectors.toSet());
    }

    private static boolean isCharge(Entry entry) {
        return entry.kind().side() == Kind.Side.PURCHASES && entry.kind().direction() < 0;
    }

    /** The document that was entered later waits. */
    private void join(Document whole, Document advance) {
        boolean later = whole.first().number() > advance.first().number();
        Document waits = later ? whole : advance;
        Again found =
                new Again(
                        (later ? advance : whole).first().number(),
                        OtherCopies.leave(advance.rows, whole.first().number()));
        waits.rows.forEach(row -> again.putIfAbsent(row.number(), found));
    }

    /** The entry that seems to charge VAT of this one too. */
    Optional<Again> of(Entry entry) {
        return Optional.ofNullable(again.get(entry.number()));
    }
}
