/**
 * Decides each entry: which row of the law's treatment table applies, the value, the VAT, what may
 * be reclaimed, and the boxes; raises queries where a fact is missing.
 *
 * <p>Start at {@link quarterfold.treatment.Treated}. Depends on {@code ledger}, {@code law} and
 * {@code money}; knows nothing of files, periods or papers.
 */
@NullMarked
package quarterfold.treatment;

import org.jspecify.annotations.NullMarked;
