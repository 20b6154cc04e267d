package quarterfold.ledger;

import quarterfold.money.Amount;

/**
 * A question that was open when a period was closed.
 *
 * @param id stable for the same ledger, such as {@code E123/evidence-missing}
 * @param entry the entry it is about, or 0
 * @param place the file and row
 * @param question what was found and what to do
 * @param money what was at stake
 */
public record ClosedQuery(String id, long entry, String place, String question, Amount money) {}
