package quarterfold.cli;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import quarterfold.ledger.Line;
import quarterfold.papers.LedgerJson;
import quarterfold.treatment.Context;
import quarterfold.treatment.Treated;

@Command(
        name = "ledger",
        description = {"Lists every entry with how VAT applies to it.", ""},
        footer = {
            "",
            "Example:",
            "  quarterfold --book my-book ledger --json | grep '\"kind\":\"expense\"'"
        },
        mixinStandardHelpOptions = true)
final class LedgerCommand implements Callable<Integer> {

    private static final String ROW = "%8s  %-10s  %-18s  %-16s  %-22s  %12s  %12s  %12s  %s";

    @ParentCommand private Main main = new Main();
    @Spec private CommandSpec spec = CommandSpec.create();

    @Option(names = "--json", description = "for programs: JSON Lines, one entry a line")
    private boolean json;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        try (OpenBook book = OpenBook.of(main)) {
            if (json) {
                LedgerJson lines =
                        new LedgerJson(book.ledger().sources(), book.ledger().attachments().all());
                book.returns().forEachTreated(treated -> out.println(lines.of(treated)));
            } else {
                out.println(
                        ROW.formatted(
                                        "entry",
                                        "date",
                                        "kind",
                                        "document",
                                        "party",
                                        "net",
                                        "VAT",
                                        "gross",
                                        "treatment")
                                .stripTrailing());
                Context.Files files = Texts.files(book.ledger().sources());
                String home = book.book().settings().currency();
                book.returns().forEachTreated(treated -> print(treated, home, files, out));
            }
        }
        return ExitCode.DONE;
    }

    private static void print(Treated treated, String home, Context.Files files, PrintWriter out) {
        Line line = treated.entry().line();
        String currency = line.profile().currency();
        boolean isForeign = treated.conversion().isEmpty() && !currency.equals(home);
        out.println(
                ROW.formatted(
                                treated.entry().number(),
                                line.taxPoint(),
                                line.profile().kind().code(),
                                Texts.document(line, 16),
                                Texts.party(line, 22),
                                Texts.money(treated.net()),
                                Texts.money(treated.vat()),
                                Texts.money(treated.money()),
                                treated.treatment()
                                        + (isForeign ? "; in " + currency : "")
                                        + Texts.exchange(treated, files))
                        .stripTrailing());
    }
}
