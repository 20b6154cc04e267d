package quarterfold.cli;

import java.io.Console;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.Month;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Function;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import quarterfold.law.VatNumber;
import quarterfold.ledger.Book;
import quarterfold.ledger.Settings;

@Command(
        name = "new",
        description = {
            "Makes a book: a folder with its settings and an empty ledger. Asks on a terminal for what no option"
                    + " says.",
            ""
        },
        footer = {
            "",
            "Example:",
            "  quarterfold --book my-book new --name \"Anne's Shop Ltd\" --country GB \\",
            "    --vat-number GB101747696 --registered-from 2024-01-01 --period-ends 3,6,9,12"
        },
        mixinStandardHelpOptions = true)
final class NewCommand implements Callable<Integer> {

    @ParentCommand private Main main = new Main();
    @Spec private CommandSpec spec = CommandSpec.create();

    @Option(
            names = "--name",
            paramLabel = "NAME",
            description = "the business, as it stands on the papers")
    private Optional<String> name = Optional.empty();

    @Option(
            names = "--country",
            paramLabel = "CC",
            description = "where the business is established, such as GB")
    private Optional<String> country = Optional.empty();

    @Option(names = "--vat-number", paramLabel = "NUMBER", description = "such as GB101747696")
    private Optional<String> vatNumber = Optional.empty();

    @Option(names = "--registered-from", paramLabel = "DATE", description = "such as 2024-01-01")
    private Optional<String> registeredFrom = Optional.empty();

    @Option(
            names = "--period-ends",
            paramLabel = "MONTHS",
            description = "the months periods end in, such as 3,6,9,12")
    private Optional<String> periodEnds = Optional.empty();

    @Option(
            names = "--scheme",
            paramLabel = "SCHEME",
            defaultValue = "standard",
            description = "default: ${DEFAULT-VALUE}")
    private String scheme = "standard";

    @Option(
            names = "--zone",
            paramLabel = "ZONE",
            defaultValue = "Europe/London",
            description = "whose days count; default: ${DEFAULT-VALUE}")
    private ZoneId zone = ZoneId.of("Europe/London");

    @Option(
            names = "--currency",
            paramLabel = "CUR",
            defaultValue = "GBP",
            description = "default: ${DEFAULT-VALUE}")
    private String currency = "GBP";

    @Option(
            names = "--rounding",
            paramLabel = "WAY",
            defaultValue = "per-box",
            description = "per-box or per-line; default: ${DEFAULT-VALUE}")
    private String rounding = "per-box";

    @Option(
            names = "--northern-ireland",
            description = "goods are traded in or through Northern Ireland")
    private boolean northernIreland;

    @Option(
            names = "--stock",
            paramLabel = "CC",
            defaultValue = "GB",
            description =
                    "where goods are sent from when a file does not say; default: ${DEFAULT-VALUE}")
    private String stock = "GB";

    @Override
    public Integer call() {
        Settings settings =
                new Settings(
                        needed("--name", name, "Name of the business", Function.identity()),
                        needed(
                                "--country",
                                country,
                                "Country where it is established, such as GB",
                                Function.identity()),
                        needed(
                                "--vat-number",
                                vatNumber,
                                "VAT number, such as GB101747696",
                                Function.identity()),
                        needed(
                                "--registered-from",
                                registeredFrom,
                                "Registered for VAT from, such as 2024-01-01",
                                LocalDate::parse),
                        needed(
                                "--period-ends",
                                periodEnds,
                                "Months periods end in, such as 3,6,9,12",
                                NewCommand::months),
                        scheme,
                        zone,
                        currency,
                        perLine(),
                        northernIreland,
                        stock,
                        Map.of());
        String number = settings.vatNumber();
        Book book = Book.create(main.book(), settings);
        spec.commandLine()
                .getOut()
                .printf("The book is in %s. Its settings are in book.yaml.%n", book.folder());
        if (VatNumber.status(number, true) != VatNumber.Status.GB) {
            spec.commandLine()
                    .getErr()
                    .printf(
                            "Look at the VAT number: %s is not nine digits with the right check digits. It was kept as it is.%n",
                            number);
        }
        return ExitCode.DONE;
    }

    private boolean perLine() {
        return switch (rounding) {
            case "per-line" -> true;
            case "per-box" -> false;
            default -> throw wrong("--rounding", rounding, "per-box or per-line");
        };
    }

    /** What the option says, or else the terminal; there a slip is asked again. */
    private <T> T needed(
            String option, Optional<String> given, String question, Function<String, T> parse) {
        Optional<String> text = given.or(() -> ask(question));
        while (text.isPresent()) {
            try {
                return parse.apply(text.get().strip());
            } catch (DateTimeException | NumberFormatException e) {
                if (given.isPresent()) {
                    throw wrong(option, text.get(), question);
                }
                text = ask(question);
            }
        }
        throw wrong(option, "", question);
    }

    // From JDK 22 the console is there without a terminal too; a closed input then answers nothing.
    @SuppressWarnings("SystemConsoleNull")
    private static Optional<String> ask(String question) {
        Console console = System.console();
        return console == null
                ? Optional.empty()
                : Optional.ofNullable(console.readLine("%s: ", question)).filter(t -> !t.isBlank());
    }

    private ParameterException wrong(String option, String found, String expected) {
        return new ParameterException(
                spec.commandLine(),
                "%s: found '%s'; expected %s".formatted(option, found, expected));
    }

    private static List<Month> months(String text) {
        return Arrays.stream(text.split(",", -1))
                .map(m -> Month.of(Integer.parseInt(m.strip())))
                .sorted()
                .toList();
    }
}
