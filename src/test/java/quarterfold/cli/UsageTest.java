package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Wrong usage: exit code 2, and the whole message says what was found and what was expected. */
class UsageTest {

    @TempDir private static Path folder;
    private static Path book = Path.of("");

    @BeforeAll
    static void makesTheBook() throws IOException {
        book = SmallBook.quarter(folder);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
                    return 2026-9                 | PERIOD: found '2026-9'; expected the last month of a period, such as 2026-09
                    return 2026-13                | PERIOD: found '2026-13'; expected the last month of a period, such as 2026-09
                    return September              | PERIOD: found 'September'; expected the last month of a period, such as 2026-09
                    return +999999999-12          | PERIOD: found '+999999999-12'; expected the last month of a period, such as 2026-09
                    return 2026-10                | PERIOD: found 2026-10; expected a month in which a period of this book ends (March, June, September, December, from 2024-01-01)
                    queries 2023-12               | PERIOD: found 2023-12; expected a month in which a period of this book ends (March, June, September, December, from 2024-01-01)
                    close 2026-08                 | PERIOD: found 2026-08; expected a month in which a period of this book ends (March, June, September, December, from 2024-01-01)
                    papers 2026/09                | PERIOD: found '2026/09'; expected the last month of a period, such as 2026-09
                    vouch 2026-09                 | --box: found nothing; expected a box of the return, such as 4
                    vouch 2026-09 --box 10        | --box: found '10'; expected a box of the return, such as 4
                    vouch 2026-09 --box four      | --box: found 'four'; expected a box of the return, such as 4
                    vouch 3 --box 4               | PERIOD: found '3'; expected the last month of a period, such as 2026-09
                    vouch 7                       | ENTRY: found 7; expected the number of an entry, 1 to 6
                    vouch 0                       | ENTRY: found 0; expected the number of an entry, 1 to 6
                    vouch 99999999999999999999    | ENTRY: found 99999999999999999999; expected the number of an entry, 1 to 6
                    vouch -1                      | PERIOD: found '-1'; expected the last month of a period, such as 2026-09
                    vouch                         | `Missing required parameter: 'PERIOD|ENTRY'¶Help: quarterfold vouch --help`
                    return                        | Missing required parameter: 'PERIOD'¶Help: quarterfold return --help
                    return 2026-09 2026-12        | Unmatched argument at index 4: '2026-12'¶Help: quarterfold return --help
                    import                        | Missing required parameter: 'FILE'¶Help: quarterfold import --help
                    import --layout mine x.csv    | --layout: found 'mine'; expected one of camt.053, daily-rates, duty-deferment-statement-pdf, duty-deferment-statements, e-invoice, expenses, import-vat-certificate-pdf, import-vat-certificates, monthly-rates, norrowby-orders, plain-sheet, postponed-import-statement-pdf, postponed-import-statements, quaylark-statement, supplier-invoices, such as plain-sheet
                    imprt                         | Unmatched argument at index 2: 'imprt'¶Did you mean: quarterfold import?¶Help: quarterfold --help
                    ledger --jsn                  | Unknown option: '--jsn'¶Possible solutions: --json¶Help: quarterfold ledger --help
                    """)
    void told(String command, String message) {
        assertThat(run((Object[]) command.split(" ", -1)))
                .isEqualTo(new Run(2, "", message.replace('¶', '\n') + "\n"));
    }

    @Test
    void withoutACommand() {
        assertThat(Run.of())
                .isEqualTo(
                        new Run(
                                2,
                                "",
                                """
                                Missing a command, such as: quarterfold demo
                                Help: quarterfold --help
                                """));
    }

    @Test
    void withoutABook() {
        Path nowhere = folder.resolve("nowhere");
        for (String command : List.of("return 2026-09", "ledger", "vouch 1", "import x.csv")) {
            List<Object> args = new ArrayList<>(List.of("--book", nowhere));
            args.addAll(List.of(command.split(" ", -1)));
            assertThat(Run.of(args.toArray()).calling(nowhere, "NOWHERE"))
                    .isEqualTo(
                            new Run(
                                    2,
                                    "",
                                    "NOWHERE: there is no book here (no book.yaml); name the book's folder with"
                                            + " --book, or make one with new\n"));
        }
        assertThat(Run.of("return", "2026-09").err())
                .isEqualTo(
                        "this folder: there is no book here (no book.yaml); name the book's folder with"
                                + " --book, or make one with new\n");
    }

    @ParameterizedTest(name = "{0} {1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
                    --rounding        | up         | --rounding: found 'up'; expected per-box or per-line
                    --period-ends     | 13         | --period-ends: found '13'; expected the months periods end in, such as 3,6,9,12
                    --period-ends     | 3,x        | --period-ends: found '3,x'; expected the months periods end in, such as 3,6,9,12
                    --period-ends     | 3,3        | --period-ends: found '[3, 3]'; expected months from 1 to 12, rising, such as [3, 6, 9, 12]
                    --registered-from | 2024-02-30 | --registered-from: found '2024-02-30'; expected the day it was registered for VAT from, such as 2024-01-01
                    --registered-from | 01/02/2024 | --registered-from: found '01/02/2024'; expected the day it was registered for VAT from, such as 2024-01-01
                    --country         | Britain    | --country: found 'Britain'; expected two capital letters, ISO 3166, such as GB
                    --country         | gb         | --country: found 'gb'; expected two capital letters, ISO 3166, such as GB
                    --stock           | ZZ         | --stock: found 'ZZ'; expected two capital letters, ISO 3166, or XI for Northern Ireland, such as GB
                    --zone            | Mars       | --zone: found 'Mars'; expected a time zone, such as Europe/London
                    --currency        | EUR        | --currency: found 'EUR'; expected the currency of the return, such as GBP
                    --currency        | pounds     | --currency: found 'pounds'; expected three capital letters, ISO 4217, such as GBP
                    --scheme          | flat       | --scheme: found 'flat'; expected standard, cash or flat-rate, or first days with one of them each, such as {2024-01-01: standard, 2026-07-01: cash}
                    --scheme          | flat-rate  | --flat-rate-sector: found nothing; expected the trade sector of the flat rate by its id in flat-rates.csv, such as "044"
                    --name            | ` `        | --name: found ' '; expected the name of the business, such as Fernmoor Crafts
                    --vat-number      | ``         | --vat-number: found ''; expected the VAT number, such as GB101747696
                    """)
    void newRefusesASetting(String option, String value, String message) {
        Path none = folder.resolve("none");
        assertThat(Run.of(settings(none, option, value)))
                .isEqualTo(new Run(2, "", message + "\nHelp: quarterfold new --help\n"));
        assertThat(none).doesNotExist();
    }

