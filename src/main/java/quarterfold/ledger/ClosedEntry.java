package quarterfold.ledger;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import quarterfold.money.Amount;

/**
 * How VAT applied to one occasion of an entry, as a close froze it.
 *
 * @param closedIn the period whose close froze it: that of its day, or a later one
 * @param number the entry's
 * @param day of the occasion: for most entries the tax point
 * @param cause what happened on the day, such as {@code supply}
 * @param takenUp how it came into the return, such as {@code in-its-period}
 * @param treatment such as {@code uk-sale}
 * @param rule the row of the treatment table that decided
 * @param rate in words, or empty
 * @param claim the part of the VAT reclaimed
 * @param boxes what it added to each box, by box id; boxes it does not touch are absent
 * @param evidence the grade of its evidence and the reasons, one a line; empty where none was
 *     weighed
 * @param exchange its money in the return's currency and the numbers of the rates used, such as
 *     {@code 1996.7574 12}; empty where nothing was converted
 */
public record ClosedEntry(
        YearMonth closedIn,
        long number,
        LocalDate day,
        String cause,
        String takenUp,
        String treatment,
        String rule,
        String rate,
        Amount net,
        Amount vat,
        Amount claim,
        Map<String, Amount> boxes,
        String evidence,
        String exchange) {

    public ClosedEntry {
        boxes = Collections.unmodifiableMap(new LinkedHashMap<>(boxes));
    }

    /** An occasion without evidence that was weighed, in the return's currency. */
    public ClosedEntry(
            YearMonth closedIn,
            long number,
            LocalDate day,
            String cause,
            String takenUp,
            String treatment,
            String rule,
            String rate,
            Amount net,
            Amount vat,
            Amount claim,
            Map<String, Amount> boxes) {
        this(
                closedIn, number, day, cause, takenUp, treatment, rule, rate, net, vat, claim,
                boxes, "", "");
    }
}
