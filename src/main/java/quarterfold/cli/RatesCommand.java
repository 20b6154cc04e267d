package quarterfold.cli;

import java.io.PrintWriter;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.regex.Pattern;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import quarterfold.ledger.HeldRate;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.LedgerException.Fault;
import quarterfold.ledger.PublishedRate;
import quarterfold.papers.RatesJson;
import quarterfold.treatment.Context;

@Command(
        name = "rates",
        description = {
            "Lists the exchange rates the book holds, each with the file and row it stands in. Rates come in by"
                    + " import, as their publishers' own files.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  quarterfold --book my-book rates --currency EUR",
            "  quarterfold --book my-book rates --month 2026-08"
        },
        mixinStandardHelpOptions = true)
final class RatesCommand implements Callable<Integer> {

    private static final String ROW = "%-8s  %16s  %-7s  %-17s  %-10s  %-10s  %s";
    private static final Pattern CURRENCY = Pattern.compile("[A-Z]{3}");

    @ParentCommand private Main main = new Main();
    @Spec private CommandSpec spec = CommandSpec.create();

    @Option(names = "--currency", paramLabel = "CODE", description = "only this one, such as EUR")
    private Optional<String> currency = Optional.empty();

    @Option(
            names = "--month",
            paramLabel = "MONTH",
            description = "only what holds in this month, such as 2026-08")
    private Optional<String> month = Optional.empty();

    @Option(names = "--json", description = "for programs: JSON Lines, one rate a line")
    private boolean json;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        currency.filter(c -> !CURRENCY.matcher(c).matches())
                .ifPresent(c -> refuse("--currency", c, "three capital letters, such as EUR"));
        Optional<YearMonth> wanted = month.map(RatesCommand::month);
        try (OpenBook book = OpenBook.of(main)) {
            Context.Files files = Texts.files(book.ledger().sources());
            List<HeldRate> rates =
                    book.ledger().rates().all().stream()
                            .filter(h -> currency.map(h.rate().currency()::equals).orElse(true))
                            .filter(h -> wanted.map(m -> isIn(h.rate(), m)).orElse(true))
                            .toList();
            if (json) {
                rates.forEach(h -> out.println(RatesJson.of(h, files.name(h.source()))));
            } else if (rates.isEmpty()) {
                out.println(
                        currency.isEmpty() && month.isEmpty()
                                ? "No exchange rate is held."
                                : "No such exchange rate is held.");
            } else {
                print(rates, files, out);
            }
        }
        return ExitCode.DONE;
    }

    private static YearMonth month(String text) {
        if (!text.matches("[0-9]{4}-(0[1-9]|1[0-2])")) {
            refuse("--month", text, "a month, such as 2026-08");
        }
        return YearMonth.parse(text);
    }

    private static void refuse(String option, String found, String expected) {
        throw new LedgerException(
                Fault.USAGE,
                "%s: found '%s'; expected %s".formatted(option, Texts.cell(found, 60), expected));
    }

    private static boolean isIn(PublishedRate rate, YearMonth month) {
        return !rate.last().isBefore(month.atDay(1)) && !rate.first().isAfter(month.atEndOfMonth());
    }

    private static void print(List<HeldRate> rates, Context.Files files, PrintWriter out) {
        out.println(
                ROW.formatted(
                        "currency",
                        "units",
                        "for one",
                        "published by",
                        "from",
                        "to",
                        "file and row"));
        for (HeldRate held : rates) {
            PublishedRate rate = held.rate();
            out.println(
                    ROW.formatted(
                            rate.currency(),
                            rate.units().toPlainString(),
                            rate.publisher().base(),
                            rate.publisher().words(),
                            rate.first(),
                            rate.last(),
                            Texts.cell(files.name(held.source()), 60) + " row " + rate.row()));
        }
    }
}
