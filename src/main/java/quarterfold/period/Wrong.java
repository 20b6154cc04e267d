package quarterfold.period;

import java.time.LocalDate;
import java.util.Map;
import java.util.TreeMap;
import quarterfold.ledger.Close;
import quarterfold.money.Amount;
import quarterfold.treatment.Cause;
import quarterfold.treatment.Treated;

/**
 * An occasion in which a closed return differs from what is right: one that came after the close,
 * or whose exchange rate did, or one that was decided otherwise since.
 *
 * @param treated what a return shows of it; several occasions of one entry may share it
 * @param day of the occasion
 * @param cause of the occasion
 * @param of the closed period the day is in
 * @param late whether no return had it
 * @param rateCame whether returns had it without its money, for want of an exchange rate
 * @param declared what returns had for it so far, by box id
 * @param right what they should have had
 */
record Wrong(
        Treated treated,
        LocalDate day,
        Cause cause,
        Close of,
        boolean late,
        boolean rateCame,
        Map<String, Amount> declared,
        Map<String, Amount> right) {

    Map<String, Amount> difference() {
        return difference(declared, right);
    }

    static Map<String, Amount> difference(Map<String, Amount> declared, Map<String, Amount> right) {
        Map<String, Amount> difference = new TreeMap<>(right);
        declared.forEach((box, amount) -> difference.merge(box, amount.negated(), Amount::plus));
        difference.values().removeIf(Amount::isZero);
        return difference;
    }
}
