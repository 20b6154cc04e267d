package quarterfold.treatment;

import java.time.LocalDate;

/**
 * A part of a supply as a return counts it.
 *
 * @param day on which it counts
 * @param taxPoint the day whose law it is under
 */
record Counted(LocalDate day, LocalDate taxPoint, Cause cause, Share share) {

    boolean isLike(Counted other) {
        return day.equals(other.day) && cause == other.cause;
    }

    /** This part with the one that follows it, on the day of this and under the law of that. */
    Counted joined(Counted next) {
        return new Counted(day, next.taxPoint, cause, share.joined(next.share));
    }
}
