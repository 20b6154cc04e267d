package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;

/**
 * Second-hand goods under the margin scheme: VAT inside what the price is above the cost, none
 * where it is not; the price less that VAT in box 6, and the cost in box 7 when it is bought (VAT
 * Notice 718; VAT Notice 700/12 section 4 (secondary source)).
 */
final class MarginGoods implements Category {

    private int bought;

    @Override
    public boolean fits(Trader trader, LocalDate day) {
        return day.getYear() >= 2021 && trader.isUk() && !trader.stocksAbroad();
    }

    @Override
    public void happen(Dice dice, Trader trader, LocalDate day, Sheets sheets) {
        String item = "M-" + ++bought;
        BigDecimal cost = dice.pounds();
        BigDecimal price = cost.add(BigDecimal.valueOf(dice.between(-5_000, 20_000), 2)).abs();
        LocalDate sold = day.plusDays(dice.between(0, 60));
        sheets.row(day, "purchase")
                .put("product", item)
                .put("party", "Example private seller")
                .put("gross", cost.toPlainString())
                .put("rate", "margin");
        sheets.row(sold, "sale")
                .put("product", item)
                .put("gross", price.toPlainString())
                .put("rate", "margin");
        BigDecimal margin = price.subtract(cost).max(BigDecimal.ZERO);
        BigDecimal vat = Vat.inside(margin, Vat.standard(sold), trader);
        sheets.box(day, 7, cost);
        sheets.box(sold, 1, vat);
        sheets.box(sold, 6, price.subtract(vat));
    }
}
