package quarterfold.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.regex.Pattern;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

@Command(
        name = "demo",
        description = {
            "Builds a book for an invented seller, imports a full quarter, shows the return, decides its open"
                    + " queries, closes it and verifies it.",
            ""
        },
        footer = {
            "",
            "Without --book it makes a new folder here and names it.",
            "",
            "Example:",
            "  quarterfold demo"
        },
        mixinStandardHelpOptions = true)
final class DemoCommand implements Callable<Integer> {

    private static final String PLACE = "/quarterfold/demo/";
    private static final String PERIOD = "2026-09";
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|\\S+");

    @ParentCommand private Main main = new Main();
    @Spec private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException {
        Path book = main.book().toString().isEmpty() ? newFolder() : main.book();
        Path files = Files.createTempDirectory("quarterfold-demo");
        try {
            return steps(book, files);
        } finally {
            for (String name : lines("files.txt")) {
                Files.deleteIfExists(files.resolve(name));
            }
            Files.deleteIfExists(files);
        }
    }

    private int steps(Path book, Path files) throws IOException {
        List<String> made = new ArrayList<>(List.of("new"));
        lines("book.flags").forEach(line -> made.add(line.replace("\"", "")));
        int code = step(book, made);
        if (code == ExitCode.DONE) {
            copy("products.csv", book.resolve("products.csv"));
            List<String> imported = new ArrayList<>(List.of("import"));
            for (String name : lines("files.txt")) {
                copy(name, files.resolve(name));
                imported.add(files.resolve(name).toString());
            }
            code = step(book, imported);
        }
        List<List<String>> steps = new ArrayList<>();
        steps.add(List.of("return", PERIOD));
        steps.add(List.of("queries", PERIOD));
        lines("decisions.flags").forEach(line -> steps.add(words("decide " + line)));
        steps.add(List.of("close", PERIOD));
        steps.add(List.of("verify"));
        for (List<String> command : steps) {
            code = code == ExitCode.DONE ? step(book, command) : code;
        }
        if (code == ExitCode.DONE) {
            spec.commandLine()
                    .getOut()
                    .printf(
                            "Everything in this book is invented. To look into it:%n"
                                    + "  quarterfold --book %1$s vouch %2$s --box 4%n"
                                    + "  quarterfold --book %1$s decisions%n",
                            word(book.toString()), PERIOD);
        }
        return code;
    }

    /** Runs a command as a person would, after showing it. */
    private int step(Path book, List<String> command) {
        PrintWriter out = spec.commandLine().getOut();
        List<String> shown =
                command.get(0).equals("import")
                        ? List.of(
                                "import",
                                "(the %d files of the quarter)".formatted(command.size() - 1))
                        : command.stream().map(DemoCommand::word).toList();
        out.printf(
                "> quarterfold --book %s %s%n%n", word(book.toString()), String.join(" ", shown));
        List<String> args = new ArrayList<>(List.of("--book", book.toString()));
        args.addAll(command);
        int code = Main.run(out, spec.commandLine().getErr(), args.toArray(String[]::new));
        out.println();
        return code;
    }

    /** The words of a line, those in quotes as one. */
    private static List<String> words(String line) {
        return WORD.matcher(line)
                .results()
                .map(found -> found.group(1) == null ? found.group() : found.group(1))
                .toList();
    }

    /** A word of a command as a person types it. */
    private static String word(String word) {
        return word.contains(" ") ? '"' + word + '"' : word;
    }

    /** The first of demo-book, demo-book-2, … that is not there yet. */
    private static Path newFolder() {
        Path folder = Path.of("demo-book");
        for (int i = 2; Files.exists(folder); i++) {
            folder = Path.of("demo-book-" + i);
        }
        return folder;
    }

    private static List<String> lines(String name) throws IOException {
        try (InputStream in = open(name)) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return Arrays.stream(text.split("\n", -1))
                    .map(String::strip)
                    .filter(l -> !l.isEmpty())
                    .toList();
        }
    }

    private static void copy(String name, Path to) throws IOException {
        try (InputStream in = open(name)) {
            Files.copy(in, to);
        }
    }

    private static InputStream open(String name) {
        InputStream in = DemoCommand.class.getResourceAsStream(PLACE + name);
        if (in == null) {
            throw new IllegalStateException("the program is not whole: it lacks " + PLACE + name);
        }
        return in;
    }
}
