package quarterfold.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import quarterfold.ledger.ArchiveUse;
import quarterfold.ledger.Book;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.LedgerException;

/**
 * Brings into a book all that a person named at once: files, folders and ZIPs. Each file is entered
 * by itself, whole or not at all, tables before documents, so that a document which a list names as
 * its evidence is kept and not read as a report. For one thread.
 */
public final class Delivery {
    private final Book book;
    private final Importer importer;
    private final Watch watch;
    private final Stop stop;

    /** {@code ledger} is the book's; {@code stop} may end its work early. */
    public Delivery(Book book, Ledger ledger, Watch watch, Stop stop) throws LedgerException {
        this.book = book;
        this.importer = new Importer(book, ledger, stop);
        this.watch = watch;
        this.stop = stop;
    }

    /**
     * Brings them in; a file that is refused does not stop the others.
     *
     * @param layout how to read them; found for each where empty
     * @param each told what became of each file, as soon as it is known
     * @throws LedgerException as {@link Importer#enter}, with the files before it entered
     * @throws Stop.Stopped if it was stopped, with the files before it entered
     */
    public void enter(List<Path> named, Optional<String> layout, Consumer<ImportResult> each)
            throws LedgerException {
        importer.clear();
        try (ArchiveUse use = book.archive().use();
                Gathering gathering = new Gathering(use.archive())) {
            named.forEach(path -> gathering.add(path, named.size() > 1));
            new Round(gathering.pieces(), layout, each).enter();
            gathering.told().forEach(each);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** One going through of the files. */
    private final class Round {
        private final List<Piece> pieces;
        private final Optional<String> layout;
        private final Consumer<ImportResult> each;
        private final Claims claims = new Claims();
        private final long all;
        private long done;

        Round(List<Piece> pieces, Optional<String> layout, Consumer<ImportResult> each) {
            this.pieces = pieces;
            this.layout = layout;
            this.each = each;
            all = pieces.stream().mapToLong(Piece::size).sum();
        }

        void enter() {
            List<Piece> documents = new ArrayList<>();
            List<ImportResult> unread = new ArrayList<>();
            for (Piece piece : pieces) {
                Nature nature = nature(piece);
                if (nature == Nature.TABLE || nature == Nature.PACKED) {
                    enter(piece);
                } else {
                    documents.add(piece);
                }
            }
            for (Piece piece : documents) {
                Optional<ImportResult> claimed = claims.of(piece);
                if (claimed.isPresent()) {
                    done += piece.size();
                    each.accept(claimed.get());
                } else if (nature(piece) == Nature.DOCUMENT) {
                    enter(piece);
                } else {
                    done += piece.size();
                    unread.add(unread(piece));
                }
            }
            unread.forEach(each);
        }

        private void enter(Piece piece) {
            stop.begin(piece.name());
            watch.file(piece.name(), done, all);
            done += piece.size();
            each.accept(importer.enter(piece, layout, claims, watch));
        }
    }

    /** A file that cannot be read is told as such when it is brought in. */
    private static Nature nature(Piece piece) {
        try {
            return Nature.of(piece.name(), piece.bytes());
        } catch (IOException e) {
            return Nature.TABLE;
        }
    }

    private static ImportResult unread(Piece piece) {
        Nature nature = nature(piece);
        if (!piece.isNamed()) {
            return new ImportResult.PassedOver(
                    piece.name(),
                    switch (nature) {
                        case PICTURE -> "a picture that no list of receipts names";
                        case NOTHING -> "a ZIP without files";
                        default -> "a file of no known form";
                    });
        }
        String fault =
                switch (nature) {
                    case PICTURE ->
                            "found a picture; expected a report, or a list that names the picture as evidence, such as receipts.csv with a column file";
                    case NOTHING ->
                            "found a ZIP without files; expected one at least, such as the same ZIP downloaded again";
                    default ->
                            "found a file of no known form; expected a report, such as the same figures saved as .csv";
                };
        return ImportResult.Refused.unread(piece.name(), new Problem(piece.name(), "", fault));
    }
}
