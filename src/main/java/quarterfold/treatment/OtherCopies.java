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
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Particular;
import quarterfold.money.Amount;

/**
 * Purchases' documents that seem to be another copy of one in the ledger, though amounts or numbers
 * differ: one that says that it corrects another, one of the same supplier, number and day in
 * another file with other amounts, and one of the same supplier, day and total under another number
 * in a file of another kind, since a list may number receipts itself.
 *
 * <p>Input tax is never deducted twice: VAT Regulations 1995 reg 29(4). Rows that both files have
 * are no difference, so a file that has more rows of a document than another adds what is new.
 * Lines of settlements are looked at with the channel's invoice: {@link FeeLines}.
 */
final class OtherCopies {
    private static final String CORRECTS = "it says that it corrects that one";
    private static final String CORRECTED = "that one says that it corrects this one";
    private static final String SAME_NUMBER = "supplier, number and day agree, the amounts differ";
    private static final String SAME_TOTAL =
            "supplier, day and total agree, the numbers differ, and they are of two kinds of file";

    private final Map<Long, Copy> copies = new HashMap<>();

    /**
     * What an entry seems to be a copy of.
     *
     * @param other an entry of the other document, by its number
     * @param how why it seems so, in words
     */
    record Copy(long other, String how) {}

    /** The rows of one document in one file; those that repeat no row of another. */
    private record Document(List<Entry> rows, List<Entry> counted, Supplier supplier) {
        Entry first() {
            return rows.get(0);
        }

        String number() {
            return Plain.number(first().line().document());
        }

        Set<LocalDate> days() {
            Set<LocalDate> days = new HashSet<>();
            days.add(first().taxPoint());
            first().line().particulars().day(Particular.INVOICED).ifPresent(days::add);
            return days;
        }

        Amount total() {
            return rows.stream().map(r -> r.amounts().money()).reduce(Amount.ZERO, Amount::plus);
        }

        boolean corrects() {
            return first().line().particulars().isYes(Particular.AMENDED);
        }

        boolean isOfOneDealing(Document other) {
            return supplier.isKnownAs(other.supplier)
                    && first().profile().currency().equals(other.first().profile().currency());
        }

        boolean isInAnotherFile(Document other) {
            return first().source() != other.first().source()
                    && isOfOneDealing(other)
                    && days().stream().anyMatch(other.days()::contains);
        }
    }

    private record Sum(LocalDate day, String currency, Amount total) {}

    /**
     * Compares, once all are there.
     *
     * @param rows of each document in one file
     * @param repeats the entries that repeat a row of another file, and which
     * @param decided the entries of which a person has said how they are treated
     */
    void compare(
            List<List<Entry>> rows,
            Map<Long, Long> repeats,
            Set<Long> decided,
            DoubleClaims.Known known) {
        List<Document> documents =
                rows.stream()
                        .filter(document -> isCharge(document.get(0)))
                        .map(document -> document(document, repeats))
                        .sorted(Comparator.comparing(d -> d.first().number()))
                        .toList();
        Map<String, List<Document>> byNumber = new HashMap<>();
        documents.forEach(d -> byNumber.computeIfAbsent(d.number(), n -> new ArrayList<>()).add(d));
        documents.stream().filter(Document::corrects).forEach(d -> correct(d, byNumber, decided));
        byNumber.values().forEach(same -> compareRows(same, repeats, decided));
        compareTotals(documents, decided, known);
    }

    private static boolean isCharge(Entry entry) {
        return entry.kind().side() == Kind.Side.PURCHASES
                && entry.kind().direction() < 0
                && entry.profile().settlement().isEmpty();
    }

    private static Document document(List<Entry> rows, Map<Long, Long> repeats) {
        List<Entry> counted =
                rows.stream().filter(row -> !repeats.containsKey(row.number())).toList();
        return new Document(rows, counted, Supplier.of(rows.get(0)));
    }

