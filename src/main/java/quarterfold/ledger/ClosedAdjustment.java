package quarterfold.ledger;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import quarterfold.money.Amount;

/**
 * What a return took up beside its entries, as a close froze it.
 *
 * @param treatment its name in the tables, such as {@code partial-exemption}
 * @param about what it is about, such as a period or an entry, or empty
 * @param why in words, with how it was worked out
 * @param authority the law or guidance it rests on
 */
public record ClosedAdjustment(
        String treatment,
        String about,
        String why,
        String authority,
        Amount net,
        Amount vat,
        Amount claim,
        Map<String, Amount> boxes) {

    public ClosedAdjustment {
        boxes = Collections.unmodifiableMap(new LinkedHashMap<>(boxes));
    }
}
