package quarterfold.ledger;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import quarterfold.money.Amount;

/**
 * How VAT applied to an entry, as a close froze it.
 *
 * @param number the entry's
 * @param treatment such as {@code uk-sale}
 * @param rule the row of the treatment table that decided
 * @param rate in words, or empty
 * @param claim the part of the VAT reclaimed
 * @param boxes what it added to each box, by box id; boxes it does not touch are absent
 */
public record ClosedEntry(
        long number,
        String treatment,
        String rule,
        String rate,
        Amount net,
        Amount vat,
        Amount claim,
        Map<String, Amount> boxes) {

    public ClosedEntry {
        boxes = Collections.unmodifiableMap(new LinkedHashMap<>(boxes));
    }
}
