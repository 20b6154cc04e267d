package quarterfold.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import quarterfold.ledger.Decision;
import quarterfold.papers.DecisionJson;

@Command(
        name = "decisions",
        description = {
            "Lists every decision in the order they were made, the undone ones marked.",
            ""
        },
        footer = {"", "Example:", "  quarterfold --book my-book decisions"},
        mixinStandardHelpOptions = true)
final class DecisionsCommand implements Callable<Integer> {

    @ParentCommand private Main main = new Main();
    @Spec private CommandSpec spec = CommandSpec.create();

    @Option(names = "--json", description = "for programs: JSON Lines, one decision a line")
    private boolean json;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        try (OpenBook book = OpenBook.of(main)) {
            List<Decision> decisions = book.ledger().decisions();
            if (json) {
                Map<Long, Long> undone = Decision.undone(decisions);
                decisions.forEach(
                        d ->
                                out.println(
                                        DecisionJson.of(
                                                d, Optional.ofNullable(undone.get(d.id())))));
            } else {
                DecisionText.list(decisions, out);
            }
        }
        return ExitCode.DONE;
    }
}
