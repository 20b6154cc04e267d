package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;

/**
 * Services of a supplier abroad, whose VAT the customer accounts for where the customer belongs
 * here (VATA 1994 ss.7A and 8): the VAT in box 1, and in box 4 as far as it may be deducted; the
 * value in boxes 6 and 7 (return help of the Isle of Man on boxes 1, 4, 6 and 7). Exempt ones are
 * in box 7 alone.
 */
final class ServicesFromAbroad implements Category {

    private final boolean exemptToo;
    private int documents;

    ServicesFromAbroad() {
        this(true);
    }

    /** {@code exemptToo}: whether some of the services are exempt. */
    ServicesFromAbroad(boolean exemptToo) {
        this.exemptToo = exemptToo;
    }

    @Override
    public boolean fits(Trader trader, LocalDate day) {
        return true;
    }

    @Override
    public void happen(Dice dice, Trader trader, LocalDate day, Sheets sheets) {
        PurchaseKind kind = PurchaseKind.service(dice);
        String document = "A-" + ++documents;
        String category =
                dice.of(
                        "advertising",
                        "software",
                        "channel-fee",
                        "client-entertaining",
                        "car-hire");
        boolean held = kind.sign() < 0 || !dice.oneIn(6);
        int use = dice.oneIn(4) ? dice.between(0, 99) : 100;
        int lines = use == 100 && !category.equals("car-hire") ? dice.between(1, 3) : 1;
        boolean exempt = exemptToo && dice.oneIn(8);
        String country = dice.of("US", "CN");
        BigDecimal value = BigDecimal.ZERO;
        for (int i = 0; i < lines; i++) {
            BigDecimal amount = dice.pounds();
            value = value.add(amount);
            sheets.row(day, kind.word())
                    .put(Price.withoutVat(dice, amount))
                    .put("document", document)
                    .put("party", "Example adverts")
                    .put("party_country", country)
                    .put("category", category)
                    .put("rate", exempt ? "exempt" : "")
                    .put("evidence", held ? "invoice" : "missing")
                    .put("business_use", use == 100 ? "" : Integer.toString(use));
        }
        if (!trader.isUk()) {
            return; // supplied where the customer belongs, and that is not here: s.8(2)(a)
        }
        sheets.box(day, 7, kind.of(value));
        if (exempt) {
            return;
        }
        BigDecimal vat = Vat.onTop(value, Vat.standard(day)); // once for the document
        sheets.box(day, 1, kind.of(vat));
        sheets.box(day, 6, kind.of(value));
        if (held && !category.equals("client-entertaining")) {
            BigDecimal open = category.equals("car-hire") ? Vat.share(vat, 50) : vat;
            sheets.box(day, 4, kind.of(use == 100 ? open : Vat.share(open, use)));
        }
    }
}
