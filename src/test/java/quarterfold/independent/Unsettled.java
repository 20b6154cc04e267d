package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;

/**
 * Rows that a person must answer something about before they can be in any box: none of them may
 * move a figure.
 */
final class Unsettled implements Category {

    @Override
    public boolean fits(Trader trader, LocalDate day) {
        return day.getYear() >= 2021;
    }

    @Override
    public void happen(Dice dice, Trader trader, LocalDate day, Sheets sheets) {
        BigDecimal amount = dice.pounds();
        String text = amount.toPlainString();
        switch (dice.between(1, 5)) {
            case 1 -> sheets.row(day, "sale").put("gross", text).put("currency", "EUR");
            case 2 ->
                    sheets.row(day, dice.of("sale", "expense"))
                            .put("gross", text)
                            .put("rate", "17.5"); // no rate since 2011
            case 3 ->
                    sheets.row(day, "expense")
                            .put("gross", text)
                            .put("vat", "0.50")
                            .put("party_country", "US")
                            .put("evidence", "invoice"); // a foreign tax
            case 4 ->
                    sheets.row(day, "sale")
                            .put("gross", text)
                            .put("from", "US")
                            .put("to", "GB")
                            .put("channel_collects", "no");
            default ->
                    sheets.row(day, "expense")
                            .put("gross", text)
                            .put("party_country", "US")
                            .put("category", "travel");
        }
    }
}
