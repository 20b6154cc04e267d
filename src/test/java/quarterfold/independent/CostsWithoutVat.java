package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;

/**
 * Costs on which no VAT is charged. Zero-rated and exempt ones are in box 7 with no need of
 * evidence for a claim; what is outside the scope, such as wages and rates, is nowhere; of a
 * supplier who is not registered the whole price is in box 7, or nowhere by the book's choice (VAT
 * Notice 700/12 box 7; the choice: no text settles it).
 */
final class CostsWithoutVat implements Category {

    @Override
    public boolean fits(Trader trader, LocalDate day) {
        return true;
    }

    @Override
    public void happen(Dice dice, Trader trader, LocalDate day, Sheets sheets) {
        PurchaseKind kind = PurchaseKind.any(dice);
        BigDecimal amount = dice.pounds();
        Sheets.Row row =
                sheets.row(day, kind.word())
                        .put(Price.withoutVat(dice, amount))
                        .put("party", "Example supplier")
                        .put("party_country", "GB")
                        .put("category", dice.of("", "postage", "insurance", "stock"));
        boolean counts =
                switch (dice.between(1, 4)) {
                    case 1 -> {
                        row.put("rate", dice.of("exempt", "0"))
                                .put("party_vat", "GB101747696")
                                .put("evidence", dice.of("invoice", "missing", ""));
                        yield true;
                    }
                    case 2 -> {
                        row.put("rate", "outside").put("evidence", dice.of("invoice", ""));
                        yield false;
                    }
                    default -> {
                        row.put("evidence", dice.of("invoice", "simplified"));
                        yield trader.chose("unregistered-supplier-in-box-7", "yes");
                    }
                };
        if (counts) {
            sheets.box(day, 7, kind.of(amount));
        }
    }
}
