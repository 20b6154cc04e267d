package quarterfold.intake;

import java.io.IOException;
import java.util.List;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Settings;

/** What a person should know of a layout that reads well: what it takes for granted. */
final class LayoutNotes {
    private LayoutNotes() {}

    /** Whether the file's rows, its words or the layout say what currency amounts are in. */
    static boolean statesCurrency(Layout layout) {
        return layout.all().stream()
                .allMatch(
                        l ->
                                l.currency().isPresent()
                                        || isAlwaysThere(l, Field.CURRENCY)
                                        || l.constants().containsKey(Field.CURRENCY));
    }

    private static boolean isAlwaysThere(Layout layout, Field field) {
        return layout.fields().containsKey(field)
                && !layout.optional().contains(layout.fields().get(field));
    }

    /** Tells it. {@code name}: of the file, as problems have it. */
    static void tell(Layout layout, Tables tables, String name, Settings book, Findings findings)
            throws IOException {
        if (!statesCurrency(layout)) {
            findings.note(
                    "the file states no currency: amounts are taken to be in the book's, %s; if they are not, add to the layout, such as currency: EUR"
                            .formatted(book.currency()));
        }
        if (takesFees(layout) && !namesChannel(layout)) {
            findings.note(
                    "the file does not name the channel that takes its fees, by which the channel's invoices are known: --answer channel=NAME writes it into the layout");
        }
        List<String> sheets = Recognition.tables(tables, name, layout);
        if (sheets.size() > 1) {
            findings.note(
                    "the sheets '%s' have the same columns, and only one was looked at: import takes one from a file, such as a copy of the workbook for each of them, without the others"
                            .formatted(String.join("', '", sheets)));
        }
    }

    private static boolean takesFees(Layout layout) {
        return layout.all().stream()
                .filter(l -> l.fields().containsKey(Field.SETTLEMENT))
                .flatMap(l -> l.rules().stream())
                .flatMap(r -> r.enter().stream())
                .anyMatch(e -> e.kind() == Kind.FEE);
    }

    private static boolean namesChannel(Layout layout) {
        return layout.all().stream()
                .allMatch(
                        l ->
                                l.constants().containsKey(Field.CHANNEL)
                                        || l.fields().containsKey(Field.CHANNEL));
    }
}
