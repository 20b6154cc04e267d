package quarterfold.treatment;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.money.Amount;

/**
 * Purchases of which one states no number of a document, and that seem to be of one document with a
 * purchase in another file: the same supplier, day, currency and money. Rows of one file are each
 * for themselves, and a supplier who is not named is nobody.
 */
final class UnnumberedDocuments {
    private final List<Item> unnumbered = new ArrayList<>();
    private final Map<Long, Long> repeats = new HashMap<>();

    private record Key(LocalDate day, String currency, Amount signed) {}

    /** A row, or the rows of a document together. */
    private record Item(List<Entry> rows, boolean numbered, Supplier supplier, Set<Long> metIn) {
        static Item of(List<Entry> rows, boolean numbered) {
            return new Item(rows, numbered, Supplier.of(rows.get(0)), new HashSet<>());
        }

        Entry first() {
            return rows.get(0);
        }

        Key key() {
            return new Key(
                    first().taxPoint(),
                    first().profile().currency(),
                    rows.stream().map(Item::signed).reduce(Amount.ZERO, Amount::plus));
        }

        private static Amount signed(Entry entry) {
            return entry.amounts().money().times(entry.kind().direction());
        }

        boolean isRepeatedBy(Item later) {
            return !(numbered && later.numbered)
                    && first().source() != later.first().source()
                    && supplier.isKnownAs(later.supplier)
                    && !metIn.contains(later.first().source());
        }
    }

    void add(Entry entry) {
        if (entry.kind().side() == Kind.Side.PURCHASES && entry.line().document().isEmpty()) {
            unnumbered.add(Item.of(List.of(entry), false));
        }
    }

    /**
     * Compares, once all are there.
     *
     * @param documents the rows of each numbered document in one file
     * @param repeated entries that repeat a numbered document already
     */
    void compare(List<List<Entry>> documents, Set<Long> repeated) {
        if (unnumbered.isEmpty()) {
            return;
        }
        List<Item> all = new ArrayList<>(unnumbered);
        for (List<Entry> rows : documents) {
            List<Entry> counted =
                    rows.stream().filter(r -> !repeated.contains(r.number())).toList();
            counted.forEach(row -> all.add(Item.of(List.of(row), true)));
            if (counted.size() > 1) {
                all.add(Item.of(counted, true));
            }
        }
        Map<Key, List<Item>> alike = new HashMap<>();
        all.stream()
                .sorted(Comparator.comparing(item -> item.first().number()))
                .forEach(
                        item ->
                                alike.computeIfAbsent(item.key(), k -> new ArrayList<>())
                                        .add(item));
        alike.values().forEach(this::meet);
    }

    private void meet(List<Item> items) {
        for (int later = 1; later < items.size(); later++) {
            Item item = items.get(later);
            items.subList(0, later).stream()
                    .filter(earlier -> earlier.isRepeatedBy(item))
                    .findFirst()
                    .ifPresent(
                            earlier -> {
                                earlier.metIn().add(item.first().source());
                                item.rows()
                                        .forEach(
                                                row ->
                                                        repeats.putIfAbsent(
                                                                row.number(),
                                                                earlier.first().number()));
                            });
        }
    }

    /** The entry that this one seems to repeat, by its number. */
    OptionalLong earlier(Entry entry) {
        Long found = repeats.get(entry.number());
        return found == null ? OptionalLong.empty() : OptionalLong.of(found);
    }
}
