package quarterfold.independent;

import static java.math.RoundingMode.HALF_UP;

import java.math.BigDecimal;
import java.time.LocalDate;

/**
 * Documents in another currency: all amounts of one go by the rate of its tax point, or of the day
 * the row states instead (VATA 1994 Sch 6 para 11; VAT tertiary legislation, Valuation). VAT that
 * an invoice prints in sterling too is taken as printed.
 *
 * @param daily whether the daily rates count, rather than the monthly ones
 */
record ForeignTrade(Trader trader, RateLists rates, boolean daily) {

    private static final BigDecimal TWENTY = new BigDecimal("20");
    private static final BigDecimal HUNDRED = new BigDecimal("100");
    private static final BigDecimal WITH_VAT = new BigDecimal("120");

    void happen(Dice dice, LocalDate day, String document, Sheets sheets) {
        String currency = dice.of(RateLists.CURRENCIES);
        LocalDate rateDay = dice.oneIn(4) ? day.minusDays(dice.between(0, 60)) : day;
        Sheets.Row row;
        switch (dice.between(1, 4)) {
            case 1 -> row = sale(dice, day, rateDay, currency, sheets);
            case 2 -> row = bill(dice, day, rateDay, currency, sheets);
            case 3 -> row = fromAbroad(dice, day, rateDay, currency, sheets);
            default -> row = withoutVat(dice, day, rateDay, currency, sheets);
        }
        row.put("currency", currency).put("document", document);
        if (!rateDay.equals(day)) {
            row.put("exchange_day", rateDay.toString());
        }
    }

    /**
     * In sterling, to four decimals as VAT is carried; to the penny in a book that rounds lines.
     */
    private BigDecimal pounds(BigDecimal amount, String currency, LocalDate rateDay) {
        return rates.sterling(amount, currency, rateDay, daily, trader.perLine() ? 2 : 4);
    }

    private Sheets.Row sale(
            Dice dice, LocalDate day, LocalDate rateDay, String currency, Sheets sheets) {
        SaleKind kind = SaleKind.any(dice);
        Sheets.Row row = sheets.row(day, kind.word()).put("rate", "20");
        BigDecimal gross = dice.pounds();
        BigDecimal net;
        BigDecimal vat;
        switch (dice.between(1, 3)) {
            case 1 -> { // a price: what it is in sterling holds the VAT
                BigDecimal price = pounds(gross, currency, rateDay);
                vat = price.multiply(TWENTY).divide(WITH_VAT, trader.perLine() ? 2 : 4, HALF_UP);
                net = price.subtract(vat);
                row.put("gross", gross.toPlainString());
            }
            case 2 -> { // an invoice, as printed
                BigDecimal printed = Vat.onTop(gross, TWENTY);
                net = pounds(gross, currency, rateDay);
                vat = pounds(printed, currency, rateDay);
                row.put("net", gross.toPlainString()).put("vat", printed.toPlainString());
            }
            default -> { // a value and its rate
                net = pounds(gross, currency, rateDay);
                vat = net.multiply(TWENTY).divide(HUNDRED, 2, HALF_UP);
                row.put("net", gross.toPlainString());
            }
        }
        sheets.box(day, 1, kind.of(vat));
        sheets.box(day, 6, kind.of(net));
        return row;
    }

    /** A supplier's here, one half of them with the VAT in sterling beside it. */
    private Sheets.Row bill(
            Dice dice, LocalDate day, LocalDate rateDay, String currency, Sheets sheets) {
        BigDecimal net = dice.pounds();
        BigDecimal vat = Vat.onTop(net, TWENTY);
        Sheets.Row row =
                sheets.row(day, dice.of("purchase", "expense"))
                        .put("net", net.toPlainString())
                        .put("vat", vat.toPlainString())
                        .put("rate", "20")
                        .put("party", "Example supplier")
                        .put("party_country", "GB")
                        .put("party_vat", "GB101747696")
                        .put("evidence", "invoice");
        BigDecimal claimed = pounds(vat, currency, rateDay);
        if (dice.oneIn(2)) {
            claimed = claimed.setScale(2, HALF_UP);
            row.put("sterling_vat", claimed.toPlainString());
        }
        sheets.box(day, 4, claimed);
        sheets.box(day, 7, pounds(net, currency, rateDay));
        return row;
    }

    /** A service under the reverse charge, of which the VAT is worked out in sterling. */
    private Sheets.Row fromAbroad(
            Dice dice, LocalDate day, LocalDate rateDay, String currency, Sheets sheets) {
        BigDecimal price = dice.pounds();
        BigDecimal net = pounds(price, currency, rateDay);
        BigDecimal vat = Vat.onTop(net, TWENTY);
        sheets.box(day, 1, vat);
        sheets.box(day, 4, vat);
        sheets.box(day, 6, net);
        sheets.box(day, 7, net);
        return sheets.row(day, dice.of("expense", "fee"))
                .put(Price.withoutVat(dice, price))
                .put("party", "Example adverts")
                .put("party_country", dice.of("US", "CN"))
                .put("category", "advertising")
                .put("evidence", "invoice");
    }

    /** A zero-rated cost, or goods sold that never come here: a value alone. */
    private Sheets.Row withoutVat(
            Dice dice, LocalDate day, LocalDate rateDay, String currency, Sheets sheets) {
        BigDecimal price = dice.pounds();
        BigDecimal value = pounds(price, currency, rateDay);
        if (dice.oneIn(2)) {
            sheets.box(day, 6, value);
            return sheets.row(day, "sale")
                    .put("gross", price.toPlainString())
                    .put("from", "US")
                    .put("to", "US");
        }
        sheets.box(day, 7, value);
        return sheets.row(day, "expense")
                .put("gross", price.toPlainString())
                .put("rate", "0")
                .put("party", "Example supplier")
                .put("party_country", "GB")
                .put("party_vat", "GB101747696")
                .put("evidence", "invoice");
    }
}
