package quarterfold;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.cli.Child;
import quarterfold.cli.Run;
import quarterfold.intake.MadeStatement;

/** A statement far larger than the memory it is read in. */
class BigStatementTest {
    private static final int ENTRIES = 120_000;

    @TempDir private Path folder;

    @Test
    void isReadInMemoryThatDoesNotGrowWithIt() throws IOException, InterruptedException {
        Path file = folder.resolve("big.xml");
        write(file);
        Path book = folder.resolve("book");
        Child.run(
                List.of(),
                folder,
                "--book",
                book,
                "new",
                "--name",
                "Example",
                "--country",
                "GB",
                "--vat-number",
                "GB101747696",
                "--registered-from",
                "2024-01-01",
                "--period-ends",
                "3,6,9,12");

        Run read = Child.run(List.of("-Xmx40m"), folder, "--book", book, "import", file);

        assertThat(read.code()).as(read.err()).isZero();
        assertThat(Files.size(file)).isGreaterThan(40L << 20);
        assertThat(read.out()).contains("120,000");
    }

    private static void write(Path file) throws IOException {
        try (BufferedWriter out = Files.newBufferedWriter(file)) {
            String[] around =
                    MadeStatement.message(
                                    MadeStatement.statement(
                                            "S",
                                            MadeStatement.balance("OPBD", "0"),
                                            MadeStatement.balance("CLBD", "1200.00"),
                                            "@"))
                            .split("@", -1);
            out.write(around[0]);
            for (int i = 0; i < ENTRIES; i++) {
                out.write(
                        MadeStatement.entry(
                                "0.01",
                                MadeStatement.transactions(
                                        "<Refs><EndToEndId>E-%d</EndToEndId></Refs><RltdPties><Dbtr><Pty><Nm>Payer &amp; sons %d</Nm></Pty></Dbtr></RltdPties>"
                                                        .formatted(i, i % 500)
                                                + "<RmtInf><Ustrd>&quot;order&quot; %d &amp; delivery</Ustrd></RmtInf>"
                                                        .formatted(i))));
            }
            out.write(around[1]);
        }
    }
}
