package quarterfold.cli;

import java.io.PrintWriter;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import quarterfold.outlook.Deadline;
import quarterfold.outlook.Deadlines;
import quarterfold.papers.Caution;
import quarterfold.papers.DeadlinesJson;
import quarterfold.period.Period;

@Command(
        name = "deadlines",
        description = {
            "Shows when a return and its payment are due, and what being late costs: for the periods that"
                    + " have something to do now, or for one.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  quarterfold --book my-book deadlines",
            "  quarterfold --book my-book deadlines 2026-09 --points 3 --paid-on 2026-12-01"
        },
        mixinStandardHelpOptions = true)
final class DeadlinesCommand implements Callable<Integer> {

    private static final String DAY = "year-month-day, such as 2026-10-31";

    @ParentCommand private Main main = new Main();
    @Spec private CommandSpec spec = CommandSpec.create();

    @Parameters(
            paramLabel = "PERIOD",
            arity = "0..1",
            description = "the period's last month, such as 2026-09")
    private Optional<String> period = Optional.empty();

    @Option(
            names = "--today",
            paramLabel = "DATE",
            description = "the day to look from (default: today)")
    private Optional<String> today = Optional.empty();

    @Option(
            names = "--points",
            paramLabel = "N",
            defaultValue = "0",
            description = "points for late returns there are already (default: ${DEFAULT-VALUE})")
    private int points;

    @Option(
            names = "--paid-on",
            paramLabel = "DATE",
            description = "a late day to work out the cost of paying on")
    private Optional<String> paidOn = Optional.empty();

    @Option(names = "--json", description = "for programs: docs/formats.md says the shape")
    private boolean json;

    @Override
    public Integer call() {
        if (points < 0) {
            throw wrong("--points", String.valueOf(points), "a number of points, such as 3");
        }
        Optional<LocalDate> todayGiven = day("--today", today);
        Optional<LocalDate> paid = day("--paid-on", paidOn);
        PrintWriter out = spec.commandLine().getOut();
        try (OpenBook book = OpenBook.of(main)) {
            LocalDate now =
                    todayGiven.orElseGet(
                            () -> LocalDate.now(Clock.system(book.book().settings().zone())));
            Deadlines deadlines =
                    new Deadlines(book.book().settings(), book.returns().calendar(), book.law());
            List<Period> periods =
                    period.map(name -> List.of(book.period(name)))
                            .orElseGet(() -> deadlines.around(now));
            List<Deadline> shown =
                    periods.stream()
                            .map(p -> deadlines.of(book.returns().of(p), points, paid))
                            .toList();
            if (json) {
                shown.forEach(d -> out.println(DeadlinesJson.of(d)));
            } else {
                new DeadlinesText(out, now, paid).print(shown);
                out.println(Caution.text());
            }
        }
        return ExitCode.DONE;
    }

    private Optional<LocalDate> day(String option, Optional<String> text) {
        try {
            return text.map(LocalDate::parse);
        } catch (DateTimeException e) {
            throw wrong(option, text.orElse(""), DAY);
        }
    }

    private ParameterException wrong(String option, String found, String expected) {
        return new ParameterException(
                spec.commandLine(),
                "%s: found '%s'; expected %s".formatted(option, found, expected));
    }
}
