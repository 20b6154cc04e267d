package quarterfold.ledger;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import quarterfold.money.Amount;

/**
 * How a return took up an occasion of an earlier period, as its close froze it: a row of the
 * worksheet of corrections.
 *
 * @param number the entry's
 * @param day of the occasion it is about
 * @param cause of the occasion it is about
 * @param of the period the occasion belongs to
 * @param takenUp how the return took it up, such as {@code error}
 * @param declared what returns had for it before, by box id
 * @param right what they should have had
 * @param boxes what the return took up, by box id; empty where it took up nothing
 * @param why in words
 */
public record ClosedCorrection(
        long number,
        LocalDate day,
        String cause,
        YearMonth of,
        String takenUp,
        Map<String, Amount> declared,
        Map<String, Amount> right,
        Map<String, Amount> boxes,
        String why) {

    public ClosedCorrection {
        declared = Collections.unmodifiableMap(new LinkedHashMap<>(declared));
        right = Collections.unmodifiableMap(new LinkedHashMap<>(right));
        boxes = Collections.unmodifiableMap(new LinkedHashMap<>(boxes));
    }
}
