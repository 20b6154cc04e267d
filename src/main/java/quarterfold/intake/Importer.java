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
import quarterfold.ledger.Attachment;
import quarterfold.ledger.Book;
import quarterfold.ledger.FileEntry;
import quarterfold.ledger.IoText;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.LedgerException.Fault;
import quarterfold.ledger.RaisedQuery;
import quarterfold.ledger.Source;
import quarterfold.ledger.SourceArchive;

/**
 * Brings files into a book, each whole or not at all: keeps a copy, recognises its layout, reads
 * every row, ties the control totals, and enters it in one transaction. For one thread.
 */
public final class Importer {
    /** So many entries of a file that is there already tell what it holds. */
    private static final int LOOKED_AT = 1_000;

    private final Book book;
    private final Ledger ledger;
    private final Stop stop;
    private final Layouts layouts;
    private boolean cleared;

    /** Reads the layouts that ship and the book's own. {@code ledger} is the book's. */
    public Importer(Book book, Ledger ledger) throws LedgerException {
        this(book, ledger, new Stop());
    }

    /** {@code stop}: what may end its work early. */
    Importer(Book book, Ledger ledger, Stop stop) throws LedgerException {
        this.book = book;
        this.ledger = ledger;
        this.stop = stop;
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
        clear();
        try (ArchiveUse use = book.archive().use()) {
            return enter(piece, use.archive(), layout, claims, watch);
        }
    }

    /** Clears away, once, what killed imports left. */
    void clear() throws LedgerException {
        if (!cleared) {
            book.archive().removeLeftOvers(ledger);
            cleared = true;
        }
    }

    private ImportResult enter(
            Piece piece,
            SourceArchive archive,
            Optional<String> layout,
            Claims claims,
            Watch watch) {
        Archived copy;
        try {
            copy = piece.archive(archive);
        } catch (LedgerException e) {
            if (e.getCause() instanceof BadBytes bad) {
                return ImportResult.Refused.unread(piece.name(), bad.problem());
            }
            throw e;
        }
        Attaching attaching = new Attaching(archive, ledger, piece, claims);
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
                archive.discard(copy, ledger);
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
            return enter(copy, reading, problems, attaching, watch);
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
            Archived copy, Reading reading, Problems problems, Attaching attaching, Watch watch)
            throws BadFile, IOException {
        try (FileEntry entry = ledger.begin(copy.sha256(), copy.name(), reading.layout())) {
            layouts.text(reading.layout()).ifPresent(entry::readWith);
            Shelf shelf = new Shelf(book, ledger, layouts);
            Repeats repeats = Repeats.of(reading, copy.name(), shelf, Long.MAX_VALUE);
            Transfer transfer = new Transfer(reading, repeats, problems);
            Into into = new Into(entry, new HeldRates(ledger, copy.name()), attaching, watch, stop);
            transfer.run(into);
            into.tell(problems);
            if (problems.none()) {
                reading.finish();
                attaching.keep(problems);
            }
            if (!transfer.problems().none()) {
                return refused(copy, reading.layout(), transfer.rowsRead(), transfer.problems());
            }
            attaching.attach(entry);
            List<RaisedQuery> queries = new ArrayList<>();
            transfer.raise(
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
            Source source = stop.entering(() -> transfer.commit(entry));
            return new ImportResult.Entered(
                    source,
                    reading.kind().isEmpty() ? into.contents() : reading.kind(),
                    transfer.repeated(),
                    attaching.count(),
                    into.rates(),
                    into.currencies(),
                    queries.stream()
                            .map(
                                    q ->
                                            new RaisedQuery(
                                                    source.id(), q.code(), q.about(), q.question()))
                            .toList());
        }
    }

    private static ImportResult refused(
            Archived copy, String layout, long rowsRead, Problems problems) {
        return new ImportResult.Refused(
                copy.name(), copy.sha256(), layout, rowsRead, problems.kept(), problems.more());
    }
}
