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
 * @param holdsClose whether a close waits for its answer
 * @param answer the decision that left it as it is, in words; empty where it was open
 */
public record ClosedQuery(
        String id,
        long entry,
        String place,
        String question,
        Amount money,
        boolean holdsClose,
        String answer) {}
