package quarterfold.cli;

import java.io.Console;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import quarterfold.intake.FittingLayouts;
import quarterfold.intake.Learned;
import quarterfold.intake.Learner;
import quarterfold.intake.Question;

@Command(
        name = "learn",
        description = {
            "Works out the layout of a report that none knows, and proves it by the sums that hold in it."
                    + " Asks on a terminal for what the file does not say. A layout that is proved is"
                    + " written into the book's layouts folder, for you to correct and for import to read with.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  quarterfold --book my-book learn report.csv",
            "  quarterfold --book my-book learn report.csv --name corner-stall",
            "  quarterfold --book my-book learn report.csv --answer \"kind/Type: Levy=fee\"",
            "  quarterfold --book my-book learn report.csv --accept --json"
        },
        mixinStandardHelpOptions = true)
final class LearnCommand implements Callable<Integer> {

    @ParentCommand private Main main = new Main();
    @Spec private CommandSpec spec = CommandSpec.create();

    @Parameters(paramLabel = "FILE", description = "a CSV, TSV, text or XLSX report")
    private Path file = Path.of("");

    @Option(
            names = "--name",
            paramLabel = "NAME",
            description = "of the layout; default: the file's own, without digits")
    private Optional<String> name = Optional.empty();

    @Option(
            names = "--answer",
            paramLabel = "ID=ANSWER",
            description = "answers a question that is open")
    private List<String> given = List.of();

    @Option(
            names = "--accept",
            description =
                    "write the layout though something is open or does not tie, and in place of one there")
    private boolean accept;

    @Option(names = "--json", description = "for programs: one JSON object; asks nothing")
    private boolean json;

    @Override
    public Integer call() throws IOException {
        String layout = layoutName();
        try (OpenBook book = OpenBook.of(main)) {
            Learner learner = new Learner(book.book().settings());
            Map<String, String> answers = new LinkedHashMap<>();
            given.forEach(text -> answer(text, answers));
            Optional<String> before = Learner.before(book.book(), layout);
            Learned learned = learner.learn(file, layout, answers, before);
            while (ask(learned, answers)) {
                learned = learner.learn(file, layout, answers, before);
            }
            AnswerCheck.wrong(given, learned).ifPresent(this::refuse);
            List<String> beside = FittingLayouts.beside(book.book(), file, learned);
            boolean wanted = learned.yaml().isPresent() && (learned.isProved() || accept);
            Optional<Path> written =
                    wanted && (beside.isEmpty() || accept)
                            ? Learner.write(book.book(), learned, accept)
                            : Optional.empty();
            PrintWriter out = spec.commandLine().getOut();
            if (json) {
                out.println(LearnText.json(file, learned, written));
            } else {
                LearnText.print(learned, written, wanted, beside, out);
                AnswerCheck.unused(given, learned)
                        .forEach(text -> out.printf("Not asked so far: --answer \"%s\".%n", text));
            }
            return written.isPresent() ? ExitCode.DONE : failed(learned);
        }
    }

    private void refuse(String why) {
        throw new ParameterException(spec.commandLine(), why);
    }

    private static int failed(Learned learned) {
        return learned.yaml().isEmpty() && learned.open().isEmpty()
                ? ExitCode.BAD_INPUT
                : ExitCode.REFUSED;
    }

    private String layoutName() {
        String layout = name.orElseGet(() -> Learner.nameOf(file));
        if (!layout.matches("[a-z0-9]+(-[a-z0-9]+)*") || layout.equals("plain-sheet")) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--name: found '%s'; expected small letters, digits and hyphens, and not plain-sheet, such as corner-stall"
                            .formatted(layout));
        }
        return layout;
    }

    private void answer(String text, Map<String, String> answers) {
        int at = text.lastIndexOf('=');
        if (at < 1) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--answer: found '%s'; expected a question's id and its answer, such as dates=dd/MM/yyyy"
                            .formatted(text));
        }
        answers.put(text.substring(0, at).strip(), text.substring(at + 1).strip());
    }

    /** Asks what is open, where there is a terminal; whether anything was answered. */
    // From JDK 22 the console is there without a terminal too; a closed input then answers nothing.
    @SuppressWarnings("SystemConsoleNull")
    private boolean ask(Learned learned, Map<String, String> answers) {
        Console console = System.console();
        if (console == null || json) {
            return false;
        }
        boolean answered = false;
        for (Question question : learned.open()) {
            if (answers.containsKey(question.id())) {
                continue; // it was asked, and the answer was none of those that are one
            }
            String text =
                    console.readLine(
                            "%s%s: ",
                            Texts.plain(question.text()),
                            question.answers().isEmpty()
                                    ? ""
                                    : " ("
                                            + Texts.plain(String.join(", ", question.answers()))
                                            + ")");
            if (text != null && !text.isBlank()) {
                answers.put(question.id(), text.strip());
                answered = true;
            }
        }
        return answered;
    }
}
