package quarterfold.cli;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import quarterfold.outlook.Deadlines;
import quarterfold.papers.Caution;
import quarterfold.papers.ComparisonJson;
import quarterfold.papers.ReturnJson;
import quarterfold.papers.VatAccountJson;
import quarterfold.period.Comparison;
import quarterfold.period.Pack;
import quarterfold.period.Period;
import quarterfold.period.Returns;
import quarterfold.period.VatAccount;
import quarterfold.period.VatReturn;

@Command(
        name = "return",
        description = {"Shows the boxes of a period: a draft, or as it was closed.", ""},
        footer = {
            "",
            "Examples:",
            "  quarterfold --book my-book return 2026-09",
            "  quarterfold --book my-book return 2026-09 --compare",
            "  quarterfold --book my-book return 2026-09 --account"
        },
        mixinStandardHelpOptions = true)
final class ReturnCommand implements Callable<Integer> {

    @ParentCommand private Main main = new Main();
    @Spec private CommandSpec spec = CommandSpec.create();

    @Parameters(paramLabel = "PERIOD", description = "the period's last month, such as 2026-09")
    private String period = "";

    @Option(names = "--json", description = "for programs: docs/formats.md says the shape")
    private boolean json;

    @Option(
            names = "--compare",
            description = "beside the period before and the same one last year, with what changed")
    private boolean compare;

    @Option(
            names = "--account",
            description = "the VAT account behind the boxes: what is payable and what allowable")
    private boolean account;

    @Override
    public Integer call() {
        if (compare && account) {
            throw new ParameterException(
                    spec.commandLine(),
                    "found --compare and --account; expected one of them, such as --compare");
        }
        PrintWriter out = spec.commandLine().getOut();
        try (OpenBook book = OpenBook.of(main)) {
            Period named = book.period(period);
            if (account) {
                account(book.returns().pack(named), out);
            } else if (compare) {
                compare(book.returns(), named, out);
            } else {
                boxes(book.returns(), named, out);
            }
            if (!json) {
                out.println();
                out.println(Caution.text());
            }
        }
        return ExitCode.DONE;
    }

    private void boxes(Returns returns, Period named, PrintWriter out) {
        VatReturn vatReturn = returns.of(named);
        if (json) {
            out.println(ReturnJson.of(vatReturn));
        } else {
            Pack pack = returns.pack(named);
            ReturnText.print(vatReturn, pack.settings(), out);
            ReturnText.printInterims(
                    vatReturn,
                    new Deadlines(pack.settings(), returns.calendar(), pack.law()).interims(named),
                    out);
        }
    }

    private void account(Pack pack, PrintWriter out) {
        VatAccount vatAccount = VatAccount.of(pack);
        if (json) {
            out.println(VatAccountJson.of(vatAccount));
        } else {
            VatAccountText.print(vatAccount, pack.settings(), out);
        }
    }

    private void compare(Returns returns, Period named, PrintWriter out) {
        VatReturn now = returns.of(named);
        Optional<Comparison> before = Comparison.withPeriodBefore(returns, named);
        Optional<Comparison> lastYear = Comparison.withLastYear(returns, named);
        if (json) {
            out.println(ComparisonJson.of(now, before, lastYear));
        } else {
            new ComparisonText(out).print(now, returns.pack(named).settings(), before, lastYear);
        }
    }
}
