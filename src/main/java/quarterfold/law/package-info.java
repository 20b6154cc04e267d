/**
 * A country's VAT law as dated tables, read from {@code templates/law}.
 *
 * <p>Start at {@link quarterfold.law.Law}. Every number, date, box and treatment stands in a table
 * row with its source; the code here only reads, checks and looks up. Depends only on {@code
 * money}.
 */
@NullMarked
package quarterfold.law;

import org.jspecify.annotations.NullMarked;
