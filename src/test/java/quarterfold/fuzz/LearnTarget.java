package quarterfold.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import quarterfold.intake.ImportResult;
import quarterfold.intake.Importer;
import quarterfold.intake.Learned;
import quarterfold.intake.Learner;
import quarterfold.ledger.Book;
import quarterfold.ledger.Ledger;

/** Reports no layout knows: what is said to be proved is entered, to the row. */
final class LearnTarget implements Target {
    private static final String LAYOUT = "learned";

    private final ImportTarget.Inputs inputs;
    private final FreshBooks books;
    private final Path file;
    private Path book;

    LearnTarget(Path folder, ImportTarget.Inputs inputs) throws IOException {
        this.inputs = inputs;
        file = folder.resolve("report.csv");
        books = new FreshBooks(folder);
        book = books.next();
    }

    @Override
    public byte[] next() throws IOException {
        return inputs.next();
    }

    @Override
    public boolean reads(byte[] input) throws IOException {
        Files.write(file, input);
        Book opened = Book.open(book);
        Learned learned = new Learner(opened.settings()).learn(file, LAYOUT, Map.of());
        if (!learned.isProved()) {
            boolean toldWhy =
                    !learned.faults().isEmpty()
                            || !learned.open().isEmpty()
                            || !learned.notes().isEmpty();
            assertThat(toldWhy).as(learned.toString()).isTrue();
            return false;
        }
        Learner.write(opened, learned, true);
        try (Ledger ledger = opened.ledger()) {
            ImportResult result = new Importer(opened, ledger).enter(file, Optional.of(LAYOUT));
            assertThat(result)
                    .as(result.problems().toString())
                    .isInstanceOf(ImportResult.Entered.class);
            assertThat(result.rowsRead()).isEqualTo(learned.rows());
            assertThat(result.entries()).isEqualTo(learned.entries());
            ImportTarget.assertAddsUp(ledger, ((ImportResult.Entered) result).source());
        }
        book = books.next();
        return true;
    }

    @Override
    public void close() {}
}
