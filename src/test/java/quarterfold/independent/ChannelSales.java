package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;

/**
 * Sales for which the channel accounts: goods here of a seller established abroad, to a consumer,
 * and goods abroad sold to a customer here. The seller's supply to the channel is zero-rated (VATA
 * 1994 s.5A, Sch 8 Group 21): nothing in box 1, the price without the channel's tax in box 6, which
 * the book may choose to leave out (from memory).
 */
final class ChannelSales implements Category {

    @Override
    public boolean fits(Trader trader, LocalDate day) {
        return day.getYear() >= 2021;
    }

    @Override
    public void happen(Dice dice, Trader trader, LocalDate day, Sheets sheets) {
        SaleKind kind = SaleKind.any(dice);
        BigDecimal price = dice.pounds();
        Sheets.Row row =
                sheets.row(day, kind.word())
                        .put("channel", "Example channel")
                        .put("channel_collects", "yes");
        if (trader.isUk() || dice.oneIn(3)) {
            row.put("from", dice.of("US", "CN", "DE")).put("to", dice.of("GB", "XI"));
        } else {
            row.put("from", trader.home()).put("to", trader.home()).put("customer", "consumer");
        }
        switch (dice.between(1, 3)) {
            case 1 -> row.put("gross", price.toPlainString());
            case 2 ->
                    row.put("net", price.toPlainString())
                            .put("vat", Vat.onTop(price, Vat.standard(day)).toPlainString());
            default ->
                    row.put("gross", price.add(Vat.onTop(price, Vat.standard(day))).toPlainString())
                            .put("vat", Vat.onTop(price, Vat.standard(day)).toPlainString());
        }
        if (dice.oneIn(3)) {
            row.put("product", "P-ZERO");
        }
        if (trader.chose("deemed-supply-in-box-6", "yes")) {
            sheets.box(day, 6, kind.of(price));
        }
    }
}
