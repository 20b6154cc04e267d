package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import quarterfold.ledger.Line;
import quarterfold.ledger.SampleLine;
import quarterfold.money.Amount;

/** A layout may have a column of payouts and rows of payouts; the column is what is stated. */
class PayoutsTest {

    private static Line row(String kind, String gross) {
        return SampleLine.of(kind)
                .channel("Quaylark", "no")
                .settlement("QL-1")
                .gross(gross)
                .line(2);
    }

    private static List<String> queries(boolean column, Line... rows) {
        Payouts payouts = new Payouts();
        for (Line row : rows) {
            payouts.add(row);
            if (column) {
                payouts.state(row.profile(), Amount.of("100"));
            }
        }
        Line other = SampleLine.of("sale").channel("Quaylark", "no").settlement("QL-2").line(3);
        payouts.add(other);
        List<String> raised = new ArrayList<>();
        payouts.tie(true, "a.csv", (code, about, text) -> raised.add(code + ": " + text));
        return raised;
    }

    @Test
    void theColumnIsHeldAgainstTheRowsThoughThePayoutRowTies() {
        assertThat(queries(true, row("sale", "90"), row("payout", "90")))
                .containsExactly(
                        "stated-payout-does-not-tie: settlement QL-1 states a payout of GBP 100.00; its"
                                + " other rows, 1 of them, sum to 90.00; the difference is 10.00: which"
                                + " rows are missing, or which are not of this settlement? The file"
                                + " begins with it, so others of its rows may be in another export; set"
                                + " this question aside once all of them are entered and tie.");
    }

    @Test
    void withoutAColumnThePayoutRowIs() {
        assertThat(queries(false, row("sale", "90"), row("payout", "100")))
                .containsExactly(
                        "payout-does-not-tie: settlement QL-1 states a payout of GBP 100.00; its other"
                                + " rows, 1 of them, sum to 90.00; the difference is 10.00: which rows"
                                + " are missing, or which are not of this settlement? The file begins"
                                + " with it, so others of its rows may be in another export; this"
                                + " question goes once all of them are entered and tie.");
    }
}
