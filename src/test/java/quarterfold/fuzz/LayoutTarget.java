package quarterfold.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import quarterfold.intake.ImportResult;
import quarterfold.intake.Importer;
import quarterfold.intake.Problem;
import quarterfold.ledger.Book;
import quarterfold.ledger.Ledger;

/** Layouts that a person wrote, with reports of the channels they are for. */
final class LayoutTarget implements Target {
    /** The name its layouts have. */
    static final String NAME = "mine";

    private static final String LAYOUT = NAME + ".yaml";

    private final Mutator mutator;
    private final FreshBooks books;
    private final List<Path> reports;
    private Path book;

    LayoutTarget(Path folder, Mutator mutator, List<Path> reports) throws IOException {
        this.mutator = mutator;
        this.reports = reports;
        books = new FreshBooks(folder);
        book = books.next();
    }

    @Override
    public byte[] next() {
        return mutator.next();
    }

    @Override
    public boolean reads(byte[] input) throws IOException {
        Files.write(book.resolve("layouts").resolve(LAYOUT), input);
        boolean entered = false;
        Book opened = Book.open(book);
        try (Ledger ledger = opened.ledger()) {
            Importer importer = new Importer(opened, ledger);
            for (Path report : reports) {
                ImportResult result = importer.enter(report, Optional.empty());
                if (result instanceof ImportResult.Entered whole) {
                    ImportTarget.assertAddsUp(ledger, whole.source());
                    entered = true;
                } else {
                    assertThat(result.problems()).isNotEmpty();
                    assertThat(result.problems())
                            .extracting(Problem::place)
                            .allMatch(
                                    place ->
                                            place.startsWith(LAYOUT)
                                                    || place.startsWith(
                                                            String.valueOf(report.getFileName())));
                }
            }
        }
        if (entered) {
            book = books.next();
        }
        return entered;
    }

    @Override
    public void close() {}
}
