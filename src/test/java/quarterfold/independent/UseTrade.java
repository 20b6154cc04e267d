package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Map;

/**
 * A quarter of a business that may have exempt supplies.
 *
 * @param exemptSupplies whether it has some
 * @param exemptPurchases whether some of what it buys is for them
 */
record UseTrade(Trader trader, boolean exemptSupplies, boolean exemptPurchases) {

    private static final BigDecimal FIVE = new BigDecimal(5);
    private static final BigDecimal MOST = new BigDecimal("1875.00");

    UseQuarter quarter(Dice dice, YearMonth name, Sheets sheets) {
        UseQuarter sum = UseQuarter.NOTHING;
        int sales = dice.between(2, 8);
        for (int i = 0; i < sales; i++) {
            boolean exempt = exemptSupplies && dice.oneIn(2);
            sum = sum.plus(sale(dice, Quarters.day(dice, name), exempt, sheets));
        }
        boolean alone = dice.oneIn(3); // nothing for both, so that the share does not count
        int purchases = dice.between(1, 8);
        for (int i = 0; i < purchases; i++) {
            String use =
                    exemptPurchases && !dice.oneIn(3)
                            ? alone ? "exempt" : dice.of("exempt", "both", "both", "both")
                            : dice.oneIn(12) ? "" : "taxable";
            int most = dice.oneIn(4) ? 200_000 : 40_000;
            BigDecimal vat = BigDecimal.valueOf(dice.between(100, most), 2);
            sum = sum.plus(bought(dice, Quarters.day(dice, name), use, vat, sheets));
        }
        BigDecimal open = MOST.subtract(sum.all().subtract(sum.taxable()));
        if (exemptPurchases && open.signum() > 0 && dice.oneIn(2)) {
            // a penny to either side of 625 a month
            BigDecimal vat = open.add(BigDecimal.valueOf(dice.between(-1, 1), 2));
            if (vat.signum() > 0) {
                LocalDate day = Quarters.day(dice, name);
                sum =
                        sum.plus(
                                bought(
                                        dice,
                                        day,
                                        alone ? "exempt" : dice.of("exempt", "both"),
                                        vat,
                                        sheets));
            }
        }
        BigDecimal missing =
                sum.supplies().subtract(sum.exemptSupplies()).subtract(sum.exemptSupplies());
        if (exemptSupplies && missing.signum() > 0 && dice.oneIn(3)) {
            // a penny to either side of one half of all supplies
            BigDecimal value = missing.add(BigDecimal.valueOf(dice.between(-1, 1), 4));
            value = value.setScale(2, java.math.RoundingMode.HALF_UP);
            if (value.signum() > 0) {
                sum = sum.plus(exempt(Quarters.day(dice, name), value, "", sheets));
            }
        }
        return sum;
    }

    private UseQuarter sale(Dice dice, LocalDate day, boolean exempt, Sheets sheets) {
        String category = dice.oneIn(8) ? dice.of("business-asset", "incidental") : "";
        BigDecimal gross = dice.pounds();
        if (exempt) {
            return exempt(day, gross, category, sheets);
        }
        SaleKind kind = SaleKind.any(dice);
        BigDecimal rate = dice.oneIn(3) ? Vat.NONE : Vat.standard(day);
        Price price = Price.atRate(dice, trader, rate, gross);
        sheets.row(day, kind.word())
                .put(price)
                .put("rate", rate.toPlainString())
                .put("category", category);
        sheets.box(day, 1, kind.of(price.vat()));
        sheets.box(day, 6, kind.of(price.net()));
        return supplied(kind.of(price.net()), BigDecimal.ZERO, category);
    }

    private static UseQuarter exempt(
            LocalDate day, BigDecimal value, String category, Sheets sheets) {
        sheets.row(day, "sale")
                .put("gross", value.toPlainString())
                .put("rate", "exempt")
                .put("category", category);
        sheets.box(day, 6, value);
        return supplied(value, value, category);
    }

    /** Sales of what the business used, and incidental ones, are left out of the share. */
    private static UseQuarter supplied(BigDecimal value, BigDecimal exempt, String category) {
        BigDecimal in = category.isEmpty() ? value : BigDecimal.ZERO;
        BigDecimal exemptIn = category.isEmpty() ? exempt : BigDecimal.ZERO;
        return new UseQuarter(
                BigDecimal.ZERO,
                BigDecimal.ZERO,
                BigDecimal.ZERO,
                BigDecimal.ZERO,
                value,
                exempt,
                in,
                exemptIn);
    }

    /** From a supplier here, from abroad with the VAT in box 1 too, or imported. */
    private static UseQuarter bought(
            Dice dice, LocalDate day, String use, BigDecimal vat, Sheets sheets) {
        BigDecimal net = vat.multiply(FIVE);
        String document = "U-" + sheets.size();
        Sheets.Row row;
        switch (dice.between(1, 4)) {
            case 1 -> {
                row =
                        sheets.row(day, "expense")
                                .put(Price.withoutVat(dice, net))
                                .put("party", "Example adverts")
                                .put("party_country", "US")
                                .put("category", "advertising")
                                .put("evidence", "invoice");
                sheets.box(day, 1, vat);
                sheets.box(day, 6, net);
            }
            case 2 -> {
                row =
                        sheets.row(day, "import-vat-postponed")
                                .put("evidence", "postponed-statement")
                                .put(printed(net, vat));
                sheets.box(day, 1, vat);
            }
            default ->
                    row =
                            sheets.row(day, "purchase")
                                    .put(printed(net, vat))
                                    .put("party", "Example supplier")
                                    .put("party_country", "GB")
                                    .put("party_vat", "GB101747696")
                                    .put("evidence", "invoice");
        }
        row.put("document", document).put("use", use);
        sheets.box(day, 4, vat);
        sheets.box(day, 7, net);
        BigDecimal none = BigDecimal.ZERO;
        return new UseQuarter(
                use.equals("taxable") ? vat : none,
                use.equals("exempt") ? vat : none,
                use.equals("both") ? vat : none,
                use.isEmpty() ? vat : none,
                none,
                none,
                none,
                none);
    }

    private static Price printed(BigDecimal net, BigDecimal vat) {
        return new Price(net, vat, Map.of("net", net.toPlainString(), "vat", vat.toPlainString()));
    }
}