    /** Of a corrected document and the one it names, the one that was entered later waits. */
    private void correct(
            Document corrected, Map<String, List<Document>> byNumber, Set<Long> decided) {
        Advances.follows(corrected.first()).stream()
                .flatMap(number -> byNumber.getOrDefault(number, List.of()).stream())
                .filter(d -> d.first().number() != corrected.first().number())
                .filter(corrected::isOfOneDealing)
                .forEach(
                        d -> {
                            if (d.first().number() < corrected.first().number()) {
                                join(corrected.counted(), d, CORRECTS, decided);
                            } else {
                                join(d.counted(), corrected, CORRECTED, decided);
                            }
                        });
    }

    /** Documents of one number of which each has rows that the other has not. */
    private void compareRows(List<Document> documents, Map<Long, Long> repeats, Set<Long> decided) {
        for (int later = 1; later < documents.size(); later++) {
            Document second = documents.get(later);
            Set<Long> met = new HashSet<>();
            second.rows().forEach(r -> met.add(repeats.getOrDefault(r.number(), 0L)));
            List<Document> before = documents.subList(0, later);
            before.stream()
                    .filter(second::isInAnotherFile)
                    .map(first -> first.counted().stream().filter(r -> isNew(r, met)).findFirst())
                    .flatMap(Optional::stream)
                    .findFirst()
                    .ifPresent(row -> join(second.counted(), row, SAME_NUMBER, decided));
        }
    }

    private boolean isNew(Entry row, Set<Long> met) {
        return !met.contains(row.number()) && !copies.containsKey(row.number());
    }

    /** Documents of two numbers that come to the same, each met by one of another file. */
    private void compareTotals(
            List<Document> documents, Set<Long> decided, DoubleClaims.Known known) {
        Map<Sum, List<Document>> bySum = new HashMap<>();
        Map<Long, Set<Long>> metIn = new HashMap<>();
        for (Document document : documents) {
            if (document.counted().size() < document.rows().size()
                    || document.rows().stream().anyMatch(r -> copies.containsKey(r.number()))) {
                continue; // a person is asked about it as it is
            }
            long source = document.first().source();
            String kind = known.layout(source);
            List<Sum> sums = document.days().stream().map(day -> sum(document, day)).toList();
            sums.stream()
                    .flatMap(sum -> bySum.getOrDefault(sum, List.of()).stream())
                    .filter(d -> !d.number().equals(document.number()))
                    .filter(d -> !known.layout(d.first().source()).equals(kind))
                    .filter(d -> d.supplier().isKnownAs(document.supplier()))
                    .filter(d -> isFirstOf(source, d, metIn))
                    .findFirst()
                    .ifPresent(d -> join(document.rows(), d, SAME_TOTAL, decided));
            sums.forEach(sum -> bySum.computeIfAbsent(sum, s -> new ArrayList<>()).add(document));
        }
    }

    private static boolean isFirstOf(long source, Document met, Map<Long, Set<Long>> metIn) {
        return metIn.computeIfAbsent(met.first().number(), m -> new HashSet<>()).add(source);
    }

    private static Sum sum(Document document, LocalDate day) {
        return new Sum(day, document.first().profile().currency(), document.total());
    }

    private void join(List<Entry> rows, Document other, String how, Set<Long> decided) {
        join(rows, other.first(), how, decided);
    }

    private void join(List<Entry> rows, Entry other, String how, Set<Long> decided) {
        rows.stream()
                .filter(row -> !decided.contains(row.number()))
                .forEach(row -> copies.putIfAbsent(row.number(), new Copy(other.number(), how)));
    }

    /** What the entry seems to be a copy of. */
    Optional<Copy> of(Entry entry) {
        return Optional.ofNullable(copies.get(entry.number()));
    }

    /** The entries that seem to be of another copy, by their numbers, and those given. */
    Set<Long> and(Set<Long> others) {
        Set<Long> all = new HashSet<>(copies.keySet());
        all.addAll(others);
        return all;
    }
}
