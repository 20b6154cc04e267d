package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Map;

/**
 * Goods put to private use, and given to customers. Private use is a supply at cost: its VAT in box
 * 1, the rest in box 6. A gift is one where what one person was given in a year cost more than 50
 * without VAT (VATA 1994 Sch 4 para 5; VATSC03322); here each person gets one.
 */
final class GoodsGivenAway implements Category {

    private static final BigDecimal LIMIT = new BigDecimal("50.00");
    private int people;

    @Override
    public boolean fits(Trader trader, LocalDate day) {
        return day.getYear() >= 2021;
    }

    @Override
    public void happen(Dice dice, Trader trader, LocalDate day, Sheets sheets) {
        BigDecimal rate = dice.oneIn(4) ? Vat.REDUCED : Vat.standard(day);
        if (dice.oneIn(2)) {
            Price price = Price.atRate(dice, trader, rate, dice.pounds());
            sheets.row(day, "private-use").put(price);
            sheets.box(day, 1, price.vat());
            sheets.box(day, 6, price.net());
            return;
        }
        BigDecimal cost =
                dice.oneIn(2)
                        ? LIMIT.add(BigDecimal.valueOf(dice.between(-2, 2), 2))
                        : dice.pounds();
        Price price =
                new Price(
                        cost,
                        Vat.onTop(cost, rate),
                        Map.of("net", cost.toPlainString(), "rate", rate.toPlainString()));
        sheets.row(day, "gift").put(price).put("party", "Customer " + ++people);
        if (cost.compareTo(LIMIT) > 0) {
            sheets.box(day, 1, price.vat());
            sheets.box(day, 6, cost);
        }
    }
}
