/**
 * Return periods: the calendar, the draft return, the close that freezes it, and vouching.
 *
 * <p>Start at {@link quarterfold.period.VatReturn}. Depends on {@code treatment} and below; knows
 * nothing of files' formats or of how papers look.
 */
@NullMarked
package quarterfold.period;

import org.jspecify.annotations.NullMarked;
