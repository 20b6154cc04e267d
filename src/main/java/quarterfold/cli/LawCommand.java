package quarterfold.cli;

import java.io.PrintWriter;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import quarterfold.law.Law;
import quarterfold.law.LawWords;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.LedgerException.Fault;
import quarterfold.papers.LawPages;

@Command(
        name = "law",
        description = {
            "Shows the law the program uses, in words with days and sources: all of it, one table, one rule, or what"
                    + " is in force on a day. Needs no book.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  quarterfold law",
            "  quarterfold law --rule S17a",
            "  quarterfold law --table rates",
            "  quarterfold law --table limits --day 2024-03-31"
        },
        mixinStandardHelpOptions = true)
final class LawCommand implements Callable<Integer> {

    @Spec private CommandSpec spec = CommandSpec.create();

    @ArgGroup(exclusive = true, multiplicity = "0..1")
    private Part part = new Part();

    @Option(
            names = "--day",
            paramLabel = "DATE",
            description = "only the rows in force on this day, such as 2026-09-30")
    private Optional<String> day = Optional.empty();

    @Option(names = "--json", description = "for programs: JSON Lines, one row of a table a line")
    private boolean json;

    /** What of the law is shown; all of it where neither is given. */
    static final class Part {
        @Option(
                names = "--table",
                paramLabel = "NAME",
                description = "one table, such as rates or limits")
        private Optional<String> table = Optional.empty();

        @Option(
                names = "--rule",
                paramLabel = "ID",
                description = "one rule of the treatments, such as S17a")
        private Optional<String> rule = Optional.empty();
    }

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        Law law = Law.of(OpenBook.COUNTRY);
        LawWords words = LawWords.of(OpenBook.COUNTRY);
        LawPages pages = new LawPages(law, words, day.map(LawCommand::day));
        if (part.rule.isPresent()) {
            String rule = part.rule.get();
            Optional<String> text =
                    json ? pages.ruleJson(rule).map(t -> t + "\n") : pages.rule(rule);
            out.print(text.orElseThrow(() -> noRule(rule, law)));
        } else if (part.table.isPresent() && !knows(pages, part.table.get())) {
            throw noTable(part.table.get(), pages);
        } else if (json) {
            pages.json(part.table).forEach(out::println);
        } else {
            out.print(part.table.flatMap(pages::table).orElseGet(pages::whole));
        }
        return ExitCode.DONE;
    }

    private static LocalDate day(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException e) {
            throw new LedgerException(
                    Fault.USAGE,
                    "--day: found '%s'; expected a day such as 2026-09-30".formatted(text));
        }
    }

    private static boolean knows(LawPages pages, String table) {
        return pages.table(table).isPresent();
    }

    private static LedgerException noTable(String table, LawPages pages) {
        return new LedgerException(
                Fault.USAGE,
                "--table: found '%s'; expected one of %s, such as rates"
                        .formatted(
                                table,
                                pages.tables().stream()
                                        .map(n -> n.replace(".csv", ""))
                                        .sorted()
                                        .collect(Collectors.joining(", "))));
    }

    /** There is no such rule at all, or none on the day asked for. */
    private LedgerException noRule(String rule, Law law) {
        return new LedgerException(
                Fault.USAGE,
                law.treatments()
                        .rule(rule)
                        .map(
                                r ->
                                        "--rule: %s is not in force on %s, which --day asks for; leave --day out to see it"
                                                .formatted(rule, day.orElse("")))
                        .orElseGet(
                                () ->
                                        "--rule: found '%s'; expected a rule of treatments.csv, such as S17a"
                                                .formatted(rule)));
    }
}
