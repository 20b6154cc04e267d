package quarterfold.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quarterfold.money.Amount;
import quarterfold.money.Rounding;

/**
 * The VAT of each line of a breakdown in the book's currency, where an invoice in another states
 * the total of VAT in it (BT-111): that of the one line with VAT, or shared over several by their
 * VAT, to the penny, so that the shares make the total.
 */
final class SterlingVat {
    private SterlingVat() {}

    /**
     * A share for each line of the breakdown, in its order; nothing for lines without VAT, and for
     * all of them where the invoice states no such total.
     *
     * @param home the book's currency
     */
    static List<Optional<Amount>> of(Invoice invoice, String home) {
        Optional<Amount> total =
                invoice.accountingVat()
                        .filter(vat -> vat.currency().equals(home))
                        .map(Invoice.AccountingVat::amount);
        Amount whole =
                invoice.breakdown().stream()
                        .map(Invoice.VatLine::vat)
                        .reduce(Amount.ZERO, Amount::plus);
        List<Optional<Amount>> shares = new ArrayList<>();
        Amount before = Amount.ZERO;
        Amount given = Amount.ZERO;
        for (Invoice.VatLine line : invoice.breakdown()) {
            if (total.isEmpty() || whole.isZero() || line.vat().isZero()) {
                shares.add(Optional.empty());
                continue;
            }
            before = before.plus(line.vat());
            Amount until = total.get().shared(before, whole).rounded(Rounding.NEAREST_PENNY);
            shares.add(Optional.of(until.minus(given)));
            given = until;
        }
        return List.copyOf(shares);
    }
}
