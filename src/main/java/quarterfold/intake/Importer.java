package quarterfold.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import quarterfold.ledger.ArchiveUse;
import quarterfold.ledger.Archived;
import quarterfold.ledger.Book;
import quarterfold.ledger.FileEntry;
import quarterfold.ledger.IoText;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.LedgerException.Fault;
import quarterfold.ledger.Line;
import quarterfold.ledger.RaisedQuery;
import quarterfold.ledger.Source;

/**
 * Brings files into a book, each whole or not at all: keeps a copy, recognises its layout, reads
 * every row, ties the control totals, and enters it in one transaction. For one thread.
 */
public final class Importer {
    private final Book book;
    private final Ledger ledger;
    private final Layouts layouts;
    private boolean cleared;

    /** Reads the layouts that ship and the book's own. {@code ledger} is the book's. */
    public Importer(Book book, Ledger ledger) throws LedgerException {
        this.book = book;
        this.ledger = ledger;
        this.layouts = layouts(book);
    }

    /** The layouts that ship and the book's own. */
    static Layouts layouts(Book book) throws LedgerException {
        try {
            return Layouts.load(book.layouts());
        } catch (UncheckedIOException e) {
            throw new LedgerException(
                    Fault.UNREADABLE,
                    "%s: the layouts could not be read: %s"
                            .formatted(book.folder(), IoText.withFile(cause(e))));
        }
    }

    /**
     * Brings in one file.
     *
     * @param layout the name of the layout to read it with; recognised from the header where empty
     * @throws LedgerException if the file or the ledger cannot be read or written, the book is in
     *     use, or there is no layout of that name
     */
    public ImportResult enter(Path file, Optional<String> layout) throws LedgerException {
        layout.ifPresent(this::check);
        if (!cleared) {
            book.archive().removeLeftOvers(ledger);
            cleared = true;
        }
        try (ArchiveUse use = book.archive().use()) {
            return enter(file, use.archive(file), layout);
        }
    }

    private ImportResult enter(Path file, Archived copy, Optional<String> layout) {
        boolean entered = false;
        try {
            Optional<Source> known = ledger.source(copy.sha256());
            if (known.isPresent()) {
                return new ImportResult.AlreadyThere(copy.name(), known.get());
            }
            ImportResult result = read(copy, layout);
            entered = result instanceof ImportResult.Entered;
            return result;
        } catch (UncheckedIOException | IOException e) {
            throw unreadable(file, e);
        } finally {
            if (!entered) {
                book.archive().discard(copy, ledger);
            }
        }
    }

    private static IOException cause(UncheckedIOException e) {
        return Objects.requireNonNull(e.getCause());
    }

    static LedgerException unreadable(Path file, Exception fault) {
        IOException told =
                fault instanceof UncheckedIOException unchecked
                        ? cause(unchecked)
                        : (IOException) fault;
        return new LedgerException(
                Fault.UNREADABLE,
                "%s: could not be read: %s".formatted(file, IoText.withFile(told)));
    }

    private void check(String name) {
        if (!Readings.has(layouts, name)) {
            throw new LedgerException(
                    Fault.USAGE,
                    "--layout: found %s; expected one of %s, such as %s"
                            .formatted(
                                    Problem.quoted(name),
                                    String.join(", ", Readings.names(layouts)),
                                    PlainSheet.NAME));
        }
    }

    private ImportResult read(Archived copy, Optional<String> layout) throws IOException {
        if (!layouts.problems().none()) {
            return refused(copy, "", 0, layouts.problems());
        }
        Problems problems = new Problems();
        Brought file = new Brought(copy.path(), copy.name(), book.settings(), layouts, problems);
        try (Reading reading = Readings.open(file, layout)) {
            if (!problems.none()) {
                return refused(copy, reading.layout(), 0, problems);
            }
            return enter(copy, reading, new Transfer(reading, problems));
        } catch (BadFile e) {
            problems.add(e.problem());
            return refused(copy, "", 0, problems);
        }
    }

    private ImportResult enter(Archived copy, Reading reading, Transfer transfer) throws BadFile {
        try (FileEntry entry = ledger.begin(copy.sha256(), copy.name(), reading.layout())) {
            transfer.run(into(entry));
            if (!transfer.problems().none()) {
                return refused(copy, reading.layout(), transfer.rowsRead(), transfer.problems());
            }
            reading.finish();
            List<RaisedQuery> queries = new ArrayList<>();
            reading.raise(
                    (code, about, question) -> {
                        entry.raise(code, about, question);
                        queries.add(new RaisedQuery(0, code, about, question));
                    });
            if (!Files.isRegularFile(copy.path())) {
                throw new LedgerException(
                        Fault.UNREADABLE,
                        "%s: its copy in the book was removed by another import of the same file; nothing was entered, try again"
                                .formatted(copy.name()));
            }
            Source source = transfer.commit(entry);
            return new ImportResult.Entered(
                    source,
                    queries.stream()
                            .map(
                                    q ->
                                            new RaisedQuery(
                                                    source.id(), q.code(), q.about(), q.question()))
                            .toList());
        }
    }

    private static RowReader.Output into(FileEntry entry) {
        return new RowReader.Output() {
            @Override
            public void line(Line line) {
                entry.add(line);
            }

            @Override
            public void setAside(long row, String reason) {
                entry.setAside(row, reason);
            }
        };
    }

    private static ImportResult refused(
            Archived copy, String layout, long rowsRead, Problems problems) {
        return new ImportResult.Refused(
                copy.name(), copy.sha256(), layout, rowsRead, problems.kept(), problems.more());
    }
}
