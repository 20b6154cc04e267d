package quarterfold.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.LedgerException.Fault;
import quarterfold.period.Pack;
import quarterfold.period.Period;
import quarterfold.treatment.Treated;

@Command(
        name = "vouch",
        description = {
            "Walks from a figure back to its documents: every entry that made a box of a period, or one entry's"
                    + " story.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  quarterfold --book my-book vouch 2026-09 --box 4",
            "  quarterfold --book my-book vouch 1234"
        },
        mixinStandardHelpOptions = true)
final class VouchCommand implements Callable<Integer> {

    private static final int MOST_DIGITS = 18;

    @ParentCommand private Main main = new Main();
    @Spec private CommandSpec spec = CommandSpec.create();

    @Parameters(
            paramLabel = "PERIOD|ENTRY",
            description = "a period such as 2026-09, or an entry's number")
    private String what = "";

    @Option(names = "--box", paramLabel = "BOX", description = "a box of the period, such as 4")
    private Optional<String> box = Optional.empty();

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        try (OpenBook book = OpenBook.of(main)) {
            if (what.matches("[0-9]+") && box.isEmpty()) {
                story(book, out);
            } else {
                box(book, out);
            }
        }
        return ExitCode.DONE;
    }

    private void box(OpenBook book, PrintWriter out) {
        Period period = book.period(what);
        Pack pack = book.returns().pack(period);
        String id =
                box.orElseThrow(
                        () ->
                                new LedgerException(
                                        Fault.USAGE,
                                        "--box: found nothing; expected a box of the return, such as 4"));
        if (pack.law().form(period.end()).stream().noneMatch(b -> b.id().equals(id))) {
            throw new LedgerException(
                    Fault.USAGE,
                    "--box: found '%s'; expected a box of the return, such as 4".formatted(id));
        }
        new VouchText(out, pack).box(id);
    }

    private void story(OpenBook book, PrintWriter out) {
        List<Treated> occasions =
                what.length() > MOST_DIGITS
                        ? List.of()
                        : book.returns().treated(Long.parseLong(what));
        if (occasions.isEmpty()) {
            throw new LedgerException(
                    Fault.USAGE,
                    "ENTRY: found %s; expected the number of an entry, 1 to %d"
                            .formatted(what, book.ledger().lastEntry()));
        }
        StoryText.print(occasions, book, out);
    }
}
