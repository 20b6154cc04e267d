package quarterfold.law;

import java.util.Map;
import java.util.Set;

/**
 * A row of {@code treatments.csv}: when the facts are these, this is how VAT applies.
 *
 * @param rule the row's own name, such as {@code S01}
 * @param when the facts it asks for, each with the words that satisfy it; a fact it does not name
 *     may be anything
 * @param choice the book's choice it asks for as {@code name=value}, or empty
 * @param rate a rate category, {@code liability} for the entry's own, or empty where none applies
 * @param vatRule how the VAT is found
 * @param claims whether VAT may be reclaimed, as far as it is not blocked
 * @param query the query it raises, a code of {@code queries.csv}, or empty
 * @param why the rule in words
 */
public record TreatmentRow(
        String rule,
        String treatment,
        Map<Fact, Set<String>> when,
        String choice,
        String rate,
        VatRule vatRule,
        boolean claims,
        String query,
        String why) {

    public TreatmentRow {
        when = Map.copyOf(when);
    }

    boolean matches(Map<Fact, String> facts) {
        return when.entrySet().stream().allMatch(w -> w.getValue().contains(facts.get(w.getKey())));
    }
}
