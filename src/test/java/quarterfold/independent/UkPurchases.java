package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Map;

/**
 * What a registered supplier here charged. Box 4 has the VAT for which the right document is held,
 * as far as the business uses what it bought and the law does not block it; box 7 has the value
 * without VAT in every case (VAT Notice 700/12 boxes 4 and 7), unless the book chose to leave
 * blocked purchases out of it.
 */
final class UkPurchases implements Category {

    private static final BigDecimal SIMPLIFIED = new BigDecimal("250.00"); // reg 16A
    private static final BigDecimal NO_DOCUMENT = new BigDecimal("25.00"); // VAT Notice 700 19.7.5

    @Override
    public boolean fits(Trader trader, LocalDate day) {
        return true;
    }

    @Override
    public void happen(Dice dice, Trader trader, LocalDate day, Sheets sheets) {
        PurchaseKind kind = PurchaseKind.any(dice);
        String category = category(dice);
        boolean noDocument = category.equals("parking-off-street") || category.equals("telephone");
        String evidence =
                dice.of(
                        "invoice",
                        "invoice",
                        "self-billed",
                        "simplified",
                        "simplified",
                        "none-needed",
                        "missing");
        BigDecimal rate = dice.oneIn(5) ? Vat.REDUCED : Vat.standard(day);
        Price price = price(dice, trader, rate, near(dice, evidence));
        if (dice.oneIn(15)) {
            price = price.reversed();
        }
        BigDecimal total = price.total().abs();
        boolean held =
                switch (evidence) {
                    case "invoice", "self-billed" -> true;
                    case "simplified" -> total.compareTo(SIMPLIFIED) <= 0;
                    case "none-needed" -> noDocument && total.compareTo(NO_DOCUMENT) <= 0;
                    default -> false;
                };
        String number = dice.oneIn(8) ? dice.of("", "GB123456789") : "GB101747696";
        boolean numberDoes =
                number.equals("GB101747696")
                        || (number.isEmpty() && evidence.equals("none-needed"));
        int use = dice.oneIn(4) ? dice.between(0, 99) : 100;
        sheets.row(day, kind.word())
                .put(price)
                .put("party", "Example supplier")
                .put("party_country", "GB")
                .put("party_vat", number)
                .put("category", category)
                .put("evidence", evidence)
                .put("business_use", use == 100 ? "" : Integer.toString(use));
        boolean blocked = blocked(category);
        if (held && numberDoes && !blocked) {
            BigDecimal open =
                    category.equals("car-hire") ? Vat.share(price.vat(), 50) : price.vat();
            sheets.box(day, 4, kind.of(use == 100 ? open : Vat.share(open, use)));
        }
        if (!blocked || trader.chose("blocked-in-box-7", "yes")) {
            sheets.box(day, 7, kind.of(price.net()));
        }
    }

    /** Entertaining customers (VIT43300) and directors (VIT43600), and cars (VIT52100). */
    private static boolean blocked(String category) {
        return category.equals("client-entertaining")
                || category.equals("directors-entertaining")
                || category.equals("car-purchase");
    }

    /** Half of the VAT on hiring a car is blocked (VATGPB4740). */
    private static String category(Dice dice) {
        return switch (dice.between(1, 8)) {
            case 1 -> dice.of("client-entertaining", "directors-entertaining", "car-purchase");
            case 2 -> "car-hire";
            case 3, 4 -> dice.of("parking-off-street", "telephone");
            case 5 -> "";
            default ->
                    dice.of(
                            "stock",
                            "stationery",
                            "staff-entertaining",
                            "van",
                            "phone",
                            "software");
        };
    }

    /** Often a penny to either side of what the document does for. */
    private static BigDecimal near(Dice dice, String evidence) {
        if (dice.oneIn(2)) {
            return dice.pounds();
        }
        BigDecimal limit = evidence.equals("none-needed") ? NO_DOCUMENT : SIMPLIFIED;
        return limit.add(BigDecimal.valueOf(dice.between(-2, 2), 2));
    }

    private static Price price(Dice dice, Trader trader, BigDecimal rate, BigDecimal gross) {
        return dice.oneIn(4)
                ? Price.printed(dice, gross, Vat.inside(gross, rate, trader), Map.of())
                : Price.atRate(dice, trader, rate, gross);
    }
}
