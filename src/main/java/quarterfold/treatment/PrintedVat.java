package quarterfold.treatment;

import java.util.Optional;
import java.util.function.Supplier;
import quarterfold.law.VatRule;
import quarterfold.ledger.ChannelCollects;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.money.Amount;
import quarterfold.money.Percent;
import quarterfold.money.Rounding;

/**
 * Compares the VAT a document prints with what its rate gives. It is taken as printed, since a
 * supplier may lawfully round down (VAT Notice 700 para 17.5, HMRC manual VATREC12010); more than a
 * penny away is a question. Of an overcharge only what the rate gives is reclaimed (HMRC manual
 * VAEC0180), while VAT shown on the seller's own invoice is owed even where none was due (VATA 1994
 * Sch 11 para 5).
 */
final class PrintedVat {

    private static final Amount PENNY = Amount.ofPennies(1);

    private PrintedVat() {}

    /**
     * The query that the printed VAT raises, if it raises one.
     *
     * @param most the rate that VAT printed without a rate cannot be above, looked up where it is
     *     needed
     */
    static Optional<String> query(
            Entry entry, Ruling ruling, Figures figures, Supplier<Optional<Percent>> most) {
        Optional<Amount> printed = entry.amounts().vat();
        if (printed.isEmpty()) {
            return Optional.empty();
        }
        boolean sale = entry.kind().side() == Kind.Side.SALES;
        if (sale && isLeftOut(entry, ruling, printed.get())) {
            return Optional.of("sale-vat-untaxed");
        }
        if (!ruling.row().query().isEmpty() || ruling.row().vatRule() != VatRule.INSIDE) {
            return Optional.empty();
        }
        if (ruling.rate().isEmpty()) {
            return most.get()
                    .filter(r -> isAbove(printed.get(), figures.net().vatOnTop(r)))
                    .map(r -> "vat-above-every-rate");
        }
        Percent rate = ruling.rate().get();
        if (printed.get().isZero() && !rate.isZero()) {
            return sale ? Optional.of("sale-vat-nil") : Optional.empty();
        }
        Amount right = figures.net().vatOnTop(rate);
        if (!isAbove(printed.get().minus(right), Amount.ZERO)) {
            return Optional.empty();
        }
        return Optional.of(
                sale
                        ? "sale-vat-differs"
                        : isAbove(printed.get(), right) ? "vat-overcharged" : "vat-differs");
    }

    /** The query of an entry of several rates, of which the VAT is worked out, not printed. */
    static Optional<String> ofSeveral(Entry entry, Amount vat) {
        return entry.amounts()
                .vat()
                .filter(printed -> !printed.isZero())
                .filter(printed -> isAbove(printed.minus(vat), Amount.ZERO))
                .map(printed -> "sale-vat-apportioned");
    }

    /**
     * The VAT of a document that may be input tax: as printed, but of an overcharge only what its
     * rate gives, or the standard rate where it states none.
     */
    static Amount claimable(
            Exchange.Exchanged exchanged,
            Ruling ruling,
            Figures figures,
            Supplier<Optional<Percent>> most) {
        if (exchanged.entry().kind().side() != Kind.Side.PURCHASES
                || ruling.row().vatRule() != VatRule.INSIDE) {
            return figures.vat();
        }
        Figures printed = exchanged.printed(figures);
        return ruling.rate()
                .or(most)
                .map(rate -> printed.net().vatOnTop(rate))
                .filter(right -> isAbove(printed.vat(), right))
                .map(right -> figures.vat().shared(right, printed.vat()))
                .map(right -> right.rounded(Rounding.NEAREST_PENNY))
                .orElse(figures.vat());
    }

    /** VAT that the seller states on a sale which is decided to be without VAT. */
    private static boolean isLeftOut(Entry entry, Ruling ruling, Amount printed) {
        return !printed.isZero()
                && ruling.row().vatRule() == VatRule.NONE
                && !ruling.row().treatment().equals("undecided")
                && entry.profile().channelCollects() != ChannelCollects.YES;
    }

    private static boolean isAbove(Amount amount, Amount limit) {
        return amount.abs().minus(limit.abs()).compareTo(PENNY) > 0;
    }
}
