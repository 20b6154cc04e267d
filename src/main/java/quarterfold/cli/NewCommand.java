package quarterfold.cli;

import java.io.Console;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.Month;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import quarterfold.law.Law;
import quarterfold.law.VatNumber;
import quarterfold.ledger.Book;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.PaymentMethod;
import quarterfold.ledger.Periods;
import quarterfold.ledger.Schemes;
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

    private static final Pattern CURRENCY = Pattern.compile("[A-Z]{3}");
    private static final Pattern SETTING = Pattern.compile("^[^\\[]*\\[(\\w+)]:");

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
            description = "standard, cash or flat-rate; default: ${DEFAULT-VALUE}")
    private String scheme = "standard";

    @Option(
            names = "--flat-rate-sector",
            paramLabel = "ID",
            description = "the trade sector of the flat rate in flat-rates.csv, such as 044")
    private Optional<String> flatRateSector = Optional.empty();

    @Option(
            names = "--zone",
            paramLabel = "ZONE",
            defaultValue = "Europe/London",
            description = "whose days count; default: ${DEFAULT-VALUE}")
    private String zone = "Europe/London";

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
                        needed("--name", name, "the name of the business, such as Fernmoor Crafts"),
                        needed(
                                "--country",
                                country,
                                "the country it is established in, such as GB"),
                        needed("--vat-number", vatNumber, "the VAT number, such as GB101747696"),
                        Periods.of(
                                needed(
                                        "--registered-from",
                                        registeredFrom,
                                        "the day it was registered for VAT from, such as 2024-01-01",
                                        LocalDate::parse),
                                needed(
                                        "--period-ends",
                                        periodEnds,
                                        "the months periods end in, such as 3,6,9,12",
                                        NewCommand::months)),
                        Schemes.of(scheme, flatRateSector),
                        parsed(
                                "--zone",
                                zone,
                                "a time zone, such as Europe/London",
                                text -> ZoneId.of(text)),
                        currency,
                        perLine(),
                        northernIreland,
                        stock,
                        PaymentMethod.FASTER_PAYMENT,
                        Map.of());
        Book book = made(settings);
        String number = settings.vatNumber();
        spec.commandLine()
                .getOut()
                .printf(
                        "The book is in %s. Its settings are in book.yaml.%n",
                        Texts.folder(book.folder()));
        if (VatNumber.status(number, true) != VatNumber.Status.GB) {
            spec.commandLine()
                    .getErr()
                    .printf(
                            "Look at the VAT number: %s is not nine digits with the right check digits. It was kept as it is.%n",
                            Texts.plain(number));
        }
        return ExitCode.DONE;
    }

    /** Makes the book; a setting that is refused is told as the option that gave it. */
    private Book made(Settings settings) {
        String ofTheReturn = Law.of(OpenBook.COUNTRY).currency();
        if (CURRENCY.matcher(currency).matches() && !currency.equals(ofTheReturn)) {
            throw wrong(
                    "--currency", currency, "the currency of the return, such as " + ofTheReturn);
        }
        try {
            return Book.create(main.book(), settings);
        } catch (LedgerException e) {
            if (e.fault() != LedgerException.Fault.BAD_INPUT) {
                throw e;
            }
            throw new ParameterException(
                    spec.commandLine(),
                    e.getMessage()
                            .lines()
                            .map(SETTING::matcher)
                            .map(m -> m.replaceFirst(found -> "--" + option(found.group(1)) + ":"))
                            .collect(Collectors.joining(System.lineSeparator())));
        }
    }

    private static String option(String setting) {
        return setting.replace('_', '-');
    }

    private boolean perLine() {
        return switch (rounding) {
            case "per-line" -> true;
            case "per-box" -> false;
            default -> throw wrong("--rounding", rounding, "per-box or per-line");
        };
    }

    private String needed(String option, Optional<String> given, String expected) {
        return needed(option, given, expected, Function.identity());
    }

    /** What the option says, or else the terminal; there a slip is asked again. */
    private <T> T needed(
            String option, Optional<String> given, String expected, Function<String, T> parse) {
        if (given.isPresent()) {
            return parsed(option, given.get(), expected, parse);
        }
        for (Optional<String> text = ask(expected); text.isPresent(); text = ask(expected)) {
            try {
                return parse.apply(text.get().strip());
            } catch (IllegalArgumentException | DateTimeException e) {
                spec.commandLine()
                        .getErr()
                        .printf("found '%s'; expected %s%n", text.get(), expected);
            }
        }
        throw new ParameterException(
                spec.commandLine(),
                "%s: found nothing, and no terminal to ask on; expected %s"
                        .formatted(option, expected));
    }

    private <T> T parsed(String option, String text, String expected, Function<String, T> parse) {
        if (text.isBlank()) {
            throw wrong(option, text, expected);
        }
        try {
            return parse.apply(text.strip());
        } catch (IllegalArgumentException | DateTimeException e) {
            throw wrong(option, text, expected);
        }
    }

    // From JDK 22 the console is there without a terminal too; a closed input then answers nothing.
    @SuppressWarnings("SystemConsoleNull")
    private static Optional<String> ask(String question) {
        Console console = System.console();
        return console == null
                ? Optional.empty()
                : Optional.ofNullable(
                                console.readLine(
                                        "%s: ",
                                        question.substring(0, 1).toUpperCase(Locale.ROOT)
                                                + question.substring(1)))
                        .filter(t -> !t.isBlank());
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
