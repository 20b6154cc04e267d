package quarterfold.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every reader with thousands of broken inputs, made from sound and from hostile files: each is
 * taken whole and adds up, or is refused with a place; nothing else may happen. {@code
 * -Dfuzz.inputs} says how many for each reader, {@code -Dfuzz.seed} from which seed on; the profile
 * {@code fuzz} tries ten thousand in a small heap. An input that fails is kept in {@code
 * target/fuzz}.
 */
class FuzzTest {
    private static final long INPUTS = Long.getLong("fuzz.inputs", 100);
    private static final long SEED = Long.getLong("fuzz.seed", 2026);

    @TempDir private Path folder;

    static Set<String> readers() throws IOException {
        return Targets.all().keySet();
    }

    /** The limit on time is for a reader that hangs, not on its speed. */
    @ParameterizedTest
    @MethodSource("readers")
    @Timeout(value = 1, unit = TimeUnit.HOURS)
    void brokenInputIsTakenWholeOrRefused(String reader) throws IOException {
        long taken = 0;
        try (Target target = Objects.requireNonNull(Targets.all().get(reader)).in(folder, SEED)) {
            for (long i = 0; i < INPUTS; i++) {
                byte[] input = target.next();
                try {
                    taken += target.reads(input) ? 1 : 0;
                } catch (RuntimeException | IOException | Error e) {
                    Path kept =
                            Files.createDirectories(Path.of("target/fuzz"))
                                    .resolve(reader + "-" + SEED + "-" + i);
                    Files.write(kept, input);
                    throw new AssertionError(
                            "input %d of seed %d, kept as %s".formatted(i, SEED, kept), e);
                }
            }
        }
        assertThat(taken)
                .as("inputs taken, so that both ways were tried")
                .isBetween(1L, INPUTS - 1);
    }
}
