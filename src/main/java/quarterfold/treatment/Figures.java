package quarterfold.treatment;

import java.util.Optional;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.Entry;
import quarterfold.money.Amount;
import quarterfold.money.Percent;
import quarterfold.money.Rounding;

/** The value without VAT and the VAT of an entry, or of a share of it. */
record Figures(Amount net, Amount vat) {

    Figures plus(Figures other) {
        return new Figures(net.plus(other.net), vat.plus(other.vat));
    }

    /** No VAT: the value without any tax the document prints. */
    static Figures none(Amounts amounts) {
        return new Figures(valueWithoutTax(amounts), Amount.ZERO);
    }

    /**
     * VAT as printed; a nought or nothing printed where a rate applies is worked out: inside the
     * price to four decimals, or on the net value to the penny, and to the penny everywhere in a
     * book that rounds each line. A net value with a printed nought is the price: what is paid
     * holds the VAT (VATA 1994 s.19(2)).
     */
    static Figures inside(Amounts amounts, Percent rate, Optional<Rounding> lineRounding) {
        boolean asPrinted = amounts.vat().filter(v -> !v.isZero() || rate.isZero()).isPresent();
        if (asPrinted || rate.isZero()) {
            Amount vat = amounts.vat().orElse(Amount.ZERO);
            return new Figures(valueWithoutTax(amounts), vat);
        }
        if (amounts.gross().isPresent() || amounts.vat().isPresent()) {
            Amount gross = amounts.money();
            Amount vat =
                    lineRounding
                            .map(rounding -> gross.vatInside(rate, rounding))
                            .orElseGet(() -> gross.vatInside(rate));
            return new Figures(gross.minus(vat), vat);
        }
        Amount net = valueWithoutTax(amounts);
        return new Figures(net, net.vatOnTop(rate, Rounding.NEAREST_PENNY));
    }

    /** Of a sale abroad: charged without VAT, its net value alone is the price too. */
    static Amounts asPaid(Amounts amounts) {
        return amounts.vat().isPresent() || amounts.gross().isPresent()
                ? amounts
                : new Amounts(amounts.net(), Optional.of(Amount.ZERO), Optional.empty());
    }

    /**
     * The VAT inside what a price adds to the seller's margin, to four decimals; the price without
     * it is the value.
     */
    static Figures onMargin(
            Amount price, Amount margin, Percent rate, Optional<Rounding> lineRounding) {
        Amount vat =
                lineRounding
                        .map(rounding -> margin.vatInside(rate, rounding))
                        .orElseGet(() -> margin.vatInside(rate));
        return new Figures(price.minus(vat), vat);
    }

    /** Import VAT as printed; the value stated, or the value on which the rate gives that VAT. */
    static Figures ofImport(Amounts amounts, Percent rate) {
        Amount vat =
                amounts.vat()
                        .orElseGet(
                                () ->
                                        valueWithoutTax(amounts)
                                                .vatOnTop(rate, Rounding.NEAREST_PENNY));
        Amount net =
                amounts.net()
                        .orElseGet(
                                () ->
                                        amounts.gross()
                                                .map(g -> g.minus(vat))
                                                .orElseGet(() -> vat.netOfVat(rate)));
        return new Figures(net, vat);
    }

    /**
     * What is paid, VAT included: a document that prints a net value and a rate is for more than
     * the value.
     */
    static Amount price(Entry entry) {
        Amounts amounts = entry.amounts();
        boolean netAlone = amounts.gross().isEmpty() && amounts.vat().isEmpty();
        Amount onTop =
                entry.profile()
                        .rate()
                        .percent()
                        .filter(r -> netAlone)
                        .map(r -> amounts.money().vatOnTop(r, Rounding.NEAREST_PENNY))
                        .orElse(Amount.ZERO);
        return amounts.money().plus(onTop);
    }

    static Amount valueWithoutTax(Amounts amounts) {
        return amounts.net()
                .orElseGet(
                        () ->
                                amounts.gross()
                                        .map(g -> g.minus(amounts.vat().orElse(Amount.ZERO)))
                                        .orElse(Amount.ZERO));
    }
}
