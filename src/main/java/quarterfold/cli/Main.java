package quarterfold.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program: {@code quarterfold --book DIR COMMAND}. */
@Command(
        name = "quarterfold",
        description = {
            "Turns a marketplace seller's quarter of files into the boxes of a VAT return, and proves"
                    + " every box.",
            ""
        },
        footer = {
            "",
            "A period is named by its last month: 2026-09. A first quarter, from nothing:",
            "  quarterfold --book my-book new",
            "  quarterfold --book my-book import settlement.csv suppliers.csv receipts.csv",
            "  quarterfold --book my-book return 2026-09",
            "  quarterfold --book my-book queries 2026-09",
            "  quarterfold --book my-book close 2026-09",
            "To see one at work: quarterfold demo",
            "",
            "Figures are prepared for checking by a qualified person; nothing is filed or sent."
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:done",
            "1:a refused close or a failed check",
            "2:wrong usage",
            "65:the input is bad; nothing was entered",
            "70:a fault of the program, with what to report",
            "74:a file or the ledger cannot be read or written",
            "130:interrupted (Ctrl-C) while files were brought in"
        },
        mixinStandardHelpOptions = true,
        versionProvider = Main.Version.class,
        subcommands = {
            NewCommand.class,
            ImportCommand.class,
            LearnCommand.class,
            LedgerCommand.class,
            RatesCommand.class,
            QueriesCommand.class,
            DecideCommand.class,
            DecisionsCommand.class,
            ReturnCommand.class,
            CloseCommand.class,
            VouchCommand.class,
            PapersCommand.class,
            VerifyCommand.class,
            DeadlinesCommand.class,
            LawCommand.class,
            DemoCommand.class
        })
public final class Main implements Runnable {

    @Option(
            names = "--book",
            paramLabel = "DIR",
            description = "the book: a folder with book.yaml (default: the folder you are in)",
            defaultValue = "")
    private Path book = Path.of("");

    @Option(
            names = "--trace",
            hidden = true,
            description = "show where a fault of the program arose")
    private boolean trace;

    @Spec private CommandSpec spec = CommandSpec.create();

    Path book() {
        return book;
    }

    boolean trace() {
        return trace;
    }

    @Override
    public void run() {
        throw new ParameterException(
                spec.commandLine(), "Missing a command, such as: quarterfold demo");
    }

    /** Ends the process with the command's exit code. */
    public static void main(String[] args) {
        // Libraries write numbers into the papers as the machine's language has them: in some, a
        // PDF or a workbook would get digits that no reader takes for digits.
        Locale.setDefault(Locale.ROOT);
        PrintWriter out = new PrintWriter(System.out, false, StandardCharsets.UTF_8);
        PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        System.exit(run(out, err, args));
    }

    /** Runs a command and gives its exit code, for a program that calls this one. */
    public static int run(PrintWriter out, PrintWriter err, String... args) {
        Main main = new Main();
        CommandLine line = new CommandLine(main);
        line.setOut(out);
        line.setErr(err);
        line.setUsageHelpAutoWidth(false);
        line.setAllowSubcommandsAsOptionParameters(true); // a book may be named demo, or papers
        line.setExpandAtFiles(false); // a file's name may begin with @
        Failures failures = new Failures(main);
        line.setExecutionExceptionHandler(failures);
        line.setParameterExceptionHandler(Main::wrongUsage);
        int code = execute(line, failures, args);
        if (out.checkError() && code == ExitCode.DONE) {
            err.println("The output could not be written whole.");
            return ExitCode.UNREADABLE;
        }
        return code;
    }

    /** What no command can go on from has an exit code too, not Java's own 1: a refusal is that. */
    private static int execute(CommandLine line, Failures failures, String[] args) {
        try {
            return line.execute(args);
        } catch (StackOverflowError | OutOfMemoryError | LinkageError fault) {
            return failures.ours(fault, line.getErr());
        }
    }

    private static int wrongUsage(ParameterException fault, String[] args) {
        CommandLine line = fault.getCommandLine();
        PrintWriter err = line.getErr();
        err.println(fault.getMessage());
        CommandLine.UnmatchedArgumentException.printSuggestions(fault, err);
        err.printf("Help: %s --help%n", line.getCommandSpec().qualifiedName());
        return ExitCode.USAGE;
    }

    /** The version in the jar's manifest. */
    static final class Version implements CommandLine.IVersionProvider {
        @Override
        public String[] getVersion() {
            String version = Main.class.getPackage().getImplementationVersion();
            return new String[] {"quarterfold " + (version == null ? "(not from a jar)" : version)};
        }
    }
}
