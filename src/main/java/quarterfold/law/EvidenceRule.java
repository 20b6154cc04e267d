package quarterfold.law;

import java.util.List;
import java.util.Optional;
import quarterfold.money.Amount;

/**
 * What a kind of evidence supports: a row of {@code evidence.csv}.
 *
 * @param claims whether it supports a reclaim at all
 * @param upTo the most a document may come to, with VAT; empty for no limit
 * @param onlyCategories the expense categories it is good for; empty for all
 * @param mustShow what the document must show, in words
 */
public record EvidenceRule(
        boolean claims, Optional<Amount> upTo, List<String> onlyCategories, String mustShow) {

    public EvidenceRule {
        onlyCategories = List.copyOf(onlyCategories);
    }

    static EvidenceRule of(Table.Row row) {
        String categories = row.cell("only_categories");
        return new EvidenceRule(
                row.parse("claims", Treatments::yesNo, "yes or no"),
                row.maybe("up_to", Amount::of, "an amount such as 250.00"),
                categories.isEmpty() ? List.of() : List.of(categories.split("\\|", -1)),
                row.needed("must_show"));
    }
}
