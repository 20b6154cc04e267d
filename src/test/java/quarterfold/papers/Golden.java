package quarterfold.papers;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A text kept in the project that a paper must say, word for word. */
final class Golden {

    private static final Path KEPT = Path.of("src/test/resources/quarterfold/papers");
    private static final Path ACTUAL = Path.of("target/golden");

    private Golden() {}

    /** Compares; what was found is in target/golden, to be read and kept where it is right. */
    static void check(String name, String actual) throws IOException {
        Files.createDirectories(ACTUAL);
        Files.writeString(ACTUAL.resolve(name), actual);
        String kept = Files.exists(KEPT.resolve(name)) ? Files.readString(KEPT.resolve(name)) : "";
        assertThat(actual.lines()).as(name).containsExactlyElementsOf(kept.lines().toList());
    }
}
