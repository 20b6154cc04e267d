package quarterfold.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import quarterfold.papers.QueryJson;
import quarterfold.treatment.Query;

@Command(
        name = "queries",
        description = {
            "Lists the questions a person must answer before a period's figures are safe.",
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
            List<Query> queries = book.returns().of(book.period(period)).queries();
            for (Query query : queries) {
                if (json) {
                    out.println(QueryJson.of(query));
                } else {
                    print(query, out);
                }
            }
            if (!json) {
                out.println(
                        queries.isEmpty()
                                ? "No query is open."
                                : Texts.count(
                                        queries.size(), "query is open.", "queries are open."));
            }
        }
        return ExitCode.DONE;
    }

    private static void print(Query query, PrintWriter out) {
        out.println(
                "%s  %s".formatted(Texts.plain(query.id()), Texts.plain(query.place())).strip());
        out.printf("  %s%n%n", Texts.cell(query.question(), 1_000));
    }
}
