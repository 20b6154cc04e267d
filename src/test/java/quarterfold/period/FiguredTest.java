package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import quarterfold.law.Box;
import quarterfold.law.Law;
import quarterfold.money.Amount;

/** The arithmetic of the form: sums, one rounding a box, and box 5 on signed values. */
class FiguredTest {

    private static final List<Box> FORM = Law.of("GB").form(LocalDate.of(2026, 9, 30));

    private static List<BoxFigure> figured(Map<String, String> boxes) {
        Figured figured = new Figured();
        boxes.forEach((box, amount) -> figured.add(Map.of(box, Amount.of(amount))));
        return figured.boxes(FORM);
    }

    private static String text(List<BoxFigure> boxes, int box) {
        return boxes.get(box - 1).text();
    }

    /** T-101 to T-105: boxes as presented, and whether the published rules take them. */
    @ParameterizedTest(name = "{0}: {1} + {2} = {3}, less {4} is {5}; {7} {8} {9} [{10}]")
    @CsvFileSource(files = "fixtures/published/form.csv", numLinesToSkip = 1)
    void publishedForms(
            String id,
            String box1,
            String box2,
            String box3,
            String box4,
            String box5,
            String box6,
            String outcome,
            @Nullable String direction,
            @Nullable String reason,
            String source) {
        List<BoxFigure> boxes = figured(Map.of("1", box1, "2", box2, "4", box4, "6", box6));
        boolean same =
                text(boxes, 3).equals(box3)
                        && text(boxes, 5).equals(box5)
                        && text(boxes, 6).equals(box6);
        assertThat(same)
                .as("%s %s: %s [%s]", id, outcome, reason, source)
                .isEqualTo(outcome.equals("accepted"));
        if (direction != null) {
            assertThat(Figured.direction(boxes).code())
                    .as("%s [%s]", id, source)
                    .isEqualTo(direction);
        }
    }

    /** T-112: refunds above sales. VAT Regulations 1995 regs 38(3)(b) and 39. */
    @Test
    void refundsAboveSales() {
        Figured figured = new Figured();
        figured.add(Map.of("1", Amount.of("300"), "6", Amount.of("1500")));
        figured.add(Map.of("1", Amount.of("-520"), "6", Amount.of("-2600")));
        figured.add(Map.of("4", Amount.of("80"), "7", Amount.of("400")));
        List<BoxFigure> boxes = figured.boxes(FORM);
        assertThat(boxes)
                .extracting(BoxFigure::text)
                .containsExactly(
                        "-220.00", "0.00", "-220.00", "80.00", "300.00", "-1100", "400", "0", "0");
        assertThat(Figured.direction(boxes)).isEqualTo(Direction.RECLAIM);
    }

    /** VATREC12020: exact sums, rounded once; boxes 6 to 9 drop the pence, as VAT100 has them. */
    @Test
    void eachBoxIsRoundedOnce() {
        Figured figured = new Figured();
        for (int i = 0; i < 3; i++) {
            figured.add(Map.of("1", Amount.of("1.665"), "6", Amount.of("8.325")));
        }
        List<BoxFigure> boxes = figured.boxes(FORM);
        assertThat(boxes.get(0).exact()).isEqualTo(Amount.of("4.995"));
        assertThat(text(boxes, 1)).isEqualTo("5.00");
        assertThat(boxes.get(5).exact()).isEqualTo(Amount.of("24.975"));
        assertThat(text(boxes, 6)).isEqualTo("24");
        assertThat(text(figured(Map.of("6", "-24.9999")), 6)).isEqualTo("-24");
    }

    /** Rule VAT_TOTAL_VALUE: box 3 adds the figures of boxes 1 and 2, not what is behind them. */
    @Test
    void aComputedBoxTakesFigures() {
        List<BoxFigure> boxes = figured(Map.of("1", "0.005", "2", "0.005", "4", "0.004"));
        assertThat(text(boxes, 1)).isEqualTo("0.01");
        assertThat(text(boxes, 2)).isEqualTo("0.01");
        assertThat(boxes.get(2).exact()).isEqualTo(Amount.of("0.02"));
        assertThat(text(boxes, 4)).isEqualTo("0.00");
        assertThat(text(boxes, 5)).isEqualTo("0.02");
    }

    @Test
    void direction() {
        assertThat(Figured.direction(figured(Map.of("1", "1")))).isEqualTo(Direction.PAY);
        assertThat(Figured.direction(figured(Map.of("4", "1")))).isEqualTo(Direction.RECLAIM);
        assertThat(Figured.direction(figured(Map.of("1", "1", "4", "1")))).isEqualTo(Direction.NIL);
        assertThat(Figured.direction(figured(Map.of()))).isEqualTo(Direction.NIL);
        assertThat(Figured.direction(List.of())).isEqualTo(Direction.NIL);
    }

    @Test
    void nothingAddedIsNoughtInEveryBox() {
        assertThat(figured(Map.of()))
                .extracting(BoxFigure::text)
                .containsExactly("0.00", "0.00", "0.00", "0.00", "0.00", "0", "0", "0", "0");
    }
}
