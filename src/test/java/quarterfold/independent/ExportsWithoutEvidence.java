package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;

/**
 * Exports whose evidence is not there in three months. Zero-rated and in box 6 at first; when the
 * time is up the VAT inside the price is due, and box 6 has only the rest; when the evidence comes
 * after all it is zero-rated again, in the period it comes in (VATA 1994 s.30(6); VEXP30300).
 */
final class ExportsWithoutEvidence implements Category {

    private static final int MONTHS = 3;

    @Override
    public boolean fits(Trader trader, LocalDate day) {
        return day.getYear() >= 2021 && !trader.home().equals("XI") && trader.isUk();
    }

    @Override
    public void happen(Dice dice, Trader trader, LocalDate about, Sheets sheets) {
        LocalDate day = about.withDayOfMonth(dice.between(5, 20)); // not at the end of a period
        BigDecimal price = dice.pounds();
        Sheets.Row row = sheets.row(day, "sale").put("from", "GB").put("to", "US");
        if (day.getDayOfMonth() % 2 == 0) { // as an invoice without VAT has it
            row.put("net", price.toPlainString()).put("vat", "0.00");
        } else {
            row.put("gross", price.toPlainString());
        }
        sheets.box(day, 6, price);
        LocalDate up = day.plusMonths(MONTHS);
        int months = dice.between(1, 9);
        LocalDate comes = day.plusMonths(months).plusDays(3);
        boolean never = dice.oneIn(3);
        if (!never) {
            row.put("evidenced", comes.toString());
        }
        if (!never && months < MONTHS) {
            return;
        }
        BigDecimal vat = Vat.inside(price, Vat.standard(day), trader);
        sheets.box(up, 1, vat);
        sheets.box(up, 6, vat.negate());
        if (!never) {
            sheets.box(comes, 1, vat.negate());
            sheets.box(comes, 6, vat);
        }
    }
}
