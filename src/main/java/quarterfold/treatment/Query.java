package quarterfold.treatment;

import java.util.OptionalLong;
import quarterfold.ledger.Decision;
import quarterfold.money.Amount;

/**
 * A question a person must answer before a figure is safe.
 *
 * @param id stable for the same ledger: {@code E123/evidence-missing} for an entry, {@code
 *     S4/payout-does-not-tie/QL-0003} for a source
 * @param entry the entry it is about, where it is about one
 * @param place the file and row, for a person to look at
 * @param question what was found, what is at stake, and what to do
 * @param money the VAT or the difference at stake; zero where none can be said
 * @param holdsClose whether it touches money, so that a period cannot be closed while it is open
 * @param answer the decision that leaves it as it is, in words; empty while it is open
 */
public record Query(
        String id,
        OptionalLong entry,
        String place,
        String question,
        Amount money,
        boolean holdsClose,
        String answer) {

    /** An open question that touches money. */
    public Query(String id, OptionalLong entry, String place, String question, Amount money) {
        this(id, entry, place, question, money, true, "");
    }

    public boolean isOpen() {
        return answer.isEmpty();
    }

    /** The same, left as it is by a decision. */
    public Query setAside(Decision decision) {
        return new Query(
                id,
                entry,
                place,
                question,
                money,
                holdsClose,
                "set aside by %s on %s: %s"
                        .formatted(decision.who(), decision.day(), decision.why()));
    }
}
