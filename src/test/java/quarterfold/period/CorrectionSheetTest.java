package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.money.Amount;
import quarterfold.treatment.Cause;
import quarterfold.treatment.TakenUp;

/** The worksheet of corrections, and the limit it is held against: VAT Regulations 1995 reg 34. */
class CorrectionSheetTest {

    private static Correction row(long entry, String of, TakenUp how, Map<String, Amount> boxes) {
        return new Correction(
                entry,
                LocalDate.of(2026, 2, 1),
                Cause.SUPPLY,
                YearMonth.parse(of),
                how,
                Map.of(),
                boxes,
                boxes,
                "came late");
    }

    private static Map<String, Amount> boxes(String one, String four) {
        return Map.of("1", Amount.of(one), "4", Amount.of(four));
    }

    private static CorrectionSheet sheet(Correction... rows) {
        return new CorrectionSheet(List.of(rows), Set.of("1", "2"), Set.of("4"), Optional.empty());
    }

    @Test
    void rowsByPeriodAndByWay() {
        Correction later = row(1, "2026-06", TakenUp.ERROR, boxes("20", "0"));
        Correction disclosed = row(2, "2026-03", TakenUp.DISCLOSED, boxes("7", "0"));
        Correction earlier = row(3, "2026-03", TakenUp.ERROR, boxes("-4", "6"));
        CorrectionSheet sheet = sheet(later, disclosed, earlier);
        assertThat(sheet.isEmpty()).isFalse();
        assertThat(sheet.byPeriod())
                .as("the earliest first, as they came within one")
                .containsExactly(disclosed, earlier, later);
        assertThat(sheet.rows(TakenUp.ERROR)).containsExactly(later, earlier);
        assertThat(sheet.rows(TakenUp.TOO_OLD)).isEmpty();
        assertThat(sheet.boxes(sheet.rows(TakenUp.ERROR))).isEqualTo(boxes("16", "6"));
        assertThat(sheet.output(sheet.rows())).isEqualTo(Amount.of("23"));
        assertThat(sheet.input(sheet.rows())).isEqualTo(Amount.of("6"));
        assertThat(sheet.net(sheet.rows())).isEqualTo(Amount.of("17"));
        assertThat(CorrectionSheet.NONE.isEmpty()).isTrue();
        assertThat(CorrectionSheet.NONE.boxes(List.of())).isEmpty();
    }

    private static CorrectionLimit limit(String choice, String turnover) {
        return CorrectionLimit.of(
                        TempBook.LAW,
                        Map.of("error-at-the-limit", choice),
                        LocalDate.of(2026, 4, 1),
                        Map.of("6", Amount.of(turnover)))
                .orElseThrow();
    }

    /**
     * T-503, reg 34(3): less than 10,000, or else not above the share of box 6: where 1 per cent of
     * it is 10,000 too, exactly that is within it whatever the book chose.
     */
    @ParameterizedTest(name = "{0}, box 6 {1}, {2}: {3}")
    @CsvSource({
        "separately, 999999, 10000, false",
        "separately, 1000000, 10000, true",
        "separately, 1000000, 10000.01, false",
        "on-the-return, 999999, 10000, true"
    })
    void atTheFloorItself(String choice, String turnover, String net, boolean allowed) {
        assertThat(limit(choice, turnover).allows(Amount.of(net))).isEqualTo(allowed);
        assertThat(limit(choice, turnover).allows(Amount.of(net).negated())).isEqualTo(allowed);
    }

    /** The cap is named where it lowers the share alone. */
    @Test
    void theCapIsNamedWhereItCounts() {
        assertThat(limit("separately", "5000000").why())
                .isEqualTo(
                        "the larger of 10000.00 and 1% of box 6, which is 50000.00 of 5000000.00");
        assertThat(limit("separately", "5000001").why()).endsWith(", at most 50000.00");
    }
}
