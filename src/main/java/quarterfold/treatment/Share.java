package quarterfold.treatment;

import quarterfold.money.Amount;

/**
 * A part of an entry's money, as the stretch from what came before it: what several parts make of
 * an amount adds up to that amount exactly.
 *
 * @param before the money of the parts before this one
 * @param part the money of this part
 * @param whole the entry's money; not zero, but for {@link #WHOLE}
 */
public record Share(Amount before, Amount part, Amount whole) {

    /** All of the entry, whatever its money. */
    public static final Share WHOLE = new Share(Amount.ZERO, Amount.ZERO, Amount.ZERO);

    public boolean isWhole() {
        return equals(WHOLE) || (before.isZero() && part.equals(whole));
    }

    /** This part of an amount that belongs to the whole. */
    public Amount of(Amount amount) {
        return isWhole()
                ? amount
                : amount.shared(before.plus(part), whole).minus(amount.shared(before, whole));
    }
}
