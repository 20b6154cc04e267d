package quarterfold.treatment;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import quarterfold.law.Law;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Particular;
import quarterfold.money.Amount;
import quarterfold.money.Percent;
import quarterfold.money.Rounding;

/**
 * Holds the VAT that a document in another currency states in the return's currency against what
 * its VAT comes to at the rate held. A supplier may have used another rate, so a difference is
 * nothing until it is more than {@code sterling-vat-apart} of {@code limits.csv} and a penny.
 */
final class SterlingVatStated {

    static final String QUERY = "sterling-vat-differs";
    private static final String APART = "sterling-vat-apart";
    private static final Amount PENNY = Amount.ofPennies(1);

    private SterlingVatStated() {}

    /** The query it raises, if it raises one. */
    static Optional<String> query(Exchange.Exchanged exchanged, Law law) {
        LocalDate day = exchanged.entry().taxPoint();
        return stated(exchanged.stated())
                .flatMap(
                        stated ->
                                converted(exchanged)
                                        .filter(right -> isApart(stated, right, law, day)))
                .map(right -> QUERY);
    }

    private static boolean isApart(Amount stated, Amount right, Law law, LocalDate day) {
        return law.limit(APART, day)
                .map(l -> right.abs().portion(new Percent(l.value().amount().decimal())))
                .filter(most -> stated.minus(right).abs().isAbove(most.plus(PENNY)))
                .isPresent();
    }

    private static Optional<Amount> stated(Entry entry) {
        return entry.line().particulars().amount(Particular.STERLING_VAT);
    }

    /** The VAT of the document at the rate held; nothing where it prints none in its currency. */
    private static Optional<Amount> converted(Exchange.Exchanged exchanged) {
        return exchanged
                .conversion()
                .flatMap(
                        conversion ->
                                exchanged
                                        .stated()
                                        .amounts()
                                        .vat()
                                        .map(vat -> conversion.rate().of(vat)));
    }

    static Map<String, String> words(Exchange.Exchanged exchanged) {
        Entry document = exchanged.stated();
        Amount printed = document.amounts().vat().orElse(Amount.ZERO);
        return Map.of(
                "foreign",
                printed + " " + document.profile().currency(),
                "stated",
                stated(document).orElse(Amount.ZERO).toString(),
                "converted",
                converted(exchanged)
                        .orElse(Amount.ZERO)
                        .rounded(Rounding.NEAREST_PENNY)
                        .toString());
    }
}
