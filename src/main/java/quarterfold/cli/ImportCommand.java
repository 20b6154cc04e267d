package quarterfold.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import quarterfold.intake.Delivery;
import quarterfold.intake.ImportResult;
import quarterfold.intake.ImportResult.Entered;
import quarterfold.intake.ImportResult.Refused;
import quarterfold.intake.Stop;
import quarterfold.intake.Watch;

@Command(
        name = "import",
        description = {
            "Brings files into the book, also all those in a folder or a ZIP. Each file is entered whole or"
                    + " not at all, and its totals must tie.",
            ""
        },
        footer = {
            "",
            "A list of receipts may name each receipt's picture or PDF in a column file: it is kept with",
            "the entry. What is no report is passed over, and listed.",
            "",
            "Examples:",
            "  quarterfold --book my-book import settlement.csv suppliers.csv receipts.xlsx",
            "  quarterfold --book my-book import quarter/ receipts.zip",
            "  quarterfold --book my-book import --layout expenses receipts.csv"
        },
        mixinStandardHelpOptions = true)
final class ImportCommand implements Callable<Integer> {

    @ParentCommand private Main main = new Main();
    @Spec private CommandSpec spec = CommandSpec.create();

    @Parameters(paramLabel = "FILE", arity = "1..*", description = "files, folders and ZIPs")
    private List<Path> files = List.of();

    @Option(
            names = "--layout",
            paramLabel = "NAME",
            description = "how to read the files, where the header does not tell")
    private Optional<String> layout = Optional.empty();

    @Option(names = "--json", description = "for programs: JSON Lines, one file a line")
    private boolean json;

    private final ImportTable table = new ImportTable();

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        PrintWriter err = spec.commandLine().getErr();
        Watch watch = json ? Watch.NOBODY : ProgressBar.on(err);
        Stop stop = new Stop();
        try (Interruption interruption =
                Interruption.of(
                        stop,
                        outcome -> {
                            watch.end();
                            err.println(Texts.plain(outcome));
                        })) {
            try {
                bringIn(watch, stop, out, err);
            } catch (Stop.Stopped e) {
                interruption.tell(String.valueOf(e.getMessage()));
                return ExitCode.INTERRUPTED;
            } finally {
                watch.wipe();
                if (!json) {
                    table.print(out); // also of the files before one that stopped everything
                    out.flush();
                }
            }
        }
        return table.refused() ? ExitCode.BAD_INPUT : ExitCode.DONE;
    }

    private void bringIn(Watch watch, Stop stop, PrintWriter out, PrintWriter err) {
        try (OpenBook book = OpenBook.of(main)) {
            table.home(book.book().settings().currency());
            new Delivery(book.book(), book.ledger(), watch, stop)
                    .enter(
                            files,
                            layout,
                            result -> {
                                watch.wipe();
                                table.add(result);
                                if (json) {
                                    out.println(ImportJson.of(result));
                                    out.flush();
                                } else {
                                    tell(result, err);
                                }
                            });
        }
    }

    private static void tell(ImportResult result, PrintWriter err) {
        if (result instanceof Refused refused) {
            refused.problems().forEach(p -> err.println(Texts.plain(p.toString())));
            if (refused.more() > 0) {
                err.printf(
                        "%s: and %s%n",
                        Texts.plain(refused.name()),
                        Texts.count(refused.more(), "more problem", "more problems"));
            }
        } else if (result instanceof Entered entered) {
            entered.queries()
                    .forEach(
                            q ->
                                    err.printf(
                                            "%s: query: %s%n",
                                            Texts.plain(entered.name()),
                                            Texts.plain(q.question())));
        }
    }
}
