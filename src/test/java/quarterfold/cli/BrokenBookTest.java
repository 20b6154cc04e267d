package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Files of a book that are broken, missing or in the way: told in words, with the right code. */
class BrokenBookTest {

    @TempDir private Path folder;
    private Path book = Path.of("");

    @BeforeEach
    void makesTheBook() throws IOException {
        book = SmallBook.quarter(folder);
    }

    @ParameterizedTest(name = "{0} {1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
                    country      | Britain     | book.yaml:8 [country]: found 'Britain'; expected two capital letters, ISO 3166, such as GB
                    period_ends  | [12, 3]     | book.yaml:23 [period_ends]: found '[12, 3]'; expected months from 1 to 12, rising, such as [3, 6, 9, 12]
                    registered_from | 1973-03-31 | book.yaml [registered_from]: found 1973-03-31, before the tables of the law begin (periods.csv: has no 'due-month-ends-after' on 1973-03-31); expected a later day, such as the first day of the earliest period that is to be worked out
                    rounding     | up          | book.yaml:67 [rounding]: found 'up'; expected per-line or per-box
                    currency     | EUR         | book.yaml [currency]: found 'EUR'; expected the currency of the return, such as GBP
                    choices      | {blocked-in-box-7: maybe} | book.yaml [choices]: found [blocked-in-box-7=maybe]; expected names and values of choices.csv, such as deemed-supply-in-box-6: yes
                    choices      | {no-such-choice: yes}     | book.yaml [choices]: found [no-such-choice=yes]; expected names and values of choices.csv, such as deemed-supply-in-box-6: yes
                    """)
    void settingIsRefused(String setting, String value, String message) throws IOException {
        Path yaml = book.resolve("book.yaml");
        Files.writeString(
                yaml,
                Files.readString(yaml)
                        .replaceFirst("(?m)^" + setting + ": .*$", setting + ": " + value));
        assertThat(run("return", "2026-09")).isEqualTo(new Run(65, "", message + "\n"));
        assertThat(run("import", folder.resolve("quarter.csv")).code()).isEqualTo(65);
    }

    @Test
    void everySettingThatIsWrongIsTold() throws IOException {
        Files.writeString(book.resolve("book.yaml"), "name: A\ncuntry: GB\nname: B\n");
        assertThat(run("ledger").code()).isEqualTo(65);
        assertThat(run("ledger").err())
                .startsWith(
                        "book.yaml:2 [cuntry]: found a setting this program does not know; expected one of name, country, ")
                .contains("\nbook.yaml:3 [name]: found a second time; remove one of the two\n")
                .contains(
                        "\nbook.yaml [vat_number]: found nothing; expected the VAT number as written, such as GB101747696\n");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
                    name: [ | book.yaml:2: found text that is not YAML (expected the node content, but found '<stream end>'); expected 'setting: value' lines, such as country: GB
                    ``      | book.yaml: found no settings; expected 'setting: value' lines, such as country: GB
                    """)
    void settingsAreNotYaml(String yaml, String message) throws IOException {
        Files.writeString(book.resolve("book.yaml"), yaml.isEmpty() ? "" : yaml + "\n");
        assertThat(run("ledger")).isEqualTo(new Run(65, "", message + "\n"));
    }

    @Test
    void settingsAndProductsInAnotherEncoding() throws IOException {
        byte[] latin = "name: Café\n".getBytes(StandardCharsets.ISO_8859_1);
        Files.write(book.resolve("products.csv"), latin);
        assertThat(run("ledger"))
                .isEqualTo(
                        new Run(
                                65,
                                "",
                                "products.csv: found bytes that are not UTF-8; save the file as UTF-8\n"));
        Files.write(book.resolve("book.yaml"), latin);
        assertThat(run("ledger"))
                .isEqualTo(
                        new Run(
                                65,
                                "",
                                "book.yaml: found bytes that are not UTF-8; save the file as UTF-8\n"));
    }

    @Test
    void productsAreRefused() throws IOException {
        SmallBook.file(book, "products.csv", "product,liability,from,to\nA,nought,2024-01-01,\n");
        assertThat(run("return", "2026-09"))
                .isEqualTo(
                        new Run(
                                65,
                                "",
                                "products.csv:2 [liability]: found 'nought'; expected one of standard, reduced, zero, exempt, outside, margin, such as zero\n"));
    }

