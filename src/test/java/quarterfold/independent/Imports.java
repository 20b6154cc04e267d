package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;

/**
 * Goods from abroad. VAT paid at the border is in box 4 by the certificate alone (IMPS03100); VAT
 * postponed is in box 1 and, as far as it may be deducted, in box 4, also while it is an estimate
 * (GOV.UK, Complete your VAT Return to account for import VAT). Box 7 has the value of the goods
 * once: from the import entry, or from the supplier's invoice where the book chose that. Duty is
 * never VAT.
 */
final class Imports implements Category {

    @Override
    public boolean fits(Trader trader, LocalDate day) {
        return true;
    }

    @Override
    public void happen(Dice dice, Trader trader, LocalDate day, Sheets sheets) {
        boolean fromEntry = trader.chose("import-value-from", "import-entry");
        BigDecimal rate = Vat.standard(day);
        BigDecimal net = value(dice);
        BigDecimal vat = Vat.onTop(net, rate);
        boolean postponed = day.getYear() >= 2021 && dice.oneIn(2);
        boolean held = !dice.oneIn(4);
        int use = dice.oneIn(4) ? dice.between(0, 99) : 100;
        Sheets.Row row =
                sheets.row(day, postponed ? "import-vat-postponed" : "import-vat-paid")
                        .put("vat", vat.toPlainString())
                        .put("business_use", use == 100 ? "" : Integer.toString(use));
        if (held) {
            row.put("evidence", postponed ? "postponed-statement" : "import-certificate");
        } else {
            row.put("evidence", dice.of("invoice", "missing", ""));
        }
        if (dice.oneIn(3)) {
            net = Vat.valueFor(vat, rate); // the certificate prints no value
        } else if (dice.oneIn(2)) {
            row.put("net", net.toPlainString());
        } else {
            row.put("gross", net.add(vat).toPlainString());
        }
        if (postponed) {
            sheets.box(day, 1, vat);
        }
        if (postponed || held) {
            sheets.box(day, 4, use == 100 ? vat : Vat.share(vat, use));
        }
        if (fromEntry) {
            sheets.box(day, 7, net);
        }
        if (dice.oneIn(2)) {
            invoice(dice, trader, day, sheets, fromEntry);
        }
        if (dice.oneIn(3)) {
            sheets.row(day, "import-duty").put("gross", dice.pounds().toPlainString());
        }
    }

    /** So large, and of so many, that no bill and no other import has its VAT by chance. */
    static BigDecimal value(Dice dice) {
        return BigDecimal.valueOf(dice.between(2_000_000, 200_000_000), 2);
    }

    private static void invoice(
            Dice dice, Trader trader, LocalDate day, Sheets sheets, boolean fromEntry) {
        boolean credit = dice.oneIn(5);
        BigDecimal price = dice.pounds();
        sheets.row(day, credit ? "purchase-credit" : "purchase")
                .put(Price.withoutVat(dice, price))
                .put("party", "Example maker")
                .put("party_country", "CN")
                .put("to", trader.home())
                .put("category", "stock")
                .put("evidence", "invoice");
        if (!fromEntry) {
            sheets.box(day, 7, credit ? price.negate() : price);
        }
    }
}
