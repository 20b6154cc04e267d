package quarterfold.independent;

import java.time.LocalDate;

/**
 * A kind of thing that happens to a business. It writes the rows that tell of it, and beside them
 * what the guidance on each box makes of it: whoever writes a category knows what it is, so no rule
 * has to find that out.
 */
interface Category {

    /** Whether it can happen to the trader on that day, and the sum for it is known. */
    boolean fits(Trader trader, LocalDate day);

    /** One or a few rows of about that day. */
    void happen(Dice dice, Trader trader, LocalDate day, Sheets sheets);
}
