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
import quarterfold.ledger.IoText;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.LedgerException.Fault;
import quarterfold.papers.Caution;
import quarterfold.papers.HeldJson;
import quarterfold.papers.ReturnJson;
import quarterfold.papers.WorkingPapers;
import quarterfold.period.CloseResult;
import quarterfold.period.Closing;
import quarterfold.period.Period;
import quarterfold.period.VatReturn;

@Command(
        name = "close",
        description = {
            "Freezes a period, its figures and everything that made them, and writes the working papers: the audit"
                    + " workbook, the PDF summary, return.json and return.csv.",
            ""
        },
        footer = {
            "",
            "A period with an open query that touches money is not closed: the queries are listed, each with a",
            "command that answers it, and nothing is written. A closed period never changes.",
            "",
            "Example:",
            "  quarterfold --book my-book close 2026-09"
        },
        mixinStandardHelpOptions = true)
final class CloseCommand implements Callable<Integer> {

    @ParentCommand private Main main = new Main();
    @Spec private CommandSpec spec = CommandSpec.create();

    @Parameters(paramLabel = "PERIOD", description = "the period's last month, such as 2026-09")
    private String period = "";

    @Option(
            names = "--json",
            description =
                    "for programs: the closed return, as return --json gives it, or the queries that hold it")
    private boolean json;

    @Override
    public Integer call() throws IOException {
        try (OpenBook book = OpenBook.of(main)) {
            Period named = book.period(period);
            CloseResult result = new Closing(book.ledger(), book.returns()).close(named);
            if (result instanceof CloseResult.OutOfTurn turn) {
                return refused(turn);
            }
            if (result instanceof CloseResult.Held held) {
                return refused(held.draft(), book);
            }
            return closed(((CloseResult.Closed) result).vatReturn(), book);
        }
    }

    private int refused(CloseResult.OutOfTurn turn) {
        spec.commandLine()
                .getErr()
                .printf(
                        "%s is not closed: the period before it, %s, is open and has entries. Close that first.%n",
                        turn.period().name(), turn.before().name());
        return ExitCode.REFUSED;
    }

    private int refused(VatReturn draft, OpenBook book) {
        if (json) {
            spec.commandLine()
                    .getOut()
                    .println(HeldJson.of(draft, query -> Answering.command(book.law(), query)));
        } else {
            new QueryText(book.law(), spec.commandLine().getErr()).held(draft);
        }
        return ExitCode.REFUSED;
    }

    private int closed(VatReturn closed, OpenBook book) throws IOException {
        Period named = closed.period();
        PrintWriter out = spec.commandLine().getOut();
        try {
            WorkingPapers.write(book.returns().pack(named), book.book().papers(named.name()));
        } catch (IOException e) {
            throw new LedgerException(
                    Fault.UNREADABLE,
                    "%1$s is closed, but its working papers could not be written: %2$s. Put that right, then write them with: quarterfold papers %1$s"
                            .formatted(named.name(), IoText.withFile(e)));
        }
        if (json) {
            out.println(ReturnJson.of(closed));
        } else {
            ReturnText.print(closed, book.returns().pack(named).settings(), out);
            out.println();
            new QueryText(book.law(), out).notHolding(closed);
            out.printf(
                    "Closed. The working papers are in %s%n%n%s%n",
                    Texts.plain(book.book().papers(named.name()).toString()), Caution.text());
        }
        return ExitCode.DONE;
    }
}
