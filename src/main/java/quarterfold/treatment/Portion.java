package quarterfold.treatment;

import java.util.ArrayList;
import java.util.List;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.Entry;
import quarterfold.money.Amount;

/** A part of an entry's amounts that has a liability of its own; mostly the whole of it. */
record Portion(Amounts amounts, Liability liability) {

    /**
     * The portions of an entry: one with its amounts as printed, or, where one price is for goods
     * of several liabilities, its price apportioned (VAT Notice 700 section 31; HMRC manual
     * VATVAL03700).
     */
    static List<Portion> of(Entry entry, Liabilities liabilities, Baskets baskets) {
        return split(entry.amounts(), liabilities.of(entry, baskets));
    }

    /** Amounts shared by price; the last share takes what is left, so that nothing is lost. */
    static List<Portion> split(Amounts amounts, List<Liability.Share> shares) {
        if (shares.size() == 1) {
            return List.of(new Portion(amounts, shares.get(0).liability()));
        }
        Amount prices =
                shares.stream().map(Liability.Share::price).reduce(Amount::plus).orElseThrow();
        boolean net = amounts.gross().isEmpty() && amounts.vat().isEmpty();
        Amount whole = amounts.money();
        Amount left = whole;
        List<Portion> portions = new ArrayList<>();
        for (int i = 0; i < shares.size(); i++) {
            Amount part =
                    i == shares.size() - 1 ? left : whole.shared(shares.get(i).price(), prices);
            left = left.minus(part);
            portions.add(
                    new Portion(
                            net ? Amounts.ofNet(part) : Amounts.ofGross(part),
                            shares.get(i).liability()));
        }
        return portions;
    }
}
