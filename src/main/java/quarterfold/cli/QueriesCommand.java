package quarterfold.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import quarterfold.papers.QueryJson;
import quarterfold.period.VatReturn;

@Command(
        name = "queries",
        description = {
            "Lists the questions a person must answer before a period's figures are safe: first the open ones,"
                    + " each with a command that answers it, then those that were set aside.",
            ""
        },
        footer = {"", "Example:", "  quarterfold --book my-book queries 2026-09"},
        mixinStandardHelpOptions = true)
final class QueriesCommand implements Callable<Integer> {

    @ParentCommand private Main main = new Main();
    @Spec private CommandSpec spec = CommandSpec.create();

    @Parameters(paramLabel = "PERIOD", description = "the period's last month, such as 2026-09")
    private String period = "";

    @Option(names = "--json", description = "for programs: JSON Lines, one query a line")
    private boolean json;

    @Override
    public Integer call() throws IOException {
        PrintWriter out = spec.commandLine().getOut();
        try (OpenBook book = OpenBook.of(main)) {
            VatReturn vatReturn = book.returns().of(book.period(period));
            if (json) {
                vatReturn.openQueries().forEach(q -> out.println(QueryJson.of(q)));
                vatReturn.setAsideQueries().forEach(q -> out.println(QueryJson.of(q)));
            } else {
                QueryText text = new QueryText(book.law(), out);
                text.print(vatReturn.openQueries());
                text.print(vatReturn.setAsideQueries());
                text.counted(vatReturn);
            }
        }
        return ExitCode.DONE;
    }
}
