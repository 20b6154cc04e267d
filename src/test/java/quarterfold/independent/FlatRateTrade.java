package quarterfold.independent;

import static java.math.RoundingMode.HALF_UP;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Map;
import java.util.TreeMap;

/**
 * A quarter of a business on the flat rate. What it takes with VAT, zero-rated and exempt takings
 * too, is its turnover, of which a percentage is due, and no VAT is claimed on what it buys (VAT
 * Regulations 1995 regs 55A to 55K; VAT Notice 733). Outside that are capital goods of 2,000 or
 * more with VAT (reg 55E; FRS6500), services from abroad and imports.
 *
 * @param valuesToo whether boxes 6 and 7 have the value of services from abroad
 * @param claimsAtLimit whether capital goods of exactly 2,000 are outside
 */
record FlatRateTrade(Trader trader, boolean valuesToo, boolean claimsAtLimit) {

    private static final BigDecimal CAPITAL = new BigDecimal("2000.00");

    /** What counts in a quarter, by day. */
    static final class Quarter {
        private final Map<LocalDate, BigDecimal> turnover = new TreeMap<>();
        private BigDecimal goods = BigDecimal.ZERO;

        /** From the first day until before the last. */
        BigDecimal turnover(LocalDate first, LocalDate before) {
            return turnover.entrySet().stream()
                    .filter(t -> !t.getKey().isBefore(first) && t.getKey().isBefore(before))
                    .map(Map.Entry::getValue)
                    .reduce(BigDecimal.ZERO, BigDecimal::add);
        }

        /** Goods for the business, with VAT: reg 55A(4). */
        BigDecimal goods() {
            return goods;
        }
    }

    void happen(Dice dice, LocalDate day, Quarter quarter, String document, Sheets sheets) {
        switch (dice.between(1, 8)) {
            case 1, 2, 3, 4 -> takings(dice, day, quarter, sheets);
            case 5 -> purchase(dice, day, quarter, dice.pounds(), document, sheets);
            case 6 -> capitalGoods(dice, day, document, sheets);
            case 7 -> service(dice, day, document, sheets);
            default -> goodsFromAbroad(dice, day, sheets);
        }
    }

    private void takings(Dice dice, LocalDate day, Quarter quarter, Sheets sheets) {
        SaleKind kind = SaleKind.any(dice);
        // so much that both of the tests for limited-cost traders decide at times
        BigDecimal gross = dice.oneIn(3) ? dice.pounds().multiply(BigDecimal.TEN) : dice.pounds();
        Sheets.Row row = sheets.row(day, kind.word());
        BigDecimal counts = gross;
        switch (dice.between(1, 5)) {
            case 1 -> row.put(Price.withoutVat(dice, gross)).put("rate", dice.of("0", "exempt"));
            case 2 -> // goods that leave the country
                    row.put("gross", gross.toPlainString())
                            .put("to", "US")
                            .put("evidence", "export");
            case 3 -> { // goods that never came here: outside, and in box 6 alone
                row.put("gross", gross.toPlainString()).put("from", "US").put("to", "US");
                sheets.box(day, 6, kind.of(gross));
                counts = BigDecimal.ZERO;
            }
            default -> {
                BigDecimal rate = dice.oneIn(3) ? Vat.REDUCED : Vat.standard(day);
                Price price = Price.atRate(dice, trader, rate, gross);
                row.put(price).put("rate", rate.toPlainString());
                counts = price.total();
            }
        }
        quarter.turnover.merge(day, kind.of(counts), BigDecimal::add);
        sheets.box(day, 6, kind.of(counts));
    }

