package quarterfold.treatment;

import java.util.List;
import java.util.Optional;
import quarterfold.law.Dated;
import quarterfold.law.Law;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/**
 * Finds VAT that a document prints above what its rate gives. A supplier may lawfully round, so a
 * penny a line is nothing (VAT Notice 700 para 17.5, HMRC manual VATREC12010); more is an
 * overcharge, of which only the right amount is input tax (HMRC manual VAEC0180). Less than the
 * rate gives is taken as printed: nobody claims more than was charged.
 */
final class Overcharge {

    private static final Amount PENNY = Amount.ofPennies(1);

    private final Law law;

    Overcharge(Law law) {
        this.law = law;
    }

    /** Whether more is printed, with the reason where a rate can be held against it. */
    boolean isIn(Entry entry, Liability liability, List<String> reasons) {
        Optional<Amount> vat = entry.amounts().vat().filter(v -> !v.isZero());
        Optional<Percent> rate = rate(entry, liability);
        if (entry.kind().side() != Kind.Side.PURCHASES || vat.isEmpty() || rate.isEmpty()) {
            return false;
        }
        Amount exact = Figures.valueWithoutTax(entry.amounts()).vatOnTop(rate.get());
        boolean over = vat.get().abs().minus(exact.abs()).compareTo(PENNY) > 0;
        boolean under =
                liability.isTaxed() && exact.abs().minus(vat.get().abs()).compareTo(PENNY) > 0;
        String held =
                over
                        ? "is more than"
                        : under
                                ? "is less than"
                                : liability.isTaxed() ? "agrees with" : "is not more than";
        reasons.add(
                "VAT of %s %s %s%% of the value without VAT"
                        .formatted(vat.get(), held, rate.get()));
        return over;
    }

    /** The rate stated; where none is, the standard rate, which no VAT can be above. */
    private Optional<Percent> rate(Entry entry, Liability liability) {
        return liability.equals(Liability.UNSTATED)
                ? law.rates().on("standard", entry.taxPoint()).map(Dated::value)
                : liability.percent().filter(r -> liability.isTaxed());
    }
}
