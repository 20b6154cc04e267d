package quarterfold.intake;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import quarterfold.ledger.Book;
import quarterfold.ledger.LedgerException;

/** The layouts of a book that a file fits as well as one that was learned from it. */
public final class FittingLayouts {
    private FittingLayouts() {}

    /**
     * The names of the book's own layouts, of other names, that the file fits too, so that with the
     * learned one beside them an import could not tell which is meant.
     *
     * @throws IOException if the file cannot be read
     * @throws LedgerException if the layouts cannot be read
     */
    public static List<String> beside(Book book, Path file, Learned learned) throws IOException {
        Problems problems = new Problems();
        List<Form> forms = new ArrayList<>();
        Importer.layouts(book).own().stream()
                .filter(form -> !form.name().equals(learned.name()))
                .forEach(forms::add);
        if (forms.isEmpty() || learned.yaml().isEmpty()) {
            return List.of();
        }
        String yaml = learned.yaml().get();
        forms.add(LayoutReader.read(learned.name() + ".yaml", yaml, problems));
        String own = String.valueOf(file.getFileName());
        try (Tables tables = Tables.open(file, own)) {
            List<String> names = new ArrayList<>(Recognition.names(tables, own, forms));
            return names.remove(learned.name()) ? List.copyOf(names) : List.of();
        } catch (BadFile e) {
            return List.of();
        }
    }
}
