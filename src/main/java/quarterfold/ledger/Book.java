package quarterfold.ledger;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.YearMonth;
import java.util.List;
import java.util.stream.Stream;

/**
 * One business's records: a folder with {@code book.yaml}, {@code ledger.sqlite}, and the folders
 * {@code sources}, {@code layouts} and {@code papers}; {@code products.csv} and {@code bundles.csv}
 * where the owner made them.
 */
public final class Book {
    private static final Duration WAIT = Duration.ofSeconds(10);
    static final String SETTINGS = "book.yaml";
    static final String LEDGER = "ledger.sqlite";

    private final Path folder;
    private final Settings settings;
    private final Products products;
    private final Bundles bundles;

    private Book(Path folder, Settings settings, Products products, Bundles bundles) {
        this.folder = folder;
        this.settings = settings;
        this.products = products;
        this.bundles = bundles;
    }

    /**
     * Makes a book. The folder may be there and hold other files; they are not touched. Whatever
     * fails, no half-made book remains.
     *
     * @throws LedgerException if a book is there already, a setting is refused, or the disk fails
     */
    public static Book create(Path folder, Settings settings) throws LedgerException {
        NewBook.make(folder, settings);
        return open(folder);
    }

    /**
     * Opens a book and reads its settings and products; the ledger is opened on its own.
     *
     * @throws LedgerException if there is no book, or a file of it is bad: every problem is told
     */
    public static Book open(Path folder) throws LedgerException {
        Path file = folder.resolve(SETTINGS);
        if (!Files.isRegularFile(file)) {
            throw new LedgerException(
                    LedgerException.Fault.USAGE,
                    "%s: there is no book here (no %s); name the book's folder with --book, or make one with new"
                            .formatted(
                                    folder.toString().isEmpty() ? "this folder" : folder,
                                    SETTINGS));
        }
        Path products = folder.resolve(Products.FILE);
        Path bundles = folder.resolve(Bundles.FILE);
        try {
            return new Book(
                    folder,
                    SettingsFile.read(SETTINGS, Files.readString(file)),
                    Files.exists(products) ? Products.read(products) : Products.none(),
                    Files.exists(bundles) ? Bundles.read(bundles) : Bundles.none());
        } catch (CharacterCodingException e) {
            throw new LedgerException(
                    LedgerException.Fault.BAD_INPUT,
                    SETTINGS + ": found bytes that are not UTF-8; save the file as UTF-8",
                    e);
        } catch (IOException e) {
            throw LedgerException.file(file, "be read", e);
        }
    }

    /** The same book as it was: other settings and other lists of goods. */
    public Book asOf(Settings then, Products thenProducts, Bundles thenBundles) {
        return new Book(folder, then, thenProducts, thenBundles);
    }

    public Path folder() {
        return folder;
    }

    public Settings settings() {
        return settings;
    }

    /** The liability of the owner's goods, as {@code products.csv} has it. */
    public Products products() {
        return products;
    }

    /** The products sold together at one price, as {@code bundles.csv} has them. */
    public Bundles bundles() {
        return bundles;
    }

    /** The owner's own layouts, {@code layouts/*.yaml}, by name. */
    public List<Path> layouts() throws LedgerException {
        Path layouts = folder.resolve("layouts");
        if (!Files.isDirectory(layouts)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(layouts)) {
            return files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList();
        } catch (IOException e) {
            throw LedgerException.file(layouts, "be read", e);
        }
    }

    /** Where a close writes its papers, such as {@code papers/2026-09}; it need not exist yet. */
    public Path papers(YearMonth period) {
        return folder.resolve("papers").resolve(period.toString());
    }

    /** Where the files brought in are kept. */
    public SourceArchive archive() {
        return new SourceArchive(folder.resolve("sources"));
    }

    /**
     * Opens the ledger; the caller closes it. A ledger of an older version is brought up to date.
     *
     * @throws LedgerException if it cannot be read, or is of a newer version
     */
    public Ledger ledger() throws LedgerException {
        return Ledger.open(folder.resolve(LEDGER), WAIT);
    }
}
