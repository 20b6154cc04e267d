package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;

/**
 * Vouchers issued since 2019. One for a single purpose is taxed when it is issued, and its use is
 * nothing; one for several is nothing when issued, and taxed when it is used (VATA 1994 s.51C and
 * Sch 10B).
 */
final class Vouchers implements Category {

    @Override
    public boolean fits(Trader trader, LocalDate day) {
        return day.getYear() >= 2021 && trader.isUk() && !trader.stocksAbroad();
    }

    @Override
    public void happen(Dice dice, Trader trader, LocalDate day, Sheets sheets) {
        boolean single = dice.oneIn(2);
        boolean issued = dice.oneIn(2);
        BigDecimal price = dice.pounds();
        sheets.row(day, issued ? "voucher" : "voucher-redeemed")
                .put("category", single ? "single-purpose" : "multi-purpose")
                .put("gross", price.toPlainString())
                .put("rate", Vat.standard(day).toPlainString());
        if (single == issued) {
            BigDecimal vat = Vat.inside(price, Vat.standard(day), trader);
            sheets.box(day, 1, vat);
            sheets.box(day, 6, price.subtract(vat));
        }
    }
}
