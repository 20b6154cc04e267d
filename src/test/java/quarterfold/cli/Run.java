package quarterfold.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;

/** A command run in this process: its exit code and what it wrote. */
public record Run(int code, String out, String err) {

    public static Run of(Object... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] texts = new String[args.length];
        for (int i = 0; i < args.length; i++) {
            texts[i] = args[i].toString();
        }
        int code = Main.run(new PrintWriter(out, true), new PrintWriter(err, true), texts);
        return new Run(code, lines(out), lines(err));
    }

    private static String lines(StringWriter text) {
        return text.toString().replace(System.lineSeparator(), "\n");
    }

    /** The same with a folder, which differs from run to run, called by a name. */
    public Run calling(Path folder, String name) {
        return new Run(
                code, out.replace(folder.toString(), name), err.replace(folder.toString(), name));
    }
}
