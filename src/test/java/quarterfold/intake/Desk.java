package quarterfold.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.Month;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import quarterfold.ledger.Book;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Finding;
import quarterfold.ledger.HeldRate;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.Line;
import quarterfold.ledger.PublishedRate;
import quarterfold.ledger.RaisedQuery;
import quarterfold.ledger.SetAside;
import quarterfold.ledger.Settings;
import quarterfold.ledger.Source;

/** A new book in a folder of its own, and files to bring into it. */
final class Desk implements AutoCloseable {
    private final Path folder;
    private final Book book;
    private final Ledger ledger;

    Desk(Path folder) {
        this.folder = directory(folder);
        book = Book.create(folder.resolve("book"), settings());
        ledger = book.ledger();
    }

    private static Path directory(Path folder) {
        try {
            return Files.createDirectories(folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Settings settings() {
        return new Settings(
                "Alder & Wren",
                "GB",
                "GB101747696",
                LocalDate.of(2024, 1, 1),
                List.of(Month.MARCH, Month.JUNE, Month.SEPTEMBER, Month.DECEMBER),
                "standard",
                ZoneId.of("Europe/London"),
                "GBP",
                false,
                false,
                "GB",
                Map.of());
    }

    Path file(String name, String text) throws IOException {
        return file(name, text, StandardCharsets.UTF_8);
    }

    Path file(String name, String text, Charset charset) throws IOException {
        return Files.write(folder.resolve(name), text.getBytes(charset));
    }

    Path path(String name) {
        return folder.resolve(name);
    }

    /** Gives the book a layout of its own. */
    Desk layout(String name, String yaml) throws IOException {
        Files.createDirectories(book.folder().resolve("layouts"));
        Files.writeString(book.folder().resolve("layouts").resolve(name + ".yaml"), yaml);
        return this;
    }

    ImportResult enter(Path file) {
        return new Importer(book, ledger).enter(file, Optional.empty());
    }

    ImportResult enter(Path file, String layout) {
        return new Importer(book, ledger).enter(file, Optional.of(layout));
    }

    /** Brings in files, folders and ZIPs at once. */
    void deliver(List<Path> named, Consumer<ImportResult> each) {
        delivery(Watch.NOBODY, new Stop()).enter(named, Optional.empty(), each);
    }

    Delivery delivery(Watch watch, Stop stop) {
        return new Delivery(book, ledger, watch, stop);
    }

    Ledger ledger() {
        return ledger;
    }

    /** Keeps in the book's layouts what was decided on a question. */
    String keep(RaisedQuery.Name query) {
        return new LayoutKinds(book, ledger).keep(query);
    }

    ImportResult enter(String name, String text) throws IOException {
        return enter(file(name, text));
    }

    /** The problems of a file that is refused, as a person reads them; the ledger stays empty. */
    List<String> problems(String name, String text) throws IOException {
        return problems(file(name, text));
    }

    List<String> problems(Path file) throws IOException {
        List<String> problems = enter(file).problems().stream().map(Problem::toString).toList();
        if (!lines().isEmpty() || !ledger.sources().isEmpty() || !archive().isEmpty()) {
            throw new AssertionError("something of the refused file stayed: " + lines());
        }
        return problems;
    }

    /** What differs between the ledger and its files, read again. */
    List<String> differences() {
        List<String> found = new ArrayList<>();
        for (Source source : ledger.sources()) {
            Path copy = book.archive().whole(source.sha256()).orElseThrow();
            new Rereader(book, ledger).compare(source, copy, f -> found.add(f.toString()));
        }
        return found;
    }

    List<Entry> entries() {
        List<Entry> entries = new ArrayList<>();
        ledger.forEach(entries::add);
        return entries;
    }

    List<Line> lines() {
        return entries().stream().map(Entry::line).toList();
    }

    List<PublishedRate> rates() {
        return ledger.rates().all().stream().map(HeldRate::rate).toList();
    }

    List<RaisedQuery> raised() {
        return ledger.raised();
    }

    /** What a second reading of all its files finds against the ledger. */
    List<String> reread() {
        List<String> found = new ArrayList<>();
        Rereader rereader = new Rereader(book, ledger);
        for (Source source : ledger.sources()) {
            rereader.compare(
                    source,
                    book.archive().whole(source.sha256()).orElseThrow(),
                    f -> found.add(f.place() + ": " + f.text()));
        }
        return found;
    }

    /** How many decisions are recorded. */
    int decisions() {
        return ledger.decisions().size();
    }

    List<SetAside> setAside(long source) {
        return ledger.setAside(source);
    }

    List<Source> sources() {
        return ledger.sources();
    }

    /** What reading every file again tells. */
    List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        ledger.check(findings::add);
        Rereader rereader = new Rereader(book, ledger);
        for (Source source : ledger.sources()) {
            rereader.compare(
                    source, book.archive().whole(source.sha256()).orElseThrow(), findings::add);
        }
        return findings;
    }

    /** Takes a file's copy away from the book. */
    void lose(String name) throws IOException {
        try (Stream<Path> files = Files.list(book.folder().resolve("sources"))) {
            for (Path file : files.filter(f -> f.toString().endsWith("-" + name)).toList()) {
                Files.delete(file);
            }
        }
    }

    /** The names of the files kept, without the digits of their digests. */
    List<String> archive() throws IOException {
        try (Stream<Path> files = Files.list(book.folder().resolve("sources"))) {
            return files.map(f -> f.getFileName().toString().substring(13)).sorted().toList();
        }
    }

    @Override
    public void close() {
        ledger.close();
    }
}
