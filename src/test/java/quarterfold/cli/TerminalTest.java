package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Text out of files is shown as text: nothing in it commands the terminal. */
class TerminalTest {

    /**
     * Colour, title and clear by ESC; CSI as one character; DEL; a turn of the reading direction.
     */
    private static final String EVIL =
            "\u001b[31mRed\u001b]0;title\u0007\u001b[2J\u009b31m\u007f\u0085\u202etxt\u2028end";

    private static final String SHEET =
            """
            date,kind,document,party,description,product,order,category,gross,rate,evidence,channel,settlement,X
            2026-07-03,expense,X,X,X,X,X,X,24.00,20,missing,X,,X
            2026-07-03,fee,X,,X,,X,,24.00,,,X,X,X
            """
                    .replace("X", EVIL);

    @TempDir private static Path folder;
    private static Path book = Path.of("");
    private static Path sheet = Path.of("");

    @BeforeAll
    static void makesTheBook() throws IOException {
        book = SmallBook.empty(folder);
        sheet = SmallBook.file(folder, "evil\u001b[31m\u009b31m.csv", SHEET);
        Run entered = Run.of("--book", book, "import", sheet);
        assertThat(entered.code()).as(entered.err()).isZero();
        assertHarmless(entered);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "ledger",
                "ledger --json",
                "queries 2026-09",
                "queries 2026-09 --json",
                "return 2026-09",
                "vouch 1",
                "vouch 2",
                "vouch 2026-09 --box 7",
                "close 2026-12"
            })
    void commandIsHarmless(String command) {
        Object[] args = ("--book BOOK " + command).split(" ", -1);
        args[1] = book.toString();
        Run run = Run.of(args);
        assertThat(run.out() + run.err()).isNotEmpty();
        assertHarmless(run);
    }

    @Test
    void textIsThereAllTheSame() {
        assertThat(Run.of("--book", book, "vouch", "1").out())
                .contains("  Party                  [31mRed ]0;title  [2J 31m   txt end\n")
                .contains("evil [31m 31m.csv, row 2\n");
        assertThat(
                        Json.flat(
                                Run.of("--book", book, "ledger", "--json")
                                        .out()
                                        .lines()
                                        .toList()
                                        .get(0)))
                .containsEntry("party", EVIL)
                .containsEntry("source/file", sheet.getFileName().toString());
    }

    @Test
    void importsAreHarmless() throws IOException {
        assertHarmless(Run.of("--book", book, "import", sheet));
        assertHarmless(Run.of("--book", book, "import", "--json", sheet));
        for (String bad :
                List.of(
                        "date,kind,gross\nX,X,X\n",
                        "date,kind,gross,X\n2026-07-01,sale\n",
                        "X,X\n",
                        "date,kind,gross,rate,currency\n2026-07-01,sale,1.00,X,X\n")) {
            Path file = SmallBook.file(folder, "bad\u001b[2J\u009b2J.csv", bad.replace("X", EVIL));
            for (String option : List.of("--json", "--layout=plain-sheet")) {
                Run run = Run.of("--book", book, "import", option, file);
                assertThat(run.code()).isEqualTo(65);
                assertHarmless(run);
            }
        }
        assertHarmless(Run.of("--book", book, "import", folder.resolve("none\u001b[31m.csv")));
    }

    @Test
    void settingsAreHarmless(@TempDir Path other) throws IOException {
        Path named = SmallBook.empty(other);
        Path yaml = named.resolve("book.yaml");
        String text = Files.readString(yaml);
        Files.writeString(yaml, text.replace("\"Fernmoor Crafts\"", "\"Red\\x1b[31m\\u009b31m\""));
        Run run = Run.of("--book", named, "return", "2026-09");
        assertThat(run.out()).startsWith("Red [31m 31m, GB101747696\n");
        assertHarmless(run);

        Files.writeString(
                yaml, text.replaceFirst("(?m)^rounding: .*", "rounding: \"up\\\\x1b[31m\""));
        Run refused = Run.of("--book", named, "return", "2026-09");
        assertThat(refused.code()).isEqualTo(65);
        assertHarmless(refused);
    }

    private static void assertHarmless(Run run) {
        assertThat(run.out() + run.err()).doesNotContainPattern("[\\p{Cc}&&[^\\n]]");
        if (!run.out().startsWith("{")) { // JSON is for programs, which need the text as it is
            assertThat(run.out() + run.err()).doesNotContainPattern("[\\p{Cf}\\p{Zl}\\p{Zp}]");
        }
    }
}
