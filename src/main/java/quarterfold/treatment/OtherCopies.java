package quarterfold.treatment;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Particular;
import quarterfold.money.Amount;

/**
 * Purchases' documents that seem to be another copy of one in the ledger, though amounts, numbers
 * or currencies differ: one that says that it corrects another, one of the same supplier, number
 * and day in another file with other amounts, one of the same supplier and number in another
 * currency, and one of the same supplier, day and total under another number in a file of another
 * kind, since a list may number receipts itself.
 *
 * <p>Input tax is never deducted twice: VAT Regulations 1995 reg 29(4). Rows that both files have
 * are no difference, so a list that has more rows of a document than another adds what is new; but
 * an e-invoice is the whole of its document (EN 16931, BR-CO-14 and BR-CO-15: its totals are those
 * of all it charges), so a row that it lacks is a difference. Lines of settlements are looked at
 * with the channel's invoice: {@link FeeLines}.
 */
final class OtherCopies {
    private static final String CORRECTS = "it says that it corrects that one";
    private static final String CORRECTED = "that one says that it corrects this one";
    private static final String SAME_NUMBER = "supplier, number and day agree, the amounts differ";
    private static final String SAME_TOTAL =
            "supplier, day and total agree, the numbers differ, and they are of two kinds of file";
    private static final String OTHER_CURRENCY = "supplier and number agree, the currencies differ";
    private static final String E_INVOICE = "e-invoice";

    private final Map<Long, Copy> copies = new HashMap<>();

    /**
     * What an entry seems to be a copy of.
     *
     * @param other an entry of the other document, by its number
     * @param how why it seems so, in words
     * @param words for the question: what the two documents come to, and their entries
     */
    record Copy(long other, String how, Map<String, String> words) {}

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

        String currency() {
            return first().profile().currency();
        }

        Optional<Amount> vat() {
            return rows.stream().allMatch(r -> r.amounts().vat().isPresent())
                    ? rows.stream().flatMap(r -> r.amounts().vat().stream()).reduce(Amount::plus)
                    : Optional.empty();
        }

        boolean isInAnotherFile(Document other) {
            return first().source() != other.first().source()
                    && currency().equals(other.currency())
                    && days().stream().anyMatch(other.days()::contains);
        }

        String money() {
            return total() + " " + currency();
        }

