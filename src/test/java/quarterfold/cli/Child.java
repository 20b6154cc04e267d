package quarterfold.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The program in a process of its own, as a person runs it. */
public final class Child {

    private static final long MINUTES = 3;

    private Child() {}

    /** Starts it; what it writes goes to {@code out.txt} and {@code err.txt} in a folder. */
    public static Process start(List<String> jvm, Path said, Object... args) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(jvm);
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), Main.class.getName()));
        List.of(args).forEach(arg -> command.add(arg.toString()));
        return new ProcessBuilder(command)
                .redirectOutput(said.resolve("out.txt").toFile())
                .redirectError(said.resolve("err.txt").toFile())
                .start();
    }

    /** Runs it to its end. */
    public static Run run(List<String> jvm, Path said, Object... args)
            throws IOException, InterruptedException {
        Process process = start(jvm, said, args);
        if (!process.waitFor(MINUTES, TimeUnit.MINUTES)) {
            process.destroyForcibly();
            throw new IOException("the program did not end: " + List.of(args));
        }
        return new Run(
                process.exitValue(),
                Files.readString(said.resolve("out.txt")).replace(System.lineSeparator(), "\n"),
                Files.readString(said.resolve("err.txt")).replace(System.lineSeparator(), "\n"));
    }
}
