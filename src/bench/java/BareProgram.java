import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The least a program with picocli can be: what {@code --help} must be compared with. */
@Command(
        name = "bare",
        description = "Does nothing.",
        mixinStandardHelpOptions = true,
        version = "bare")
public final class BareProgram implements Runnable {

    @Override
    public void run() {}

    public static void main(String[] args) {
        System.exit(new CommandLine(new BareProgram()).execute(args));
    }
}
