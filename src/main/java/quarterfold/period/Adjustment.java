package quarterfold.period;

import java.util.Map;
import quarterfold.ledger.ClosedAdjustment;
import quarterfold.money.Amount;

/**
 * What a return takes up beside its entries: a figure worked out over a whole period or year, such
 * as the input tax that exempt supplies cost. Sterling, exact to four decimals.
 *
 * @param treatment its name in the tables, such as {@code partial-exemption}; {@code boxes.csv}
 *     says which boxes it moves
 * @param about what it is about, such as a year or an entry, or empty
 * @param why in words, with how it was worked out
 * @param authority the law or guidance it rests on
 * @param boxes what it adds to each box, by box id
 */
public record Adjustment(
        String treatment,
        String about,
        String why,
        String authority,
        Amount net,
        Amount vat,
        Amount claim,
        Map<String, Amount> boxes) {

    public Adjustment {
        boxes = Map.copyOf(boxes);
    }

    ClosedAdjustment frozen() {
        return new ClosedAdjustment(treatment, about, why, authority, net, vat, claim, boxes);
    }

    static Adjustment of(ClosedAdjustment frozen) {
        return new Adjustment(
                frozen.treatment(),
                frozen.about(),
                frozen.why(),
                frozen.authority(),
                frozen.net(),
                frozen.vat(),
                frozen.claim(),
                frozen.boxes());
    }
}
