package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;

/**
 * The domestic reverse charge. Who sells has the value in box 6 alone; who buys has the VAT in
 * boxes 1 and 4 and the value in box 7, not in box 6 (VATA 1994 s.55A; VAT Notice 735; VAT Notice
 * 700/12 section 4 (secondary source)).
 */
final class CustomerAccounts implements Category {

    private int documents;

    @Override
    public boolean fits(Trader trader, LocalDate day) {
        return day.getYear() >= 2021 && !trader.stocksAbroad();
    }

    @Override
    public void happen(Dice dice, Trader trader, LocalDate day, Sheets sheets) {
        BigDecimal value = dice.pounds();
        if (dice.oneIn(2)) {
            SaleKind kind = SaleKind.any(dice);
            sheets.row(day, kind.word())
                    .put("gross", value.toPlainString())
                    .put("rate", "reverse-charge")
                    .put("customer", "business")
                    .put("customer_vat", "GB101747696");
            sheets.box(day, 6, kind.of(value));
            return;
        }
        boolean credit = dice.oneIn(4);
        sheets.row(day, credit ? "purchase-credit" : "purchase")
                .put(Price.withoutVat(dice, value))
                .put("rate", "reverse-charge")
                .put("document", "C-" + ++documents)
                .put("party", "Example supplier")
                .put("party_country", "GB")
                .put("party_vat", "GB101747696")
                .put("evidence", "invoice");
        BigDecimal vat = Vat.onTop(value, Vat.standard(day));
        sheets.box(day, 1, credit ? vat.negate() : vat);
        sheets.box(day, 4, credit ? vat.negate() : vat);
        sheets.box(day, 7, credit ? value.negate() : value);
    }
}
