package quarterfold.cli;

import java.io.PrintWriter;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import quarterfold.intake.LayoutKinds;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Decision.Action;
import quarterfold.ledger.Decision.Target;
import quarterfold.ledger.LedgerException;
import quarterfold.papers.DecisionJson;
import quarterfold.period.Deciding;

@Command(
        name = "decide",
        description = {
            "Records a person's answer: what was decided, about what, why, by whom and when. It is kept beside the"
                    + " entries, never edited; --undo takes one back.",
            "",
            "Name one thing it is about and one decision:",
            ""
        },
        footer = {
            "",
            "A closed return never changes: a decision about its entries is a correction of the next open one.",
            "",
            "Examples:",
            "  quarterfold --book my-book decide --entry 4 --evidence-seen invoice \\",
            "    --why \"The invoice came by post\" --who \"Anne Weaver\"",
            "  quarterfold --book my-book decide --entry 9 --state party_country=IE \\",
            "    --why \"It is on the letterhead\" --who Anne",
            "  quarterfold --book my-book decide --entry 12 --duplicate-of 7 \\",
            "    --why \"Entered twice\" --who Anne",
            "  quarterfold --book my-book decide --undo 3 --why \"Wrong entry\" --who Anne"
        },
        mixinStandardHelpOptions = true)
final class DecideCommand implements Callable<Integer> {

    @ParentCommand private Main main = new Main();
    @Spec private CommandSpec spec = CommandSpec.create();

    @Option(names = "--entry", paramLabel = "N", description = "about one entry, by its number")
    private Optional<String> entry = Optional.empty();

    @Option(
            names = "--party",
            paramLabel = "NAME",
            description = "about every entry of a supplier, customer or channel")
    private Optional<String> party = Optional.empty();

    @Option(
            names = "--product",
            paramLabel = "CODE",
            description = "about every entry of a product")
    private Optional<String> product = Optional.empty();

    @Option(
            names = "--query",
            paramLabel = "ID",
            description =
                    "about a question, by its name; with --set-aside, or where it asks what rows are with --state kind=KIND")
    private Optional<String> query = Optional.empty();

    @Option(
            names = "--treat-as",
            paramLabel = "TREATMENT",
            description = "it has this treatment of treatments.csv")
    private Optional<String> treatAs = Optional.empty();

    @Option(
            names = "--state",
            paramLabel = "FIELD=VALUE",
            description = "a fact the file did not state, or stated wrongly")
    private Optional<String> state = Optional.empty();

    @Option(
            names = "--evidence-seen",
            paramLabel = "KIND",
            description = "its document was seen: invoice, simplified, export …")
    private Optional<String> evidenceSeen = Optional.empty();

    @Option(names = "--disallow", description = "its VAT is not reclaimed")
    private boolean disallow;

    @Option(
            names = "--duplicate-of",
            paramLabel = "N",
            description = "it is the same as entry N, which alone counts")
    private Optional<String> duplicateOf = Optional.empty();

    @Option(
            names = "--set-aside",
            description = "the question is known and left as it is: what the tables did stands")
    private boolean setAside;

    @Option(names = "--undo", paramLabel = "ID", description = "decision ID no longer holds")
    private Optional<String> undo = Optional.empty();

    @Option(names = "--why", paramLabel = "TEXT", description = "the reason, in your words")
    private Optional<String> why = Optional.empty();

    @Option(names = "--who", paramLabel = "NAME", description = "who decides")
    private Optional<String> who = Optional.empty();

    @Option(
            names = "--on",
            paramLabel = "DATE",
            description = "the day of the decision (default: today)")
    private Optional<String> on = Optional.empty();

    @Option(names = "--json", description = "for programs: docs/formats.md says the shape")
    private boolean json;

    /** Something a command line named, with what it said. */
    private record Named<T>(T what, String text) {}