    /** No terminal is there to ask on; nothing may be guessed. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    --vat-number      | the VAT number, such as GB101747696
                    --name            | the name of the business, such as Fernmoor Crafts
                    --country         | the country it is established in, such as GB
                    --registered-from | the day it was registered for VAT from, such as 2024-01-01
                    --period-ends     | the months periods end in, such as 3,6,9,12
                    """)
    void newWithoutATerminalNeedsEveryOption(String option, String expected) throws Exception {
        Path none = folder.resolve("none");
        assertThat(Run.of(settings(none, option)))
                .isEqualTo(
                        new Run(
                                2,
                                "",
                                "%s: found nothing, and no terminal to ask on; expected %s\nHelp: quarterfold new --help\n"
                                        .formatted(option, expected)));
        assertThat(none).doesNotExist();
    }

    @Test
    void newTellsEverySettingThatIsWrong() {
        assertThat(
                        Run.of(
                                        settings(
                                                folder.resolve("none"),
                                                "--country",
                                                "ZZ",
                                                "--currency",
                                                "q"))
                                .err())
                .isEqualTo(
                        """
                        --country: found 'ZZ'; expected two capital letters, ISO 3166, such as GB
                        --currency: found 'q'; expected three capital letters, ISO 4217, such as GBP
                        Help: quarterfold new --help
                        """);
    }

    @Test
    void newForTheFlatRate(@TempDir Path other) throws IOException {
        Path made = other.resolve("book");
        assertThat(
                        Run.of(settings(made, "--scheme", "flat-rate", "--flat-rate-sector", "044"))
                                .code())
                .isZero();
        assertThat(Files.readString(made.resolve("book.yaml")))
                .contains("\nscheme: \"flat-rate\"\n")
                .contains("\nflat_rate_sector: \"044\"\n");
        assertThat(Run.of("--book", made, "return", "2026-09").code()).isZero();
    }

    @Test
    void newDoesNotTakeTheFolderOfAnotherBook() throws IOException {
        String before = Files.readString(book.resolve("book.yaml"));
        assertThat(Run.of(settings(book)).calling(book, "BOOK"))
                .isEqualTo(
                        new Run(
                                2,
                                "",
                                "BOOK: there is a book here already (book.yaml); name another folder with --book\n"));
        assertThat(book.resolve("book.yaml")).hasContent(before);
    }

    /** T-901: wrong check digits are a warning; 101747697 is one off the valid 101747696. */
    @ParameterizedTest
    @CsvSource({"GB101747697", "GB10174769", "FR12345678901"})
    void newWarnsOfAVatNumberAndKeepsIt(String number, @TempDir Path other) throws IOException {
        Path warned = other.resolve("book");
        assertThat(Run.of(settings(warned, "--vat-number", number)).calling(warned, "BOOK"))
                .isEqualTo(
                        new Run(
                                0,
                                "The book is in BOOK. Its settings are in book.yaml.\n",
                                "Look at the VAT number: %s is not nine digits with the right check digits. It was kept as it is.\n"
                                        .formatted(number)));
        assertThat(Files.readString(warned.resolve("book.yaml"))).contains(number);
    }

