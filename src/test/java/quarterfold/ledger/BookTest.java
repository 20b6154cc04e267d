package quarterfold.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.YearMonth;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.LedgerException.Fault;

class BookTest {
    @TempDir Path home;

    @Test
    void aNewBookHasItsFilesAndFolders() throws IOException {
        Path folder = home.resolve("deep").resolve("my book");
        Book book = Book.create(folder, Samples.SETTINGS);

        assertThat(files(folder))
                .containsExactly("book.yaml", "layouts", "ledger.sqlite", "papers", "sources");
        assertThat(book.folder()).isEqualTo(folder);
        assertThat(book.settings()).isEqualTo(Samples.SETTINGS);
        assertThat(book.products().isEmpty()).isTrue();
        assertThat(book.layouts()).isEmpty();
        assertThat(book.papers(YearMonth.of(2026, 9)))
                .isEqualTo(folder.resolve("papers").resolve("2026-09"));
        try (Ledger ledger = book.ledger()) {
            assertThat(ledger.sources()).isEmpty();
            assertThat(ledger.closes()).isEmpty();
        }
        assertThat(Book.open(folder).settings()).isEqualTo(Samples.SETTINGS);
    }

    private static List<String> files(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(f -> String.valueOf(f.getFileName())).sorted().toList();
        }
    }

    @Test
    void aBookMayBeMadeAmongOtherFiles() throws IOException {
        Files.writeString(home.resolve("july.csv"), "x");
        Book.create(home, Samples.SETTINGS);

        assertThat(files(home)).contains("july.csv", "book.yaml");
    }

    @Test
    void aBookIsNotMadeOverAnother() throws IOException {
        Book.create(home, Samples.SETTINGS);
        String before = Files.readString(home.resolve("book.yaml"));

        assertThatThrownBy(() -> Book.create(home, Samples.SETTINGS))
                .isInstanceOfSatisfying(LedgerException.class, e -> isUsage(e))
                .hasMessage(
                        home
                                + ": there is a book here already (book.yaml); name another folder"
                                + " with --book");
        Files.delete(home.resolve("book.yaml"));
        assertThatThrownBy(() -> Book.create(home, Samples.SETTINGS))
                .hasMessage(
                        home
                                + ": there is a book here already (ledger.sqlite); name another"
                                + " folder with --book");
        assertThat(before).contains("name: \"Fernmoor Crafts\"");
    }

    private static void isUsage(LedgerException e) {
        assertThat(e.fault()).isEqualTo(Fault.USAGE);
        assertThat(e.fault().exitCode()).isEqualTo(2);
    }

    @Test
    void nothingHalfMadeRemainsAfterAFailure() throws IOException {
        Files.writeString(home.resolve("papers"), "a file where a folder must be");

        assertThatThrownBy(() -> Book.create(home, Samples.SETTINGS))
                .isInstanceOfSatisfying(
                        LedgerException.class,
                        e -> assertThat(e.fault()).isEqualTo(Fault.UNREADABLE))
                .hasMessageStartingWith(home + ": could not be made a book: ");
        assertThat(files(home)).containsExactly("papers");
    }

    @Test
    void refusedSettingsMakeNoBook() throws IOException {
        Settings s = Samples.SETTINGS;
        Settings flat =
                new Settings(
                        " ",
                        s.country(),
                        s.vatNumber(),
                        s.registeredFrom(),
                        s.periodEnds(),
                        "flat-rate",
                        s.zone(),
                        s.currency(),
                        false,
                        false,
                        s.stock(),
                        s.choices());

        assertThatThrownBy(() -> Book.create(home.resolve("b"), flat))
                .isInstanceOfSatisfying(
                        LedgerException.class,
                        e -> assertThat(e.fault()).isEqualTo(Fault.BAD_INPUT))
                .hasMessage(
                        "[name]: found ' '; expected the name of the business, such as Fernmoor"
                                + " Crafts\n"
                                + "[flat_rate_sector]: found nothing; expected the trade sector of the"
                                + " flat rate by its id in flat-rates.csv, such as \"044\"");
        assertThat(files(home)).isEmpty();
    }

    /** What a program that was killed while it made a book leaves behind. */
    @Test
    void leftoversOfAHalfMadeBookAreReplaced() throws IOException {
        for (String left : List.of("ledger.sqlite.part", "ledger.sqlite.part-wal")) {
            Files.writeString(home.resolve(left), "half");
        }
        Files.writeString(home.resolve("book.yaml.part"), "half of something longer ".repeat(999));
        Book book = Book.create(home, Samples.SETTINGS);

        assertThat(book.settings()).isEqualTo(Samples.SETTINGS);
        assertThat(files(home))
                .containsExactly("book.yaml", "layouts", "ledger.sqlite", "papers", "sources");
    }

    @Test
    void aFolderWithoutABookIsRefused() {
        assertThatThrownBy(() -> Book.open(home))
                .isInstanceOfSatisfying(LedgerException.class, e -> isUsage(e))
                .hasMessage(
                        home
                                + ": there is no book here (no book.yaml); name the book's folder"
                                + " with --book, or make one with new");
    }

    @Test
    void layoutsAreTheOwnersYamlFilesByName() throws IOException {
        Book book = Book.create(home, Samples.SETTINGS);
        Path layouts = home.resolve("layouts");
        for (String name : List.of("b.yaml", "a.yaml", "notes.txt")) {
            Files.writeString(layouts.resolve(name), "");
        }

        assertThat(book.layouts())
                .containsExactly(layouts.resolve("a.yaml"), layouts.resolve("b.yaml"));
        Files.move(layouts, home.resolve("elsewhere"));
        assertThat(book.layouts()).isEmpty();
    }

    @Test
    void productsAreReadWithTheBook() throws IOException {
        Book.create(home, Samples.SETTINGS);
        Files.writeString(
                home.resolve("products.csv"), "product,liability,from,to\nBOOK-1,zero,,\n");

        assertThat(Book.open(home).products().liability("BOOK-1", Samples.FULL.taxPoint()))
                .contains("zero");
    }
}
