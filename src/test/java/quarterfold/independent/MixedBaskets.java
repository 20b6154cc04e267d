package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * Orders of goods taxed differently, with delivery, discounts and refunds that name no goods: one
 * price for several supplies is shared out by their prices (VAT Notice 700 s.31; VATVAL03700). The
 * prices are whole percentages of the order, so that a share is exact and there is one answer.
 */
final class MixedBaskets implements Category {

    private int orders;

    @Override
    public boolean fits(Trader trader, LocalDate day) {
        return true;
    }

    @Override
    public void happen(Dice dice, Trader trader, LocalDate day, Sheets sheets) {
        String order = "O-" + ++orders;
        List<Liability> all = new ArrayList<>(Liability.NOT_EXEMPT);
        all.remove(dice.oneIn(2) ? Liability.REDUCED : Liability.ZERO_SINCE_2021); // one rate once
        List<Integer> percents = new ArrayList<>();
        List<Liability> chosen = new ArrayList<>();
        int left = 100;
        int parts = dice.between(2, 3);
        for (int i = 0; i < parts; i++) {
            chosen.add(all.remove(dice.between(0, all.size() - 1)));
            int percent = i == parts - 1 ? left : dice.between(1, left - (parts - i));
            percents.add(percent);
            left -= percent;
        }
        BigDecimal unit = BigDecimal.valueOf(dice.between(5, 90), 2); // one per cent of the order
        for (int i = 0; i < parts; i++) {
            BigDecimal price = unit.multiply(BigDecimal.valueOf(percents.get(i)));
            Sheets.Row row = row(sheets, trader, day, "sale", order, price);
            chosen.get(i).cells(dice, day).forEach(row::put);
            add(sheets, trader, chosen.get(i), day, price, 1);
        }
        for (String kind :
                List.of("delivery", "discount", "delivery-refund", "discount-reversed")) {
            if (!dice.oneIn(2)) {
                continue;
            }
            int sign = kind.equals("delivery") || kind.equals("discount-reversed") ? 1 : -1;
            LocalDate then = sign < 0 ? day.plusDays(dice.between(0, 40)) : day;
            if (!chosen.stream().allMatch(goods -> goods.rate(then).equals(goods.rate(day)))) {
                continue; // such a refund states the rate of its sale: TaxedSales has them
            }
            BigDecimal charge = BigDecimal.valueOf(dice.between(1, 900), 2);
            row(sheets, trader, then, kind, order, charge);
            for (int i = 0; i < parts; i++) {
                BigDecimal share = charge.multiply(BigDecimal.valueOf(percents.get(i), 2));
                add(sheets, trader, chosen.get(i), then, share, sign);
            }
        }
    }

    private static Sheets.Row row(
            Sheets sheets,
            Trader trader,
            LocalDate day,
            String kind,
            String order,
            BigDecimal price) {
        return sheets.row(day, kind)
                .put("order", order)
                .put("gross", price.toPlainString())
                .put("from", trader.home())
                .put("to", trader.home());
    }

    private static void add(
            Sheets sheets,
            Trader trader,
            Liability goods,
            LocalDate day,
            BigDecimal price,
            int sign) {
        if (goods == Liability.OUTSIDE) {
            return;
        }
        BigDecimal vat = Vat.inside(price, goods.rate(day).orElse(Vat.NONE), trader);
        BigDecimal net = price.subtract(vat);
        sheets.box(day, 1, sign < 0 ? vat.negate() : vat);
        sheets.box(day, 6, sign < 0 ? net.negate() : net);
    }
}
