package quarterfold.independent;

import static java.math.RoundingMode.DOWN;
import static java.math.RoundingMode.HALF_UP;

import java.io.IOException;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import quarterfold.ledger.Decision;

/**
 * What turns up about closed quarters. What is due and what is reclaimed are each netted over all
 * errors found in a quarter; if the net of both is within 10,000, or 1 per cent of the quarter's
 * box 6 up to 50,000, they go to boxes 1 and 4 of its return, otherwise to none: reg 34(3) to (5).
 * A price change missed in its period is an error (reg 38(7)). Import VAT left out on both sides is
 * put right whatever the limit (GOV.UK, Complete your VAT Return to account for import VAT), and a
 * purchase whose invoice came later is a late claim and no error: reg 29(1).
 */
final class Late {

    private static final BigDecimal TWENTY = new BigDecimal(20);
    private static final BigDecimal FIVE = new BigDecimal(5);
    private static final BigDecimal FLOOR = new BigDecimal("10000.00");
    private static final BigDecimal CAP = new BigDecimal("50000.00");

    private final Trader trader;
    private final boolean valuesToo;
    private final boolean apart;
    private final boolean atLimitApart;
    private final Map<Integer, Price> purchases = new TreeMap<>();
    private final List<Integer> older = new ArrayList<>();
    private int entries;
    private int documents;

    Late(Trader trader, boolean valuesToo, boolean apart, boolean atLimitApart) {
        this.trader = trader;
        this.valuesToo = valuesToo;
        this.apart = apart;
        this.atLimitApart = atLimitApart;
    }

    /** The errors found in one quarter, by box. */
    private static final class Errors {
        private final Map<Integer, BigDecimal> boxes = new TreeMap<>();

        void add(int box, BigDecimal amount) {
            boxes.merge(box, amount, BigDecimal::add);
        }

        BigDecimal net() {
            return pence(1).subtract(pence(4));
        }

        private BigDecimal pence(int box) {
            return boxes.getOrDefault(box, BigDecimal.ZERO).setScale(2, HALF_UP);
        }
    }

    /** Enters the sheet; its rows have the next numbers. */
    void entered(Sheets sheet, CheckedBook book) throws IOException {
        if (sheet.size() > 0) {
            book.enter(sheet.file());
        }
        entries += sheet.size();
    }

    /** A purchase of the day with its invoice, that a decision may take away later. */
    void purchase(Dice dice, LocalDate day, Sheets sheet, Sheets sums) {
        Price price = bill(dice, day, sheet);
        purchases.put(entries + sheet.size(), price);
        sums.box(day, 4, price.vat());
        sums.box(day, 7, price.net());
    }

    private Price bill(Dice dice, LocalDate day, Sheets sheet) {
        BigDecimal gross = large(dice);
        Price price = Price.printed(dice, gross, Vat.inside(gross, TWENTY, trader), Map.of());
        bought(sheet.row(day, "purchase").put(price));
        return price;
    }

    private Sheets.Row bought(Sheets.Row row) {
        return row.put("document", "B-" + ++documents)
                .put("party", "Example supplier")
                .put("party_country", "GB")
                .put("party_vat", "GB101747696")
                .put("evidence", "invoice");
    }

    private static BigDecimal large(Dice dice) {
        return BigDecimal.valueOf(dice.between(100, dice.oneIn(3) ? 15_000_000 : 500_000), 2);
    }

