package quarterfold.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import quarterfold.ledger.Archived;
import quarterfold.ledger.Attachment;
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
    /** So many entries of a file that is there already tell what it holds. */
    private static final int LOOKED_AT = 1_000;

    private final Book book;
    private final Ledger ledger;
    private final Layouts layouts;

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
        return enter(Piece.named(file), layout, new Claims(), Watch.NOBODY);
    }

    /** Brings in one file, and claims the documents that it names. */
    ImportResult enter(Piece piece, Optional<String> layout, Claims claims, Watch watch) {
        layout.ifPresent(this::check);
        Archived copy;
        try {
            copy = piece.archive(book.archive());
        } catch (LedgerException e) {
            if (e.getCause() instanceof BadBytes bad) {
                return ImportResult.Refused.unread(piece.name(), bad.problem());
            }
            throw e;
        }
        Attaching attaching = new Attaching(book.archive(), ledger, piece, claims);
        boolean entered = false;
        try {
            Optional<ImportResult> known = known(copy, attaching);
            ImportResult result =
                    known.isPresent() ? known.get() : read(copy, piece, layout, attaching, watch);
            entered = result instanceof ImportResult.Entered;
            return result;
        } catch (BadBytes e) { // of a document it names
            return ImportResult.Refused.unread(piece.name(), e.problem());
        } catch (UncheckedIOException | IOException e) {
            throw unreadable(piece.path().orElse(Path.of(piece.name())), e);
        } finally {
            if (!entered) {
                book.archive().discard(copy, ledger);
                attaching.discard();
            }
        }
    }

    private Optional<ImportResult> known(Archived copy, Attaching attaching) throws IOException {
        Optional<Source> source = ledger.source(copy.sha256());
        if (source.isPresent()) {
            attaching.claimAgain(source.get());
            Contents contents = new Contents();
            ledger.entries(source.get(), source.get().firstEntry(), LOOKED_AT)
                    .forEach(e -> contents.add(e.line()));
            return Optional.of(
                    new ImportResult.AlreadyThere(copy.name(), source.get(), contents.word()));
        }
        return ledger.attachments()
                .first(copy.sha256())
                .map(a -> new ImportResult.KeptAsEvidence(copy.name(), by(a)));
    }

    private String by(Attachment attachment) {
        return ledger.sources().stream()
                .filter(s -> s.id() == attachment.source())
                .map(s -> "%s row %d".formatted(s.name(), attachment.row()))
                .findFirst()
                .orElseThrow();
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

    private ImportResult read(
            Archived copy, Piece piece, Optional<String> layout, Attaching attaching, Watch watch)
            throws IOException {
        if (!layouts.problems().none()) {
            return refused(copy, "", 0, layouts.problems());
        }
        Problems problems = new Problems();
        Brought file = new Brought(copy.path(), copy.name(), book.settings(), layouts, problems);
        boolean opened = false;
        try (Reading reading = Readings.open(file, layout)) {
            opened = true;
            if (!problems.none()) {
                return refused(copy, reading.layout(), 0, problems);
            }
            return enter(copy, reading, new Transfer(reading, problems), attaching, watch);
        } catch (BadFile e) {
            Optional<String> reason =
                    opened || piece.isNamed()
                            ? Optional.empty()
                            : NoReport.reason(copy.path(), copy.name(), book.settings());
            problems.add(e.problem());
            return reason.isPresent()
                    ? new ImportResult.PassedOver(copy.name(), reason.get())
                    : refused(copy, "", 0, problems);
        }
    }

    private ImportResult enter(
            Archived copy, Reading reading, Transfer transfer, Attaching attaching, Watch watch)
            throws BadFile, IOException {
        try (FileEntry entry = ledger.begin(copy.sha256(), copy.name(), reading.layout())) {
            Into into = new Into(entry, attaching, watch);
            transfer.run(into);
            if (transfer.problems().none()) {
                reading.finish();
                attaching.keep(transfer.problems());
            }
            if (!transfer.problems().none()) {
                return refused(copy, reading.layout(), transfer.rowsRead(), transfer.problems());
            }
            attaching.attach(entry);
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
                    reading.kind().isEmpty() ? into.contents.word() : reading.kind(),
                    attaching.count(),
                    queries.stream()
                            .map(
                                    q ->
                                            new RaisedQuery(
                                                    source.id(), q.code(), q.about(), q.question()))
                            .toList());
        }
    }

    /** Where the rows of a file go. */
    private static final class Into implements RowReader.Output {
        private static final int TOLD = 4_096;

        private final FileEntry entry;
        private final Attaching attaching;
        private final Watch watch;
        private final Contents contents = new Contents();
        private long lines;

        Into(FileEntry entry, Attaching attaching, Watch watch) {
            this.entry = entry;
            this.attaching = attaching;
            this.watch = watch;
        }

        @Override
        public void line(Line line) {
            entry.add(line);
            contents.add(line);
            if (++lines % TOLD == 0) {
                watch.rows(lines);
            }
        }

        @Override
        public void setAside(long row, String reason) {
            entry.setAside(row, reason);
        }

        @Override
        public void attach(Named document) {
            attaching.add(document);
        }
    }

    private static ImportResult refused(
            Archived copy, String layout, long rowsRead, Problems problems) {
        return new ImportResult.Refused(
                copy.name(), copy.sha256(), layout, rowsRead, problems.kept(), problems.more());
    }
}
