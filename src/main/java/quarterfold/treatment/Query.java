package quarterfold.treatment;

import java.util.OptionalLong;
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
 */
public record Query(String id, OptionalLong entry, String place, String question, Amount money) {}
