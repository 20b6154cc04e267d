package quarterfold.treatment;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.ledger.Entry;
import quarterfold.money.Amount;

/**
 * An occasion of an entry and how VAT applies to it. The figures are sterling, exact to four
 * decimals, in the direction of the entry's kind: a refund's VAT is positive here and its boxes are
 * negative.
 *
 * @param takenUp how it came into the return
 * @param treatment the treatment's name in the tables, such as {@code uk-sale}
 * @param rule the row of the treatment table that decided, such as {@code S01}
 * @param why the rule in words
 * @param citation the law or guidance the rule rests on
 * @param rate the rate in words, such as {@code 20%}; {@code 20% and 0%} for a mixed basket; empty
 *     where no rate applies
 * @param net the value without VAT
 * @param vat the VAT of the entry, whoever accounts for it
 * @param claim the part of the VAT that may be reclaimed; zero for sales
 * @param boxes what it adds to each box, by box id; boxes it does not touch are absent
 * @param queries what a person must answer about it; often none
 * @param evidence how good the document is, for a purchase or an import; empty for all else
 * @param conversion how it came into sterling, of an entry in another currency
 */
public record Treated(
        Occasion occasion,
        TakenUp takenUp,
        String treatment,
        String rule,
        String why,
        String citation,
        String rate,
        Amount net,
        Amount vat,
        Amount claim,
        Map<String, Amount> boxes,
        List<Query> queries,
        Optional<EvidenceGrade> evidence,
        Optional<Conversion> conversion) {

    public Treated {
        boxes = Map.copyOf(boxes);
        queries = List.copyOf(queries);
    }

    /** An occasion in sterling, without evidence that was weighed. */
    public Treated(
            Occasion occasion,
            TakenUp takenUp,
            String treatment,
            String rule,
            String why,
            String citation,
            String rate,
            Amount net,
            Amount vat,
            Amount claim,
            Map<String, Amount> boxes,
            List<Query> queries) {
        this(
                occasion,
                takenUp,
                treatment,
                rule,
                why,
                citation,
                rate,
                net,
                vat,
                claim,
                boxes,
                queries,
                Optional.empty(),
                Optional.empty());
    }

    public Entry entry() {
        return occasion.entry();
    }

    /** The entry's money in sterling, in the direction of its kind. */
    public Amount money() {
        return conversion.map(Conversion::money).orElseGet(() -> entry().amounts().money());
    }

    /** The same treatment of an entry that no return takes up: it adds to no box. */
    public Treated inNoBox() {
        return takenUp(TakenUp.NOWHERE, Map.of());
    }

    /** The same, come into a return in another way, with what it then adds to the boxes. */
    public Treated takenUp(TakenUp how, Map<String, Amount> adds) {
        return new Treated(
                occasion,
                how,
                treatment,
                rule,
                why,
                citation,
                rate,
                net,
                vat,
                claim,
                adds,
                queries,
                evidence,
                conversion);
    }
}
