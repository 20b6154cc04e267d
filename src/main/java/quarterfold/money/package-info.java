/**
 * Exact amounts of money, VAT fractions and named roundings.
 *
 * <p>Start at {@link quarterfold.money.Amount}. Nothing here knows a rate, a date or a country: the
 * percentages come from the law's tables and the currencies from the ledger. Depends on nothing.
 */
@NullMarked
package quarterfold.money;

import org.jspecify.annotations.NullMarked;
