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
import quarterfold.ledger.Kind;
import quarterfold.ledger.Line;

/** Reports made by lot are learned, and give back exactly the money put in, or say they cannot. */
class LearnedReportsTest {
    /** More with {@code -Dseeds=5000}. */
    private static final int SEEDS = Integer.getInteger("seeds", 1_000);

    @TempDir private Path folder;

    static String family(Kind kind) {
        return switch (kind) {
            case SALE, SALE_REFUND -> "goods";
            case DELIVERY, DELIVERY_REFUND -> "delivery";
            case DISCOUNT, DISCOUNT_REVERSED -> "discount";
            case FEE, FEE_REFUND -> "fee";
            case OTHER_MONEY -> "other";
            default -> kind.code();
        };
    }

    private Learned learn(MadeReport report, Map<String, Long> given) throws IOException {
        Path file = report.write(folder);
        Learned learned =
                new Learner(Desk.settings())
                        .learn(file, "made", Map.of(), line -> add(given, line));
        Files.delete(file);
        return learned;
    }

    private static void add(Map<String, Long> given, Line line) {
        long money = line.signedMoney().tenThousandths();
        assertThat(money % 100).isZero();
        MadeReport.add(given, line.taxPoint(), family(line.profile().kind()), money / 100);
    }

    @Test
    void giveBackTheMoneyPutInOrSayTheyCannot() throws IOException {
        assertGivenBack(SEEDS, false);
    }

    @Test
    void giveBackTheMoneyOfRowsThatALineAboveDates() throws IOException {
        assertGivenBack(SEEDS / 2, true);
    }

    private void assertGivenBack(int seeds, boolean above) throws IOException {
        List<String> wrong = new ArrayList<>();
        Map<String, Integer> cannot = new TreeMap<>();
        int proved = 0;
        for (long seed = 0; seed < seeds; seed++) {
            MadeReport report = new MadeReport(seed, MadeReport.Harm.NONE, above);
            Map<String, Long> given = new TreeMap<>();
            Learned learned = learn(report, given);
            if (!learned.isProved()) {
                String why =
                        learned.open().isEmpty()
                                ? String.join(" / ", learned.faults())
                                : learned.open().get(0).id();
                cannot.merge(why.replaceAll("\\d+", "9"), 1, Integer::sum);
            } else if (given.equals(report.truth())) {
                proved++;
            } else {
                wrong.add(
                        seed
                                + ": "
                                + report
                                + "\n put in "
                                + report.truth()
                                + "\n given  "
                                + given);
            }
        }
        assertThat(wrong).isEmpty();
        assertThat(proved).as("not proved: %s", cannot).isGreaterThan(seeds * 17 / 20);
    }

    @ParameterizedTest
    @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "NONE")
    void harmIsTold(MadeReport.Harm harm) throws IOException {
        assertTold(SEEDS / 10, harm, false);
    }

    @ParameterizedTest
    @EnumSource(
            mode = EnumSource.Mode.EXCLUDE,
            names = {"NONE", "ROW_WITHOUT_DATE"})
    void harmOfRowsThatALineAboveDatesIsTold(MadeReport.Harm harm) throws IOException {
        assertTold(SEEDS / 20, harm, true);
    }

    private void assertTold(int seeds, MadeReport.Harm harm, boolean above) throws IOException {
        List<String> missed = new ArrayList<>();
        for (long seed = 0; seed < seeds; seed++) {
            MadeReport report = new MadeReport(seed, harm, above);
            Learned learned = learn(report, new TreeMap<>());
            if (learned.isProved()) {
                missed.add(seed + ": " + report + learned.proofs());
            }
        }
        assertThat(missed).isEmpty();
    }
}