    /**
     * @param closed what the errors are about
     * @param open the quarter they are found in
     * @param turnover its box 6 without them
     */
    void happen(
            Dice dice,
            YearMonth closed,
            YearMonth open,
            BigDecimal turnover,
            Sheets sums,
            CheckedBook book)
            throws IOException {
        Sheets sheet = new Sheets();
        Errors errors = new Errors();
        int number = dice.between(0, 6);
        for (int i = 0; i < number; i++) {
            one(dice, Quarters.day(dice, closed), open, sheet, errors, sums);
        }
        if (dice.oneIn(3) && !older.isEmpty()) {
            disallow(older.remove(dice.between(0, older.size() - 1)), errors, book);
        }
        BigDecimal limit = FLOOR.max(turnover.setScale(0, DOWN).movePointLeft(2).min(CAP));
        if (dice.oneIn(2)) {
            toTheLimit(dice, Quarters.day(dice, closed), limit, sheet, errors);
        }
        entered(sheet, book);
        int over = errors.net().abs().compareTo(limit);
        boolean atFloor =
                limit.compareTo(FLOOR) == 0
                        && turnover.setScale(0, DOWN).movePointLeft(2).compareTo(FLOOR) < 0;
        boolean within = over < 0 || (over == 0 && !(atFloor && atLimitApart));
        if (within && !apart) {
            errors.boxes.forEach(
                    (box, amount) -> {
                        if (box <= 4 || valuesToo) {
                            sums.box(open.atDay(1), box, amount);
                        }
                    });
        }
        older.clear();
        older.addAll(purchases.keySet());
    }

    private void one(
            Dice dice, LocalDate day, YearMonth open, Sheets sheet, Errors errors, Sheets sums) {
        switch (dice.between(1, 5)) {
            case 1 -> {
                SaleKind kind = SaleKind.any(dice);
                Price price = Price.atRate(dice, trader, TWENTY, large(dice));
                sheet.row(day, kind.word()).put(price);
                errors.add(1, kind.of(price.vat()));
                errors.add(6, kind.of(price.net()));
            }
            case 2 -> {
                Price price = bill(dice, day, sheet);
                errors.add(4, price.vat());
                errors.add(7, price.net());
            }
            case 3 -> { // the invoice came in the open quarter
                Price price = bill(dice, day, sheet);
                LocalDate held = Quarters.day(dice, open);
                sheet.last().put("held", held.toString());
                sums.box(held, 4, price.vat());
                sums.box(held, 7, price.net());
            }
            case 4 -> { // a service from abroad: as much due as reclaimed
                BigDecimal value = large(dice);
                sheet.row(day, "expense")
                        .put(Price.withoutVat(dice, value))
                        .put("document", "A-" + ++documents)
                        .put("party", "Example adverts")
                        .put("party_country", "US")
                        .put("evidence", "invoice");
                BigDecimal vat = Vat.onTop(value, TWENTY);
                errors.add(1, vat);
                errors.add(4, vat);
                errors.add(6, value);
                errors.add(7, value);
            }
            default -> {
                BigDecimal net = Imports.value(dice);
                BigDecimal vat = Vat.onTop(net, TWENTY);
                sheet.row(day, "import-vat-postponed")
                        .put("net", net.toPlainString())
                        .put("vat", vat.toPlainString())
                        .put("evidence", "postponed-statement");
                sums.box(open.atDay(1), 1, vat);
                sums.box(open.atDay(1), 4, vat);
                if (valuesToo) {
                    sums.box(open.atDay(1), 7, net);
                }
            }
        }
    }

    /** Decided after its quarter was closed: what was reclaimed goes back; its value stays. */
    private void disallow(int entry, Errors errors, CheckedBook book) {
        Price price = purchases.remove(entry);
        book.decide(Decision.Target.ENTRY, Integer.toString(entry), Decision.Action.DISALLOW, "");
        if (price != null) {
            errors.add(4, price.vat().negate());
        }
    }

    /** A last error that brings the net to a penny to either side of the limit. */
    private void toTheLimit(
            Dice dice, LocalDate day, BigDecimal limit, Sheets sheet, Errors errors) {
        BigDecimal aim = dice.oneIn(2) ? limit : limit.negate();
        BigDecimal vat = aim.add(BigDecimal.valueOf(dice.between(-1, 1), 2)).subtract(errors.net());
        if (vat.signum() == 0) {
            return;
        }
        BigDecimal printed = vat.abs();
        BigDecimal net = printed.multiply(FIVE);
        Price price =
                new Price(
                        net,
                        printed,
                        Map.of("net", net.toPlainString(), "vat", printed.toPlainString()));
        if (vat.signum() > 0) {
            sheet.row(day, "sale").put(price);
            errors.add(1, printed);
            errors.add(6, net);
        } else {
            bought(sheet.row(day, "purchase").put(price));
            errors.add(4, printed);
            errors.add(7, net);
        }
    }
}