    @Test
    void ledgerIsMissingEmptyOrNotALedger() throws IOException {
        Path ledger = book.resolve("ledger.sqlite");
        byte[] whole = Files.readAllBytes(ledger);
        Files.delete(ledger);
        assertLedger(
                "BOOK/ledger.sqlite: the ledger is missing; put it back from a copy of the book");

        Files.write(ledger, new byte[0]);
        assertLedger(
                "BOOK/ledger.sqlite: the ledger is empty, without even its tables; put it back from a copy of the book");

        byte[] noise = new byte[5_000];
        new Random(2026).nextBytes(noise);
        Files.write(ledger, noise);
        assertLedger(
                "BOOK/ledger.sqlite: this is not a ledger; use a copy of the book ([SQLITE_NOTADB] File opened that is not a database file (file is not a database))");

        Files.write(ledger, Arrays.copyOf(whole, 9_000));
        assertLedger(
                "BOOK/ledger.sqlite: the ledger is damaged; use a copy of the book ([SQLITE_CORRUPT] The database disk image is malformed (database disk image is malformed))");

        Files.write(ledger, whole); // the copy of the book
        assertThat(run("ledger").code()).isZero();
    }

    @Test
    void filesThatAreNotThereOrAreNoFiles() {
        assertThat(run("import", folder.resolve("none.csv")).calling(folder, "FOLDER"))
                .isEqualTo(new Run(74, "", "FOLDER/none.csv: there is no such file\n"));
        assertThat(run("import", folder).calling(folder, "FOLDER"))
                .isEqualTo(
                        new Run(
                                0,
                                """
                                file         kind   layout       rows  entries  set aside  money
                                quarter.csv  mixed  plain-sheet     6        6          0         already there as source 1: nothing changed

                                Not read as reports:
                                  book  a book: its files are in it already
                                """,
                                ""));
    }

    @Test
    void productsAreNotCsv() throws IOException {
        SmallBook.file(book, "products.csv", "product,liability,from,to\n\"A\"B,zero,,\n");
        Run run = run("ledger");
        assertThat(run.code()).isEqualTo(65);
        assertThat(run.err()).startsWith("products.csv: found text that is not CSV (");
    }

    /** Papers that cannot be written do not undo the close; the message says how to get them. */
    @Test
    void placeOfThePapersIsTaken() throws IOException {
        Files.delete(book.resolve("papers"));
        SmallBook.file(book, "papers", "in the way");
        assertThat(run("papers", "2026-09").calling(book, "BOOK"))
                .isEqualTo(
                        new Run(
                                74,
                                "",
                                "A file cannot be read or written: BOOK/papers: something else of this name is in the way\n"));
        SmallBook.setAside(book, "E4/evidence-missing");
        assertThat(run("close", "2026-09").calling(book, "BOOK"))
                .isEqualTo(
                        new Run(
                                74,
                                "",
                                "2026-09 is closed, but its working papers could not be written: BOOK/papers: something else of this name is in the way. Put that right, then write them with: quarterfold papers 2026-09\n"));
        assertThat(Json.flat(run("return", "2026-09", "--json").out()))
                .containsEntry("status", "closed");

        Files.delete(book.resolve("papers"));
        assertThat(run("papers", "2026-09").code()).isZero();
        assertThat(book.resolve("papers/2026-09").toFile().list()).hasSize(4);
    }

    @Test
    void settingsAreNestedDeeperThanIsRead() throws IOException {
        Files.writeString(book.resolve("book.yaml"), "choices: " + "[".repeat(100_000));
        assertThat(run("ledger"))
                .isEqualTo(
                        new Run(
                                65,
                                "",
                                "book.yaml:1: found text that is not YAML (lists or keys within one another, more than 50 deep); expected 'setting: value' lines, such as country: GB\n"));
    }

    @Test
    void layoutOfTheBookIsAFolder() throws IOException {
        Files.createDirectory(book.resolve("layouts/mine.yaml"));
        assertThat(run("import", folder.resolve("quarter.csv")).calling(book, "BOOK"))
                .isEqualTo(
                        new Run(74, "", "BOOK: the layouts could not be read: Is a directory\n"));
    }

    /** A layout of the book's own that cannot be read is told before any file is entered. */
    @Test
    void layoutOfTheBookIsBroken() throws IOException {
        SmallBook.file(book.resolve("layouts"), "mine.yaml", "layout: [\n");
        Path other = SmallBook.file(folder, "other.csv", "date,kind,gross\n2026-07-03,sale,1.00\n");
        Run run = run("import", other);
        assertThat(run.code()).isEqualTo(65);
        assertThat(run.err()).startsWith("mine.yaml:2: found text that is not YAML");
        assertThat(run("ledger", "--json").out().lines()).hasSize(6);
    }

    private void assertLedger(String message) {
        Run expected = new Run(74, "", message + "\n");
        assertThat(run("return", "2026-09").calling(book, "BOOK")).isEqualTo(expected);
        assertThat(run("import", folder.resolve("quarter.csv")).calling(book, "BOOK"))
                .isEqualTo(expected);
    }

    private Run run(Object... args) {
        Object[] all = new Object[args.length + 2];
        all[0] = "--book";
        all[1] = book;
        System.arraycopy(args, 0, all, 2, args.length);
        return Run.of(all);
    }
}
