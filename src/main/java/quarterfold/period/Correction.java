package quarterfold.period;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import quarterfold.ledger.ClosedCorrection;
import quarterfold.ledger.Coded;
import quarterfold.money.Amount;
import quarterfold.treatment.Cause;
import quarterfold.treatment.TakenUp;

/**
 * What a return takes up of an earlier period for one occasion of an entry: a row of the worksheet
 * of corrections. Amounts are exact to four decimals, by box id, with the box's sign.
 *
 * @param entry its number
 * @param day of the occasion it is about
 * @param cause of the occasion it is about
 * @param of the period the occasion belongs to
 * @param takenUp how the return takes it up
 * @param declared what returns had for it before this one
 * @param right what they should have had
 * @param boxes what this return takes up; empty where that is nothing
 * @param why in words, with the authority
 */
public record Correction(
        long entry,
        LocalDate day,
        Cause cause,
        YearMonth of,
        TakenUp takenUp,
        Map<String, Amount> declared,
        Map<String, Amount> right,
        Map<String, Amount> boxes,
        String why) {

    public Correction {
        declared = Map.copyOf(declared);
        right = Map.copyOf(right);
        boxes = Map.copyOf(boxes);
    }

    /** What is right less what was declared, by box id, where that is not nothing. */
    public Map<String, Amount> difference() {
        return Wrong.difference(declared, right);
    }

    /** The boxes it was declared in or belongs in, by id. */
    public SortedSet<String> boxIds() {
        SortedSet<String> ids = new TreeSet<>(declared.keySet());
        ids.addAll(right.keySet());
        return ids;
    }

    ClosedCorrection frozen() {
        return new ClosedCorrection(
                entry, day, cause.code(), of, takenUp.code(), declared, right, boxes, why);
    }

    static Correction of(ClosedCorrection frozen) {
        return new Correction(
                frozen.number(),
                frozen.day(),
                Coded.find(Cause.class, frozen.cause()).orElseThrow(),
                frozen.of(),
                Coded.find(TakenUp.class, frozen.takenUp()).orElseThrow(),
                frozen.declared(),
                frozen.right(),
                frozen.boxes(),
                frozen.why());
    }
}
