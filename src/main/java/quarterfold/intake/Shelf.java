package quarterfold.intake;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import quarterfold.ledger.Book;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.Source;

/** The files a book keeps, opened again as they were read when they came. */
record Shelf(Book book, Ledger ledger, Layouts layouts) {

    /** Sources read as {@code layout}, with entries, that came before the source numbered so. */
    List<Source> before(long source, String layout) {
        return ledger.sources().stream()
                .filter(s -> s.id() < source)
                .filter(s -> s.layout().equals(layout) && s.dates().isPresent())
                .toList();
    }

    /** As the book's layouts are now; as a source was read when it came, where they are not so. */
    List<Layouts> ways(Source source) {
        return Stream.concat(Stream.of(layouts), kept(ledger, source).stream()).toList();
    }

    /** The layout that a source was read with, where the ledger has it. */
    static Optional<Layouts> kept(Ledger ledger, Source source) {
        return ledger.layoutText(source).map(text -> Layouts.only(source.layout(), text));
    }

    /**
     * Opens a source's file, to read it by one of the {@code as}.
     *
     * @throws BadFile if the book has no whole copy of it, or it can no longer be read as it was
     */
    Reading open(Source source, Layouts as) throws BadFile, IOException {
        Path copy =
                book.archive()
                        .whole(source.sha256())
                        .orElseThrow(
                                () ->
                                        new BadFile(
                                                source.name(),
                                                "found no whole copy of this file in the book's folder sources, where it is source %d and its rows are needed to compare; put it back from another copy"
                                                        .formatted(source.id())));
        Problems problems = new Problems();
        Reading reading =
                Readings.open(
                        new Brought(copy, source.name(), book.settings(), as, problems),
                        Optional.of(source.layout()));
        if (!problems.none()) {
            reading.close();
            throw new BadFile(problems.kept().get(0));
        }
        return reading;
    }
}
