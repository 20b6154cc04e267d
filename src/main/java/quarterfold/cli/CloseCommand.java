package quarterfold.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.Optional;
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
import quarterfold.papers.ReturnJson;
import quarterfold.papers.WorkingPapers;
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
            "VAT in question is kept out of the reclaim and listed on the papers. A closed period never changes.",
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
            description = "for programs: the closed return, as return --json gives it")
    private boolean json;

    @Override
    public Integer call() throws IOException {
        PrintWriter out = spec.commandLine().getOut();
        try (OpenBook book = OpenBook.of(main)) {
            return close(
                    book, book.period(period), json ? Optional.empty() : Optional.of(out), spec);
        }
    }

    private Integer close(
            OpenBook book, Period named, Optional<PrintWriter> text, CommandSpec command)
            throws IOException {
        Closing closing = new Closing(book.ledger(), book.law(), book.returns());
        Optional<Period> before = closing.openBefore(named);
        if (before.isPresent()) {
            command.commandLine()
                    .getErr()
                    .printf(
                            "%s is not closed: the period before it, %s, is open and has entries. Close that first.%n",
                            named.name(), before.get().name());
            return ExitCode.REFUSED;
        }
        VatReturn closed = closing.close(named);
        try {
            WorkingPapers.write(book.returns().pack(named), book.book().papers(named.name()));
        } catch (IOException e) {
            throw new LedgerException(
                    Fault.UNREADABLE,
                    "%1$s is closed, but its working papers could not be written: %2$s. Put that right, then write them with: quarterfold papers %1$s"
                            .formatted(named.name(), IoText.withFile(e)));
        }
        if (text.isPresent()) {
            ReturnText.print(closed, book.returns().pack(named).settings(), text.get());
            text.get()
                    .printf(
                            "%nClosed. The working papers are in %s%n%n%s%n",
                            Texts.plain(book.book().papers(named.name()).toString()),
                            Caution.text());
        } else {
            command.commandLine().getOut().println(ReturnJson.of(closed));
        }
        return ExitCode.DONE;
    }
}
