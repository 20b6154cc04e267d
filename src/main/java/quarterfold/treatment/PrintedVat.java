package quarterfold.treatment;

import java.util.Optional;
import quarterfold.law.VatRule;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/**
 * Compares the VAT a document prints with what its rate gives. It is taken as printed, since a
 * supplier may lawfully round down (VAT Notice 700 para 17.5, HMRC manual VATREC12010); more than a
 * penny away is a question, as an overcharge is not input tax (HMRC manual VAEC0180).
 */
final class PrintedVat {

    private static final Amount PENNY = Amount.ofPennies(1);

    private PrintedVat() {}

    /** The query that the printed VAT raises, if it raises one. */
    static Optional<String> query(Entry entry, Decision decision, Figures figures) {
        Optional<Amount> printed = entry.amounts().vat();
        if (printed.isEmpty() || !decision.row().query().isEmpty()) {
            return Optional.empty();
        }
        boolean sale = entry.kind().side() == Kind.Side.SALES;
        if (decision.row().vatRule() == VatRule.INSIDE && decision.rate().isPresent()) {
            Percent rate = decision.rate().get();
            if (printed.get().isZero() && !rate.isZero()) {
                return sale ? Optional.of("sale-vat-nil") : Optional.empty();
            }
            Amount difference = printed.get().minus(figures.net().vatOnTop(rate)).abs();
            return difference.compareTo(PENNY) > 0 ? Optional.of("vat-differs") : Optional.empty();
        }
        return Optional.empty();
    }
}
