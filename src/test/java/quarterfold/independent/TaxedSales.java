package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/**
 * Sales at home that the seller itself accounts for. Box 1 has their VAT and box 6 their value
 * without it, whatever the rate; exempt sales are in box 6 alone, and what is outside the scope is
 * nowhere (VAT Notice 700/12 boxes 1 and 6).
 */
final class TaxedSales implements Category {

    private final List<Liability> goods;

    TaxedSales(List<Liability> goods) {
        this.goods = goods;
    }

    @Override
    public boolean fits(Trader trader, LocalDate day) {
        return true;
    }

    @Override
    public void happen(Dice dice, Trader trader, LocalDate day, Sheets sheets) {
        SaleKind kind = SaleKind.any(dice);
        Liability sold = dice.of(goods);
        Map<String, String> told = sold.cells(dice, day);
        BigDecimal rate = sold.rate(day).orElse(Vat.NONE);
        if (kind.undoes() && sold == Liability.STANDARD && told.containsKey("rate")) {
            // a refund goes at the rate of its sale, which may be an earlier one
            rate = Vat.standard(day.minusMonths(dice.between(0, 24)));
            told = Map.of("rate", rate.toPlainString());
        }
        Price price = price(dice, trader, rate, told, sold);
        Sheets.Row row = sheets.row(day, kind.word()).put(price);
        told.forEach(row::put);
        where(dice, trader, row);
        if (sold != Liability.OUTSIDE) {
            sheets.box(day, 1, kind.of(price.vat()));
            sheets.box(day, 6, kind.of(price.net()));
        }
    }

    private static Price price(
            Dice dice, Trader trader, BigDecimal rate, Map<String, String> told, Liability goods) {
        BigDecimal gross = dice.pounds();
        Price price =
                goods.rate(LocalDate.EPOCH).isEmpty()
                        ? new Price(gross, Vat.NONE, Map.of("gross", gross.toPlainString()))
                        : told.containsKey("rate")
                                ? Price.atRate(dice, trader, rate, gross)
                                : Price.ofCells(dice, trader, rate, gross, Map.of());
        return dice.oneIn(12) ? price.reversed() : price;
    }

    private static void where(Dice dice, Trader trader, Sheets.Row row) {
        if (trader.stocksAbroad() || dice.oneIn(3)) {
            row.put("from", trader.home());
            row.put("to", trader.home());
        }
        if (dice.oneIn(6)) {
            row.put("customer", "business").put("customer_vat", "GB101747696");
        }
        if (dice.oneIn(3)) {
            row.put("channel", "Example channel").put("channel_collects", "no");
        }
    }
}
