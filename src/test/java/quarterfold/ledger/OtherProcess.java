package quarterfold.ledger;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A program of its own that uses a ledger: what another process on the same book is. */
final class OtherProcess {
    private OtherProcess() {}

    /** Enters lines without end, or opens the ledger and leaves. */
    public static void main(String[] args) throws IOException {
        try (Ledger ledger = Ledger.open(Path.of(args[1]), Duration.ofMillis(50))) {
            if (args[0].equals("open")) {
                System.out.println(ledger.sources().size());
                return;
            }
            try (FileEntry file = ledger.begin("killed", "killed.csv", "plain-sheet")) {
                for (long i = 0; ; i++) {
                    file.add(Samples.FULL);
                    if (i == 400_000) { // more than the cache holds: some of it is on the disk
                        System.out.println("writing");
                        System.in.read();
                    }
                }
            }
        }
    }

    static Process start(Path ledger, String what, String... options) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(Arrays.asList(options));
        command.addAll(List.of("-cp", System.getProperty("java.class.path")));
        command.addAll(List.of(OtherProcess.class.getName(), what, ledger.toString()));
        return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
    }
}
