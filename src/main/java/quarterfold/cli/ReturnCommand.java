package quarterfold.cli;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import quarterfold.outlook.Deadlines;
import quarterfold.papers.Caution;
import quarterfold.papers.ReturnJson;
import quarterfold.period.Pack;
import quarterfold.period.Period;
import quarterfold.period.VatReturn;

@Command(
        name = "return",
        description = {"Shows the boxes of a period: a draft, or as it was closed.", ""},
        footer = {"", "Example:", "  quarterfold --book my-book return 2026-09"},
        mixinStandardHelpOptions = true)
final class ReturnCommand implements Callable<Integer> {

    @ParentCommand private Main main = new Main();
    @Spec private CommandSpec spec = CommandSpec.create();

    @Parameters(paramLabel = "PERIOD", description = "the period's last month, such as 2026-09")
    private String period = "";

    @Option(names = "--json", description = "for programs: docs/formats.md says the shape")
    private boolean json;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        try (OpenBook book = OpenBook.of(main)) {
            Period named = book.period(period);
            VatReturn vatReturn = book.returns().of(named);
            if (json) {
                out.println(ReturnJson.of(vatReturn));
            } else {
                Pack pack = book.returns().pack(named);
                ReturnText.print(vatReturn, pack.settings(), out);
                ReturnText.printInterims(
                        vatReturn,
                        new Deadlines(pack.settings(), book.returns().calendar(), pack.law())
                                .interims(named),
                        out);
                out.println();
                out.println(Caution.text());
            }
        }
        return ExitCode.DONE;
    }
}
