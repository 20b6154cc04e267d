package quarterfold.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import quarterfold.papers.WorkingPapers;
import quarterfold.period.Period;

@Command(
        name = "papers",
        description = {
            "Writes the working papers of a period again: as it was closed, or a draft to look at first.",
            ""
        },
        footer = {"", "Example:", "  quarterfold --book my-book papers 2026-09"},
        mixinStandardHelpOptions = true)
final class PapersCommand implements Callable<Integer> {

    @ParentCommand private Main main = new Main();
    @Spec private CommandSpec spec = CommandSpec.create();

    @Parameters(paramLabel = "PERIOD", description = "the period's last month, such as 2026-09")
    private String period = "";

    @Override
    public Integer call() throws IOException {
        try (OpenBook book = OpenBook.of(main)) {
            Period named = book.period(period);
            Path closed = book.book().papers(named.name());
            Path folder =
                    book.returns().isClosed(named.name())
                            ? closed
                            : closed.resolveSibling(closed.getFileName() + "-draft");
            WorkingPapers.write(book.returns().pack(named), folder);
            spec.commandLine().getOut().printf("The working papers are in %s%n", folder);
        }
        return ExitCode.DONE;
    }
}
