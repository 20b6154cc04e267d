package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Map;

/**
 * Purchases whose document came after the month of the supply: VAT is claimed on the return of the
 * period the document is held in (VAT Regulations 1995 reg 29(1)), with the value beside it.
 */
final class LateDocuments implements Category {

    private int documents;

    @Override
    public boolean fits(Trader trader, LocalDate day) {
        return day.getYear() >= 2021;
    }

    @Override
    public void happen(Dice dice, Trader trader, LocalDate day, Sheets sheets) {
        LocalDate held = day.plusDays(dice.between(0, 70));
        BigDecimal gross = dice.pounds();
        Price price =
                Price.printed(dice, gross, Vat.inside(gross, Vat.standard(day), trader), Map.of());
        sheets.row(day, "purchase")
                .put(price)
                .put("document", "L-" + ++documents)
                .put("party", "Example supplier")
                .put("party_country", "GB")
                .put("party_vat", "GB101747696")
                .put("evidence", "invoice")
                .put("held", held.toString());
        sheets.box(held, 4, price.vat());
        sheets.box(held, 7, price.net());
    }
}
