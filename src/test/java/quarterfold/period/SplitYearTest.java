package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.money.Amount;

/**
 * However a year's entries come, in time or after the close of their quarter, boxes 1 and 4 of the
 * year are those of entries that all came in time: VAT Regulations 1995 reg 34(4) and (5) bring to
 * a later return exactly what an earlier one lacked. All amounts are far below the limit.
 */
class SplitYearTest {

    private static final List<String> QUARTERS =
            List.of("2026-03", "2026-06", "2026-09", "2026-12", "2027-03");

    @TempDir Path folder;

    static IntStream seeds() {
        return IntStream.range(0, 12);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void yearIsTheSame(int seed) {
        Random random = new Random(seed);
        List<SampleLine> lines = new ArrayList<>();
        List<Integer> arrivals = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            int quarter = random.nextInt(4);
            lines.add(line(random, quarter, i));
            arrivals.add(quarter + random.nextInt(5 - quarter));
        }
        List<Amount> straight = year("straight", lines, arrivals, false);
        assertThat(year("split", lines, arrivals, true)).isEqualTo(straight);
        assertThat(straight).noneMatch(Amount::isZero);
    }

    private static SampleLine line(Random random, int quarter, int number) {
        LocalDate day = LocalDate.of(2026, 1 + 3 * quarter, 1).plusDays(random.nextInt(89));
        String pounds = 1 + random.nextInt(400) + ".00";
        return switch (random.nextInt(6)) {
            case 0, 1 -> SampleLine.of("sale").on(day.toString()).gross(pounds).rate("20");
            case 2 -> SampleLine.of("sale-refund").on(day.toString()).gross(pounds).rate("5");
            case 3 -> bought("purchase", day, pounds);
            case 4 ->
                    bought("purchase", day, pounds)
                            .particular(
                                    Particular.HELD, day.plusDays(random.nextInt(60)).toString());
            default ->
                    SampleLine.of("import-vat-postponed")
                            .on(day.toString())
                            .vat(pounds)
                            .document("26GB" + number)
                            .evidence("postponed-statement");
        };
    }

    private static SampleLine bought(String kind, LocalDate day, String net) {
        return SampleLine.of(kind)
                .on(day.toString())
                .net(net)
                .rate("20")
                .party("Example supplier", "GB", "GB101747696")
                .evidence("invoice");
    }

    /** Boxes 1 and 4 over all quarters, before rounding. */
    private List<Amount> year(
            String name, List<SampleLine> lines, List<Integer> arrivals, boolean split) {
        try (TempBook book =
                new TempBook(
                        folder.resolve(name),
                        SampleSettings.registered(LocalDate.of(2026, 1, 1), "3 6 9 12"))) {
            if (!split) {
                book.enter("all.csv", lines.toArray(SampleLine[]::new));
            }
            Amount output = Amount.ZERO;
            Amount input = Amount.ZERO;
            for (int quarter = 0; quarter < QUARTERS.size(); quarter++) {
                if (split) {
                    List<SampleLine> come = new ArrayList<>();
                    for (int i = 0; i < lines.size(); i++) {
                        if (arrivals.get(i) == quarter) {
                            come.add(lines.get(i));
                        }
                    }
                    book.enter("come" + quarter + ".csv", come.toArray(SampleLine[]::new));
                }
                VatReturn closed = book.close(QUARTERS.get(quarter));
                output = output.plus(closed.box("1").exact());
                input = input.plus(closed.box("4").exact());
            }
            assertThat(book.of("2027-06").corrections().isEmpty()).isTrue();
            return List.of(output, input);
        }
    }
}
