package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ShippedLayoutsTest {
    private static final Path LAYOUTS = Path.of("templates", "layouts");
    private static final Path DEMO = Path.of("fixtures", "demo");

    @TempDir Path folder;

    @Test
    void theIndexNamesEveryLayoutThereIs() throws IOException {
        try (Stream<Path> files = Files.list(LAYOUTS)) {
            assertThat(Layouts.shippedNames())
                    .containsExactlyElementsOf(
                            files.map(f -> f.getFileName().toString())
                                    .filter(name -> name.endsWith(".yaml"))
                                    .map(name -> name.replace(".yaml", ""))
                                    .sorted()
                                    .toList())
                    .hasSizeGreaterThanOrEqualTo(6);
        }
    }

    @Test
    void everyLayoutIsSound() {
        assertThat(Layouts.load(List.of()).problems().kept()).isEmpty();
    }

    @Test
    void everyFileOfTheDemoComesIn() throws IOException {
        List<String> names =
                Files.readAllLines(DEMO.resolve("files.txt")).stream()
                        .filter(name -> !name.isBlank() && !name.startsWith("#"))
                        .toList();
        assertThat(names).hasSizeGreaterThan(5);
        try (Desk desk = new Desk(folder)) {
            for (String name : names) {
                ImportResult result = desk.enter(DEMO.resolve(name));
                assertThat(result.problems()).as(name).isEmpty();
                assertThat(result.entries()).as(name).isPositive();
            }
            assertThat(desk.raised()).isEmpty();
        }
    }
}