    @Test
    void newSaysNothingOfAGoodVatNumber(@TempDir Path other) {
        Path made = other.resolve("book");
        assertThat(Run.of(settings(made)).calling(made, "BOOK"))
                .isEqualTo(new Run(0, "The book is in BOOK. Its settings are in book.yaml.\n", ""));
        assertThat(made.toFile().list())
                .containsExactlyInAnyOrder(
                        "book.yaml", "ledger.sqlite", "layouts", "papers", "sources");
    }

    /** The command that makes a book, with options changed; an option alone is left out. */
    private static Object[] settings(Path where, String... changed) {
        List<Object> args = new ArrayList<>(List.of("--book", where, "new"));
        List<String> standard =
                List.of(
                        "--name",
                        "A",
                        "--country",
                        "GB",
                        "--vat-number",
                        "GB101747696",
                        "--registered-from",
                        "2024-01-01",
                        "--period-ends",
                        "3,6,9,12");
        List<String> names = List.of(changed);
        for (int i = 0; i < standard.size(); i += 2) {
            if (!names.contains(standard.get(i))) {
                args.addAll(standard.subList(i, i + 2));
            }
        }
        if (changed.length > 1) {
            args.addAll(names);
        }
        return args.toArray();
    }

    private static Run run(Object... args) {
        List<Object> all = new ArrayList<>(List.of("--book", book));
        all.addAll(List.of(args));
        return Run.of(all.toArray());
    }

    /** A name that begins with @ is a file like any other, not a list of words for the command. */
    @Test
    void fileWhoseNameBeginsWithAt() throws IOException {
        String name = "@" + SmallBook.file(folder, "words.txt", "--help");
        assertThat(Run.of("--book", book, "import", name))
                .isEqualTo(new Run(74, "", name + ": there is no such file\n"));
    }

    @Test
    void outputThatCannotBeWrittenIsNoSuccess() {
        StringWriter err = new StringWriter();
        Writer full =
                new Writer() {
                    @Override
                    public void write(char[] text, int from, int length) throws IOException {
                        throw new IOException("no space left");
                    }

                    @Override
                    public void flush() {}

                    @Override
                    public void close() {}
                };
        int code =
                Main.run(
                        new PrintWriter(full),
                        new PrintWriter(err, true),
                        "--book",
                        book.toString(),
                        "ledger");
        assertThat(code).isEqualTo(74);
        assertThat(err)
                .hasToString("The output could not be written whole." + System.lineSeparator());
    }

    /** A folder may bear a command's name. */
    @Test
    void aBookMayBeNamedLikeACommand() {
        assertThat(Run.of("--book", "demo", "return", "2026-09").err())
                .doesNotContain("Expected parameter")
                .contains("there is no book here");
    }
}
