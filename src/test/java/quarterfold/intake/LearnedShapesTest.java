package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import quarterfold.ledger.Line;

/**
 * Reports made by lot whose rows have several shapes are learned, and give back exactly the money
 * put in, or say they cannot.
 */
class LearnedShapesTest {
    /** More with {@code -Dseeds=2000}. */
    private static final int SEEDS = Integer.getInteger("seeds", 400);

    @TempDir private Path folder;

    private Learned learn(Path file, Map<String, Long> given) throws IOException {
        return new Learner(Desk.settings()).learn(file, "made", Map.of(), line -> add(given, line));
    }

    private static void add(Map<String, Long> given, Line line) {
        long money = line.signedMoney().tenThousandths();
        assertThat(money % 100).isZero();
        MadeReport.add(
                given,
                line.taxPoint(),
                LearnedReportsTest.family(line.profile().kind()),
                money / 100);
    }

    @Test
    void giveBackTheMoneyPutInOrSayTheyCannot() throws IOException {
        List<String> wrong = new ArrayList<>();
        Map<String, Integer> cannot = new TreeMap<>();
        Map<MadeShapes.Family, Integer> proved = new TreeMap<>();
        for (long seed = 0; seed < SEEDS; seed++) {
            MadeShapes report = new MadeShapes(seed, MadeShapes.Harm.NONE);
            Path file = report.write(folder);
            Map<String, Long> given = new TreeMap<>();
            Learned learned = learn(file, given);
            if (!learned.isProved()) {
                String why =
                        learned.open().isEmpty()
                                ? String.join(" / ", learned.faults())
                                : learned.open().get(0).id();
                cannot.merge(why.replaceAll("\\d+", "9"), 1, Integer::sum);
            } else if (given.equals(report.truth())) {
                proved.merge(report.family(), 1, Integer::sum);
                if (seed % 20 == 0) {
                    assertThat(imported(learned, file, seed)).isEqualTo(report.truth());
                }
            } else {
                wrong.add(
                        "%d: %s%n put in %s%n given  %s"
                                .formatted(seed, report, report.truth(), given));
            }
            Files.delete(file);
        }
        assertThat(wrong).isEmpty();
        int sum = proved.values().stream().mapToInt(Integer::intValue).sum();
        assertThat(sum).as("proved %s, not: %s", proved, cannot).isGreaterThan(SEEDS * 17 / 20);
        assertThat(proved).hasSize(5);
    }

    /** The money of an import with the layout, which must be found by itself. */
    private Map<String, Long> imported(Learned learned, Path file, long seed) throws IOException {
        Map<String, Long> given = new TreeMap<>();
        try (Desk desk = new Desk(folder.resolve("desk" + seed))) {
            desk.layout("made", learned.yaml().orElseThrow());
            ImportResult result = desk.enter(file);
            assertThat(result.problems()).as("%d", seed).isEmpty();
            desk.lines().forEach(line -> add(given, line));
            assertThat(desk.reread()).isEmpty();
        }
        return given;
    }

    @ParameterizedTest
    @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "NONE")
    void harmIsTold(MadeShapes.Harm harm) throws IOException {
        List<String> missed = new ArrayList<>();
        for (long seed = 0; seed < SEEDS / 4; seed++) {
            MadeShapes report = new MadeShapes(seed, harm);
            Path file = report.write(folder);
            Learned learned = learn(file, new TreeMap<>());
            Files.delete(file);
            if (learned.isProved()) {
                missed.add(seed + ": " + report + learned.proofs());
            }
        }
        assertThat(missed).isEmpty();
    }
}
