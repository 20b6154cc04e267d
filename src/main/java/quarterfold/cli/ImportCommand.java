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
import quarterfold.intake.ImportResult;
import quarterfold.intake.ImportResult.AlreadyThere;
import quarterfold.intake.ImportResult.Entered;
import quarterfold.intake.ImportResult.Refused;
import quarterfold.intake.Importer;
import quarterfold.intake.Repeated;

@Command(
        name = "import",
        description = {
            "Brings files into the book. Each file is entered whole or not at all, and its totals must tie.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  quarterfold --book my-book import settlement.csv suppliers.csv receipts.xlsx",
            "  quarterfold --book my-book import --layout expenses receipts.csv"
        },
        mixinStandardHelpOptions = true)
final class ImportCommand implements Callable<Integer> {

    private static final String ROW = "%-34s  %-27s  %9s  %9s  %9s  %16s  %s";

    @ParentCommand private Main main = new Main();
    @Spec private CommandSpec spec = CommandSpec.create();

    @Parameters(paramLabel = "FILE", arity = "1..*", description = "CSV, TSV or XLSX files")
    private List<Path> files = List.of();

    @Option(
            names = "--layout",
            paramLabel = "NAME",
            description = "how to read the files, where the header does not tell")
    private Optional<String> layout = Optional.empty();

    @Option(names = "--json", description = "for programs: JSON Lines, one file a line")
    private boolean json;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        boolean refused = false;
        try (OpenBook book = OpenBook.of(main)) {
            Importer importer = new Importer(book.book(), book.ledger());
            boolean first = true;
            for (Path file : files) {
                ImportResult result = importer.enter(file, layout);
                if (first && !json) {
                    out.println(
                            ROW.formatted(
                                            "file",
                                            "layout",
                                            "rows",
                                            "entries",
                                            "set aside",
                                            "money",
                                            "")
                                    .stripTrailing());
                }
                first = false;
                refused |= result instanceof Refused;
                if (json) {
                    out.println(ImportJson.of(result));
                } else {
                    print(result, out, spec.commandLine().getErr());
                }
                out.flush();
            }
        }
        return refused ? ExitCode.BAD_INPUT : ExitCode.DONE;
    }

    private static void print(ImportResult result, PrintWriter out, PrintWriter err) {
        if (result instanceof Refused refused) {
            row(refused, "", "refused: nothing was entered", out);
            refused.problems().forEach(p -> err.println(Texts.plain(p.toString())));
            if (refused.more() > 0) {
                err.printf(
                        "%s: and %s%n",
                        Texts.plain(refused.name()),
                        Texts.count(refused.more(), "more problem", "more problems"));
            }
        } else if (result instanceof AlreadyThere there) {
            row(
                    there,
                    "",
                    "already there as source %d: nothing changed".formatted(there.source().id()),
                    out);
        } else if (result instanceof Entered entered) {
            row(
                    entered,
                    Texts.money(entered.source().moneyEntered()),
                    "ties" + repeated(entered.repeated()),
                    out);
            entered.queries()
                    .forEach(
                            q ->
                                    err.printf(
                                            "%s: query: %s%n",
                                            Texts.plain(entered.name()),
                                            Texts.plain(q.question())));
        }
    }

    private static String repeated(Repeated repeated) {
        return repeated.rows() == 0
                ? ""
                : "; %s of earlier files, %s, entered once"
                        .formatted(
                                Texts.count(repeated.rows(), "row", "rows"),
                                Texts.money(repeated.money()));
    }

    private static void row(ImportResult result, String money, String outcome, PrintWriter out) {
        out.println(
                ROW.formatted(
                                Texts.cell(result.name(), 34),
                                Texts.cell(result.layout(), 27),
                                Texts.grouped(Long.toString(result.rowsRead())),
                                Texts.grouped(Long.toString(result.entries())),
                                Texts.grouped(Long.toString(result.setAside())),
                                money,
                                outcome)
                        .stripTrailing());
    }
}
