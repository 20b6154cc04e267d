package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import quarterfold.ledger.Decision.Action;
import quarterfold.ledger.Decision.Target;

/**
 * Rows whose boxes hang on what a person decided of them, and the decisions. VAT may be reclaimed
 * on a document that was seen (VAT Regulations 1995 reg 29(2)) and once alone (reg 29(4)); what is
 * disallowed keeps its value in box 7.
 */
final class DecidedTrade {

    /** What is to be recorded; a {@code value} of an undoing is found when it is. */
    record Answer(Target target, String about, Action action, String value, boolean undone) {}

    private static final BigDecimal TWENTY = new BigDecimal(20);

    private final Trader trader;
    private final List<Answer> answers = new ArrayList<>();
    private int documents;

    DecidedTrade(Trader trader) {
        this.trader = trader;
    }

    List<Answer> answers() {
        return answers;
    }

    void happen(Dice dice, LocalDate day, Sheets sheets) {
        boolean undone = dice.oneIn(4);
        switch (dice.between(1, 7)) {
            case 1 -> seen(dice, day, undone, sheets);
            case 2 -> disallowed(dice, day, undone, sheets);
            case 3 -> duplicate(dice, day, undone, sheets);
            case 4 -> setAside(dice, day, sheets);
            case 5 -> product(dice, day, undone, sheets);
            case 6 -> party(dice, day, undone, sheets);
            default -> treated(dice, day, undone, sheets);
        }
    }

    private void answer(Sheets sheets, Action action, String value, boolean undone) {
        answers.add(
                new Answer(Target.ENTRY, Integer.toString(sheets.size()), action, value, undone));
    }

    private Price printed(Dice dice) {
        BigDecimal gross = dice.pounds();
        return Price.printed(dice, gross, Vat.inside(gross, TWENTY, trader), Map.of());
    }

    private Sheets.Row bought(Sheets sheets, LocalDate day, Price price, String evidence) {
        return sheets.row(day, "purchase")
                .put(price)
                .put("document", "D-" + ++documents)
                .put("party", "Example supplier")
                .put("party_country", "GB")
                .put("party_vat", "GB101747696")
                .put("evidence", evidence);
    }

    /** Nothing was held at first. */
    private void seen(Dice dice, LocalDate day, boolean undone, Sheets sheets) {
        Price price = printed(dice);
        bought(sheets, day, price, "missing");
        answer(sheets, Action.EVIDENCE_SEEN, dice.of("invoice", "self-billed"), undone);
        if (!undone) {
            sheets.box(day, 4, price.vat());
        }
        sheets.box(day, 7, price.net());
    }

    private void disallowed(Dice dice, LocalDate day, boolean undone, Sheets sheets) {
        Price price = printed(dice);
        bought(sheets, day, price, "invoice");
        answer(sheets, Action.DISALLOW, "", undone);
        if (undone) {
            sheets.box(day, 4, price.vat());
        }
        sheets.box(day, 7, price.net());
    }

    /** The same document under another number. */
    private void duplicate(Dice dice, LocalDate day, boolean undone, Sheets sheets) {
        Price price = printed(dice);
        bought(sheets, day, price, "invoice");
        sheets.box(day, 4, price.vat());
        sheets.box(day, 7, price.net());
        String first = Integer.toString(sheets.size());
        bought(sheets, day, price, "invoice");
        answer(sheets, Action.DUPLICATE_OF, first, undone);
        if (undone) {
            sheets.box(day, 4, price.vat());
            sheets.box(day, 7, price.net());
        }
    }

    /** A question that is left as it is changes nothing. */
    private void setAside(Dice dice, LocalDate day, Sheets sheets) {
        Price price = printed(dice);
        bought(sheets, day, price, "missing");
        answer(sheets, Action.SET_ASIDE, "", dice.oneIn(2));
        sheets.box(day, 7, price.net());
    }

    /** What the list of goods does not have, each product with a rate of its own. */
    private void product(Dice dice, LocalDate day, boolean undone, Sheets sheets) {
        SaleKind kind = SaleKind.any(dice);
        BigDecimal decided = dice.of(List.of(Vat.REDUCED, Vat.NONE));
        String code = "N-" + ++documents;
        BigDecimal gross = dice.pounds();
        sheets.row(day, kind.word()).put("gross", gross.toPlainString()).put("product", code);
        answers.add(
                new Answer(
                        Target.PRODUCT,
                        code,
                        Action.STATE,
                        "rate=" + decided.toPlainString(),
                        undone));
        BigDecimal vat = Vat.inside(gross, undone ? TWENTY : decided, trader);
        sheets.box(day, 1, kind.of(vat));
        sheets.box(day, 6, kind.of(gross.subtract(vat)));
    }

    /** A supplier whose VAT number the file lacks: no input tax without it, reg 14(1)(d). */
    private void party(Dice dice, LocalDate day, boolean undone, Sheets sheets) {
        String party = "Supplier " + ++documents;
        int rows = dice.between(1, 3);
        for (int i = 0; i < rows; i++) {
            Price price = printed(dice);
            bought(sheets, day, price, "invoice").put("party", party).put("party_vat", "");
            if (!undone) {
                sheets.box(day, 4, price.vat());
            }
            sheets.box(day, 7, price.net());
        }
        answers.add(new Answer(Target.PARTY, party, Action.STATE, "party_vat=GB101747696", undone));
    }

    /** A sale that a person knows is exempt or an export. */
    private void treated(Dice dice, LocalDate day, boolean undone, Sheets sheets) {
        BigDecimal gross = dice.pounds();
        sheets.row(day, "sale").put("gross", gross.toPlainString()).put("rate", "20");
        answer(sheets, Action.TREAT_AS, "export", undone);
        BigDecimal vat = undone ? Vat.inside(gross, TWENTY, trader) : BigDecimal.ZERO;
        sheets.box(day, 1, vat);
        sheets.box(day, 6, gross.subtract(vat));
    }
}
