package quarterfold.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import quarterfold.intake.ImportResult;
import quarterfold.intake.Importer;
import quarterfold.intake.Problem;
import quarterfold.intake.Rereader;
import quarterfold.ledger.Archived;
import quarterfold.ledger.Book;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Finding;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;

/** Files brought into a book by the reader that knows them. */
final class ImportTarget implements Target {
    private static final int BATCH = 100_000;
    private static final int BOOKFUL = 200;

    /** Where the next input comes from. */
    interface Inputs {
        byte[] next() throws IOException;
    }

    private final Inputs inputs;
    private final Stated stated;
    private final Path file;
    private final FreshBooks books;
    private Book book;
    private Ledger ledger;
    private Importer importer;
    private Rereader rereader;
    private int entered;
    private long checked;

    ImportTarget(Path folder, String name, Inputs inputs, Stated stated) throws IOException {
        this.inputs = inputs;
        this.stated = stated;
        file = folder.resolve(name);
        books = new FreshBooks(folder);
        open();
    }

    private void open() throws IOException {
        book = Book.open(books.next());
        ledger = book.ledger();
        importer = new Importer(book, ledger);
        rereader = new Rereader(book, ledger);
        entered = 0;
    }

    /** Each file is held against those of its days: what that takes grows with their square. */
    private void anew() throws IOException {
        if (++entered == BOOKFUL) {
            ledger.close();
            open();
        }
    }

    @Override
    public byte[] next() throws IOException {
        return inputs.next();
    }

    @Override
    public boolean reads(byte[] input) throws IOException {
        Files.write(file, input);
        ImportResult result = importer.enter(file, Optional.empty());
        if (result instanceof ImportResult.Refused refused) {
            assertRefused(refused, String.valueOf(file.getFileName()));
            assertThat(ledger.source(refused.sha256())).isEmpty();
            return false;
        }
        if (result instanceof ImportResult.Entered made) {
            assertAddsUp(ledger, made.source());
            assertReadsTheSame(made.source());
            assertSaysWhatTheFileStates(input, made);
            anew();
        }
        return true;
    }

    /** Unless a question says that something does not tie, or is not all of it. */
    private void assertSaysWhatTheFileStates(byte[] input, ImportResult.Entered entered)
            throws IOException {
        boolean asked =
                entered.queries().stream()
                        .anyMatch(q -> q.code().matches("(document|statement)-.*"));
        Optional<BigDecimal> money =
                asked ? Optional.empty() : stated.money(input, entered.layout());
        if (money.isPresent()) {
            checked++;
            assertThat(entered.source().moneyIn().plus(entered.repeated().money()))
                    .as("money of the entries against what the file states")
                    .isEqualTo(Amount.of(money.get()));
        }
    }

    /** How many inputs were held against what they state themselves. */
    @Override
    public long checked() {
        return checked;
    }

    static void assertRefused(ImportResult.Refused refused, String file) {
        assertThat(refused.problems()).isNotEmpty();
        for (Problem problem : refused.problems()) {
            assertThat(problem.place()).startsWith(file);
            assertThat(problem.fault()).startsWith("found ").contains("expected");
        }
    }

    /** What the source says of itself is what its entries and the rows set aside come to. */
    static void assertAddsUp(Ledger ledger, Source source) {
        Amount money = Amount.ZERO;
        Set<Long> rows = new HashSet<>();
        List<Entry> entries =
                source.entries() == 0
                        ? List.of()
                        : ledger.entries(source, source.firstEntry(), BATCH);
        for (Entry entry : entries) {
            money = money.plus(entry.line().signedMoney());
            rows.add(entry.line().row());
        }
        ledger.rates().of(source).forEach(rate -> rows.add(rate.rate().row()));
        int aside = ledger.setAside(source.id()).size();
        assertThat(entries).hasSize(Math.toIntExact(source.entries()));
        assertThat(money).isEqualTo(source.moneyEntered()).isEqualTo(source.moneyIn());
        assertThat((long) rows.size() + aside).isEqualTo(source.rowsRead());
    }

    private void assertReadsTheSame(Source source) {
        List<Finding> differences = new ArrayList<>();
        Archived copy = book.archive().archive(file);
        rereader.compare(source, copy.path(), differences::add);
        assertThat(differences).isEmpty();
    }

    @Override
    public void close() {
        ledger.close();
    }
}
