package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

/** Every command explains itself, and the examples it gives are commands. */
class HelpTest {

    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

    static Stream<String> commands() {
        return new CommandLine(new Main()).getSubcommands().keySet().stream();
    }

    @Test
    void commandsAreTheseAndTheMainHelpNamesThem() {
        List<String> commands = commands().toList();
        assertThat(commands)
                .containsExactlyInAnyOrder(
                        "new",
                        "import",
                        "learn",
                        "ledger",
                        "rates",
                        "queries",
                        "decide",
                        "decisions",
                        "verify",
                        "return",
                        "close",
                        "vouch",
                        "papers",
                        "deadlines",
                        "law",
                        "demo");
        Run help = Run.of("--help");
        assertThat(help.code()).isZero();
        assertThat(help.err()).isEmpty();
        commands.forEach(c -> assertThat(help.out()).containsPattern("\n  " + c + " +[A-Z]"));
        assertThat(help.out()).contains("Exit codes:\n").contains("nothing is filed or\nsent.");
        assertThat(examples(help.out())).hasSize(6).allSatisfy(HelpTest::isCommand);
    }

    @ParameterizedTest
    @MethodSource("commands")
    void helpHasExamplesThatAreCommands(String command) {
        Run help = Run.of(command, "--help");
        assertThat(help.code()).isZero();
        assertThat(help.err()).isEmpty();
        assertThat(help.out()).startsWith("Usage: quarterfold " + command).contains("\nExample");
        assertThat(examples(help.out()))
                .isNotEmpty()
                .allSatisfy(example -> assertThat(example).contains(command))
                .allSatisfy(HelpTest::isCommand);
    }

    @Test
    void version() {
        Run version = Run.of("--version");
        assertThat(version.code()).isZero();
        assertThat(version.out()).startsWith("quarterfold ");
    }

    /** The examples, a line each, without what a shell would do with them. */
    private static List<String> examples(String help) {
        return help.replace("\\\n", " ")
                .lines()
                .map(line -> line.replaceFirst("^To see one at work: ", "  "))
                .filter(line -> line.startsWith("  quarterfold "))
                .map(line -> line.replaceFirst("\\|.*", "").strip())
                .toList();
    }

    private static void isCommand(String example) {
        String[] words =
                WORD.matcher(example)
                        .results()
                        .map(HelpTest::word)
                        .skip(1) // quarterfold
                        .toArray(String[]::new);
        CommandLine.ParseResult parsed = new CommandLine(new Main()).parseArgs(words);
        assertThat(parsed.hasSubcommand()).as(Arrays.toString(words)).isTrue();
    }

    private static String word(MatchResult found) {
        return found.group(1) == null ? found.group(2) : found.group(1);
    }
}