    /** Nothing of it is on the return; stock, packaging and stationery are relevant goods. */
    void purchase(
            Dice dice,
            LocalDate day,
            Quarter quarter,
            BigDecimal gross,
            String document,
            Sheets sheets) {
        String category =
                dice.of("stock", "stock", "packaging", "stationery", "software", "advertising");
        boolean relevant = !category.equals("software") && !category.equals("advertising");
        boolean credit = dice.oneIn(8);
        Price price =
                Price.printed(dice, gross, Vat.inside(gross, Vat.standard(day), trader), Map.of());
        bought(sheets, day, credit ? "purchase-credit" : "purchase", document)
                .put(price)
                .put("category", category);
        if (relevant) {
            quarter.goods = quarter.goods.add(credit ? gross.negate() : gross);
        }
    }

    /** Stock of just so much. */
    void stock(LocalDate day, Quarter quarter, BigDecimal gross, String document, Sheets sheets) {
        bought(sheets, day, "purchase", document)
                .put("gross", gross.toPlainString())
                .put("rate", "20")
                .put("category", "stock");
        quarter.goods = quarter.goods.add(gross);
    }

    private static Sheets.Row bought(Sheets sheets, LocalDate day, String kind, String document) {
        return sheets.row(day, kind)
                .put("document", document)
                .put("party", "Example supplier")
                .put("party_country", "GB")
                .put("party_vat", "GB101747696")
                .put("evidence", "invoice");
    }

    /** Bought, and their sale, as under the ordinary scheme. */
    private void capitalGoods(Dice dice, LocalDate day, String document, Sheets sheets) {
        if (dice.oneIn(4)) {
            Price price = Price.atRate(dice, trader, Vat.standard(day), dice.pounds());
            sheets.row(day, "sale").put(price).put("category", "capital-goods");
            sheets.box(day, 1, price.vat());
            sheets.box(day, 6, price.net());
            return;
        }
        BigDecimal gross = CAPITAL.add(BigDecimal.valueOf(dice.between(-2, 2), 2));
        Price price =
                Price.printed(dice, gross, Vat.inside(gross, Vat.standard(day), trader), Map.of());
        bought(sheets, day, "purchase", document).put(price).put("category", "capital-goods");
        int above = gross.compareTo(CAPITAL);
        if (above > 0 || (above == 0 && claimsAtLimit)) {
            sheets.box(day, 4, price.vat());
            sheets.box(day, 7, price.net());
        }
    }

    private void service(Dice dice, LocalDate day, String document, Sheets sheets) {
        PurchaseKind kind = PurchaseKind.service(dice);
        BigDecimal value = dice.pounds();
        sheets.row(day, kind.word())
                .put(Price.withoutVat(dice, value))
                .put("document", document)
                .put("party", "Example adverts")
                .put("party_country", "US")
                .put("category", "advertising")
                .put("evidence", "invoice");
        sheets.box(day, 1, kind.of(Vat.onTop(value, Vat.standard(day))));
        if (valuesToo) {
            sheets.box(day, 6, kind.of(value));
            sheets.box(day, 7, kind.of(value));
        }
    }

    /** Since June 2022 postponed VAT is due in box 1 apart from the percentage: VAT Notice 733. */
    private void goodsFromAbroad(Dice dice, LocalDate day, Sheets sheets) {
        boolean postponed = !day.isBefore(LocalDate.of(2022, 6, 1)) && dice.oneIn(2);
        BigDecimal net = Imports.value(dice);
        BigDecimal vat = Vat.onTop(net, Vat.standard(day));
        sheets.row(day, postponed ? "import-vat-postponed" : "import-vat-paid")
                .put("net", net.toPlainString())
                .put("vat", vat.toPlainString())
                .put("evidence", postponed ? "postponed-statement" : "import-certificate");
        if (postponed) {
            sheets.box(day, 1, vat);
        }
        sheets.box(day, 7, net);
    }

    /** So many per cent of the turnover, to four decimals as all VAT is carried to. */
    static BigDecimal due(BigDecimal turnover, BigDecimal percent) {
        return turnover.multiply(percent).movePointLeft(2).setScale(4, HALF_UP);
    }
}
