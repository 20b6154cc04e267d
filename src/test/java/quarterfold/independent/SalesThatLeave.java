package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;

/**
 * Goods that leave and goods that were never here. Exports with evidence are zero-rated and in box
 * 6 (VATA 1994 s.30(6); VAT Notice 703); goods sent from Northern Ireland to a business in the
 * European Union are in boxes 6 and 8 (legends since 8 April 2021); goods that never enter the
 * United Kingdom are supplied outside it and reported in box 6 (VATPOSG3300; tax press).
 */
final class SalesThatLeave implements Category {

    @Override
    public boolean fits(Trader trader, LocalDate day) {
        return true;
    }

    @Override
    public void happen(Dice dice, Trader trader, LocalDate day, Sheets sheets) {
        SaleKind kind = SaleKind.any(dice);
        BigDecimal price = dice.pounds();
        Sheets.Row row = sheets.row(day, kind.word()).put(Price.withoutVat(dice, price));
        if (dice.oneIn(3)) {
            row.put("product", dice.of("P-STANDARD", "P-REDUCED", "P-ZERO"));
        }
        String away = dice.of("US", "CN");
        switch (dice.between(1, 3)) {
            case 1 -> row.put("from", away).put("to", dice.of("DE", "US", "FR"));
            case 2 -> {
                boolean fromGb = !trader.home().equals("XI");
                String to = fromGb && day.getYear() >= 2021 ? dice.of("US", "DE") : away;
                row.put("from", trader.home()).put("to", to).put("evidence", "export");
            }
            default -> {
                if (trader.northernIreland()) {
                    row.put("from", "XI")
                            .put("to", "DE")
                            .put("customer", "business")
                            .put("customer_vat", "DE123456788")
                            .put("evidence", "export");
                    sheets.box(day, 8, kind.of(price));
                } else {
                    row.put("from", "GB").put("to", away).put("evidence", "export");
                }
            }
        }
        sheets.box(day, 6, kind.of(price));
    }
}
