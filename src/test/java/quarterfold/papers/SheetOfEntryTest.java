package quarterfold.papers;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind.Side;
import quarterfold.ledger.SampleLine;
import quarterfold.money.Amount;
import quarterfold.treatment.Occasion;
import quarterfold.treatment.TakenUp;
import quarterfold.treatment.Treated;

/** Which sheet of the workbook an entry is on. */
class SheetOfEntryTest {

    private static Side side(SampleLine line, Map<String, Amount> boxes) {
        return EntrySheets.sideOf(
                new Treated(
                        Occasion.of(new Entry(1, 1, line.line(2))),
                        TakenUp.IN_ITS_PERIOD,
                        "any",
                        "X01",
                        "any",
                        "any",
                        "",
                        Amount.of("30"),
                        Amount.ZERO,
                        Amount.ZERO,
                        boxes,
                        List.of()));
    }

    @Test
    void aFeeLineOfASettlementIsMoney() {
        SampleLine fee = SampleLine.of("fee").gross("30").settlement("QL-0001");
        assertThat(side(fee, Map.of())).isEqualTo(Side.MONEY);
        assertThat(side(fee, Map.of("7", Amount.of("30")))).isEqualTo(Side.PURCHASES);
    }

    @Test
    void otherEntriesAreOnTheSheetOfTheirKind() {
        assertThat(side(SampleLine.of("fee").gross("30"), Map.of())).isEqualTo(Side.PURCHASES);
        assertThat(side(SampleLine.of("sale").gross("30").settlement("QL-0001"), Map.of()))
                .isEqualTo(Side.SALES);
        assertThat(side(SampleLine.of("import-duty").gross("30"), Map.of()))
                .isEqualTo(Side.IMPORTS);
    }
}