        String entries() {
            return (rows.size() == 1 ? "entry " : "entries ") + numbers(rows);
        }
    }

    private record Sum(LocalDate day, String currency, Amount total) {}

    /**
     * Compares, once all are there.
     *
     * @param rows of each document in one file
     * @param repeats the entries that repeat a row of another file, and which
     * @param decided the entries of which a person has said how they are treated
     * @param named the entries of which a person has said that others are their duplicates
     */
    void compare(
            List<List<Entry>> rows,
            Map<Long, Long> repeats,
            Set<Long> decided,
            Set<Long> named,
            DoubleClaims.Known known) {
        List<Document> documents =
                rows.stream()
                        .filter(document -> isCharge(document.get(0)))
                        .flatMap(OtherCopies::byCurrency)
                        .map(document -> document(document, repeats))
                        .sorted(Comparator.comparing(d -> d.first().number()))
                        .toList();
        Map<String, List<Document>> byNumber = new HashMap<>();
        documents.forEach(d -> byNumber.computeIfAbsent(d.number(), n -> new ArrayList<>()).add(d));
        documents.stream().filter(Document::corrects).forEach(d -> correct(d, byNumber, decided));
        byNumber.values().forEach(same -> compareRows(same, repeats, decided, known));
        compareTotals(documents, decided, named, known);
    }

    /** A document has one currency (EN 16931, BT-5): rows of two are two copies. */
    private static Stream<List<Entry>> byCurrency(List<Entry> rows) {
        return rows.stream()
                .collect(
                        Collectors.groupingBy(
                                r -> r.profile().currency(),
                                LinkedHashMap::new,
                                Collectors.toList()))
                .values()
                .stream();
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
                .filter(d -> d.supplier().isKnownAs(corrected.supplier()))
                .forEach(
                        d -> {
                            if (d.first().number() < corrected.first().number()) {
                                join(corrected.counted(), corrected, d, CORRECTS, decided);
                            } else {
                                join(d.counted(), d, corrected, CORRECTED, decided);
                            }
                        });
    }

    /** Documents of one number and supplier that differ. */
    private void compareRows(
            List<Document> documents,
            Map<Long, Long> repeats,
            Set<Long> decided,
            DoubleClaims.Known known) {
        for (int later = 1; later < documents.size(); later++) {
            Document second = documents.get(later);
            Set<Long> met = new HashSet<>();
            second.rows().forEach(r -> met.add(repeats.getOrDefault(r.number(), 0L)));
            for (Document first : documents.subList(0, later)) {
                String how =
                        first.supplier().isKnownAs(second.supplier())
                                ? difference(first, second, met, known)
                                : "";
                if (!how.isEmpty()) {
                    join(second.rows(), second, first, how, decided);
                    break;
                }
            }
        }
    }

    /** In what two documents of one number and supplier differ; empty where in nothing. */
    private String difference(
            Document first, Document second, Set<Long> met, DoubleClaims.Known known) {
        List<Entry> open =
                first.counted().stream().filter(r -> !copies.containsKey(r.number())).toList();
        if (open.isEmpty()) {
            return "";
        }
        if (!first.currency().equals(second.currency())) {
            return OTHER_CURRENCY;
        }
        boolean lacks = open.stream().anyMatch(r -> !met.contains(r.number()));
        boolean adds = !second.counted().isEmpty();
        boolean differ =
                (lacks && adds)
                        || (!first.total().equals(second.total())
                                && ((lacks && isWhole(second, known))
                                        || (adds && isWhole(first, known))));
        return differ && second.isInAnotherFile(first) ? SAME_NUMBER : "";
    }

    private static boolean isWhole(Document document, DoubleClaims.Known known) {
        return known.layout(document.first().source()).equals(E_INVOICE);
    }

    /**
     * Documents of two numbers that come to the same, each met by one of another file: of several
     * that agree by the one with the same VAT, and by one that nothing has met so far.
     */
    private void compareTotals(
            List<Document> documents,
            Set<Long> decided,
            Set<Long> named,
            DoubleClaims.Known known) {
        Map<Sum, List<Document>> bySum = new HashMap<>();
        Map<Long, Set<Long>> metIn = new HashMap<>();
        Set<Long> metBefore = new HashSet<>(named);
        for (Document document : documents) {
            if (document.counted().size() < document.rows().size()
                    || document.rows().stream().anyMatch(r -> copies.containsKey(r.number()))) {
                continue; // a person is asked about it as it is
            }
            long source = document.first().source();
            String kind = known.layout(source);
            List<Sum> sums = document.days().stream().map(day -> sum(document, day)).toList();
            List<Document> agreeing =
                    sums.stream()
                            .flatMap(sum -> bySum.getOrDefault(sum, List.of()).stream())
                            .distinct()
                            .filter(d -> !d.number().equals(document.number()))
                            .filter(d -> !known.layout(d.first().source()).equals(kind))
                            .filter(d -> d.supplier().isKnownAs(document.supplier()))
                            .toList();
            agreeing.stream()
                    .filter(d -> !metIn(metIn, d).contains(source))
                    .min(
                            Comparator.comparing((Document d) -> !d.vat().equals(document.vat()))
                                    .thenComparing(d -> metBefore.contains(d.first().number()))
                                    .thenComparing(d -> d.first().number()))
                    .ifPresent(
                            d -> {
                                metIn(metIn, d).add(source);
                                metBefore.add(d.first().number());
                                String how = SAME_TOTAL + likewise(agreeing, d);
                                join(document.rows(), document, d, how, decided);
                            });
            sums.forEach(sum -> bySum.computeIfAbsent(sum, s -> new ArrayList<>()).add(document));
        }
    }

    private static Set<Long> metIn(Map<Long, Set<Long>> metIn, Document met) {
        return metIn.computeIfAbsent(met.first().number(), m -> new HashSet<>());
    }

    /** The others that agree as well, which no file can tell from the one that is named. */
    private static String likewise(List<Document> agreeing, Document met) {
        String others =
                agreeing.stream()
                        .filter(d -> d.first().number() != met.first().number())
                        .filter(d -> d.vat().equals(met.vat()))
                        .map(Document::entries)
                        .collect(Collectors.joining(", "));
        return others.isEmpty() ? "" : " (so they do with " + others + ")";
    }

    private static Sum sum(Document document, LocalDate day) {
        return new Sum(day, document.first().profile().currency(), document.total());
    }

    private void join(
            List<Entry> rows, Document document, Document other, String how, Set<Long> decided) {
        rows.stream()
                .filter(row -> !decided.contains(row.number()))
                .forEach(
                        row ->
                                copies.putIfAbsent(
                                        row.number(), copy(row.number(), document, other, how)));
    }

    private static Copy copy(long row, Document document, Document other, String how) {
        Map<String, String> words = new HashMap<>();
        words.put("document_money", document.money());
        words.put("others_money", other.money());
        words.put("others", other.entries());
        words.put("keep", leave(other.rows(), row));
        return new Copy(other.first().number(), how, Map.copyOf(words));
    }

    private static String numbers(List<Entry> rows) {
        return rows.stream().map(r -> Long.toString(r.number())).collect(Collectors.joining(", "));
    }

    /** The decisions that leave rows out for an entry that counts, as they are entered. */
    static String leave(List<Entry> rows, long counts) {
        String first =
                "decide --entry %d --duplicate-of %d".formatted(rows.get(0).number(), counts);
        return rows.size() == 1
                ? first
                : "%s, and so with --entry %s"
                        .formatted(first, numbers(rows.subList(1, rows.size())));
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
