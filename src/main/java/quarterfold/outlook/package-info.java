/**
 * The outlook: what lies ahead of a business, worked out from its periods and the law's tables.
 *
 * <p>Start at {@link quarterfold.outlook.Deadlines}: when a return and its payment are due, and
 * what being late costs. Every number is a row of {@code periods.csv}; the day is given, never
 * looked up. Knows period and what period knows; nothing of papers or screens.
 */
@NullMarked
package quarterfold.outlook;

import org.jspecify.annotations.NullMarked;
