package quarterfold.treatment;

import java.time.LocalDate;
import quarterfold.ledger.Entry;

/**
 * A day on which an entry does something to a return. Most entries have one: the supply, on the tax
 * point. Some have several, such as a part payment each, or the day the time for export evidence
 * runs out.
 *
 * @param day decides the return period
 * @param taxPoint decides the law: the rates, limits and rows in force
 * @param share how much of the entry it is about
 */
public record Occasion(Entry entry, LocalDate day, LocalDate taxPoint, Cause cause, Share share) {

    /** An occasion of an entry whose tax point is as entered. */
    public Occasion(Entry entry, LocalDate day, Cause cause, Share share) {
        this(entry, day, entry.taxPoint(), cause, share);
    }

    /** The supply of the whole entry, on its tax point. */
    public static Occasion of(Entry entry) {
        return new Occasion(entry, entry.taxPoint(), Cause.SUPPLY, Share.WHOLE);
    }
}
