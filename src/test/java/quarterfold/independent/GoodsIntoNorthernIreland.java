package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;

/**
 * Goods a business in Northern Ireland buys from the European Union: the VAT in box 2 and, as far
 * as it may be deducted and a document is held, in box 4; the value in boxes 7 and 9 (VAT
 * Regulations 1995 reg 39(2); legends since 8 April 2021).
 */
final class GoodsIntoNorthernIreland implements Category {

    private int documents;

    @Override
    public boolean fits(Trader trader, LocalDate day) {
        return trader.northernIreland();
    }

    @Override
    public void happen(Dice dice, Trader trader, LocalDate day, Sheets sheets) {
        boolean credit = dice.oneIn(5);
        String document = "E-" + ++documents;
        boolean held = credit || !dice.oneIn(6);
        int use = dice.oneIn(4) ? dice.between(0, 99) : 100;
        int lines = use == 100 ? dice.between(1, 3) : 1;
        BigDecimal value = BigDecimal.ZERO;
        for (int i = 0; i < lines; i++) {
            BigDecimal amount = dice.pounds();
            value = value.add(amount);
            sheets.row(day, credit ? "purchase-credit" : "purchase")
                    .put(Price.withoutVat(dice, amount))
                    .put("document", document)
                    .put("party", "Example maker")
                    .put("party_country", "DE")
                    .put("party_vat", "DE123456788")
                    .put("to", "XI")
                    .put("evidence", held ? "invoice" : "missing")
                    .put("business_use", use == 100 ? "" : Integer.toString(use));
        }
        BigDecimal vat = Vat.onTop(value, Vat.standard(day));
        BigDecimal claim = use == 100 ? vat : Vat.share(vat, use);
        sheets.box(day, 2, credit ? vat.negate() : vat);
        if (held) {
            sheets.box(day, 4, credit ? claim.negate() : claim);
        }
        sheets.box(day, 7, credit ? value.negate() : value);
        sheets.box(day, 9, credit ? value.negate() : value);
    }
}