    @Override
    public Integer call() {
        Named<Action> action = action();
        Named<Target> target = target(action.what());
        String reason = needed("--why", why, "a reason, such as \"The invoice came by post\"");
        String name = needed("--who", who, "a person's name, such as \"Anne Weaver\"");
        Optional<LocalDate> day = day();
        PrintWriter out = spec.commandLine().getOut();
        try (OpenBook book = OpenBook.of(main)) {
            Deciding.Decided decided =
                    new Deciding(book.book(), book.ledger(), book.law())
                            .decide(
                                    new Decision(
                                            0,
                                            target.what(),
                                            target.text(),
                                            action.what(),
                                            action.text(),
                                            reason,
                                            name,
                                            day.orElseGet(() -> today(book))));
            Optional<String> layout = layout(book, decided);
            if (json) {
                out.println(DecisionJson.of(decided, layout));
            } else {
                DecisionText.print(decided, out);
                layout.ifPresent(text -> out.printf("%n%s%n", Texts.plain(text)));
            }
        }
        return ExitCode.DONE;
    }

    /** What rows are that a question asks about is kept in their layout, for files to come. */
    private static Optional<String> layout(OpenBook book, Deciding.Decided decided) {
        try {
            return decided.kindOf()
                    .map(query -> new LayoutKinds(book.book(), book.ledger()).keep(query));
        } catch (LedgerException e) { // the decision is recorded already
            return Optional.of("The layout was not changed: " + e.getMessage());
        }
    }

    /** The only place that reads the clock. */
    private static LocalDate today(OpenBook book) {
        return LocalDate.now(Clock.system(book.book().settings().zone()));
    }

    private Named<Action> action() {
        List<Named<Action>> found = new ArrayList<>();
        treatAs.ifPresent(t -> found.add(new Named<>(Action.TREAT_AS, t)));
        state.ifPresent(t -> found.add(new Named<>(Action.STATE, t)));
        evidenceSeen.ifPresent(t -> found.add(new Named<>(Action.EVIDENCE_SEEN, t)));
        duplicateOf.ifPresent(t -> found.add(new Named<>(Action.DUPLICATE_OF, t)));
        undo.ifPresent(t -> found.add(new Named<>(Action.UNDO, t)));
        if (disallow) {
            found.add(new Named<>(Action.DISALLOW, ""));
        }
        if (setAside) {
            found.add(new Named<>(Action.SET_ASIDE, ""));
        }
        if (found.size() != 1) {
            throw wrong(
                    "found %s; expected one decision: --treat-as, --state, --evidence-seen, --disallow, --duplicate-of, --set-aside or --undo, such as --evidence-seen invoice"
                            .formatted(names(found.stream().map(n -> n.what().code()).toList())));
        }
        return found.get(0);
    }

    private Named<Target> target(Action action) {
        List<Named<Target>> found = new ArrayList<>();
        entry.ifPresent(t -> found.add(new Named<>(Target.ENTRY, t)));
        party.ifPresent(t -> found.add(new Named<>(Target.PARTY, t)));
        product.ifPresent(t -> found.add(new Named<>(Target.PRODUCT, t)));
        query.ifPresent(t -> found.add(new Named<>(Target.QUERY, t)));
        String named = names(found.stream().map(n -> n.what().code()).toList());
        if (action == Action.UNDO) {
            if (!found.isEmpty()) {
                throw wrong(
                        "--undo: found %s with it; expected the number of a decision alone, such as --undo 3"
                                .formatted(named));
            }
            return new Named<>(Target.QUERY, ""); // the ledger knows what the undone one is about
        }
        if (found.size() != 1) {
            throw wrong(
                    "found %s; expected one thing to decide about: --entry, --party, --product or --query, such as --entry 4"
                            .formatted(named));
        }
        return found.get(0);
    }

    private static String names(List<String> codes) {
        return codes.isEmpty()
                ? "none"
                : String.join(" and ", codes.stream().map(c -> "--" + c).toList());
    }

    private String needed(String option, Optional<String> text, String expected) {
        return text.map(String::strip)
                .filter(t -> !t.isEmpty())
                .orElseThrow(
                        () -> wrong("%s: found nothing; expected %s".formatted(option, expected)));
    }

    private Optional<LocalDate> day() {
        try {
            return on.map(LocalDate::parse);
        } catch (DateTimeException e) {
            throw wrong(
                    "--on: found '%s'; expected year-month-day, such as 2026-10-31"
                            .formatted(on.orElse("")));
        }
    }

    private ParameterException wrong(String message) {
        return new ParameterException(spec.commandLine(), message);
    }
}
