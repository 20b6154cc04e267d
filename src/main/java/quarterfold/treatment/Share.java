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

    /** This part with the one that follows it. */
    Share joined(Share next) {
        return new Share(before, part.plus(next.part), whole);
    }

    /** Where this part ends. */
    Amount end() {
        return before.plus(part);
    }

    /** Of this part, what lies from {@code from} to {@code to}; negative where it runs back. */
    Share between(Amount from, Amount to) {
        Amount start = within(from);
        return new Share(start, within(to).minus(start), whole);
    }

    private Amount within(Amount at) {
        Amount low = part.signum() < 0 ? end() : before;
        Amount high = part.signum() < 0 ? before : end();
        return at.compareTo(low) < 0 ? low : at.compareTo(high) > 0 ? high : at;
    }
}
