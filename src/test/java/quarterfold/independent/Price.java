package quarterfold.independent;

import static java.math.RoundingMode.DOWN;
import static java.math.RoundingMode.HALF_UP;

import java.math.BigDecimal;
import java.util.Map;
import java.util.TreeMap;

/**
 * A price as a document prints it, in one of the ways the plain sheet takes, and what it comes to.
 *
 * @param net the value without VAT
 * @param vat the VAT
 * @param cells what the sheet shows
 */
record Price(BigDecimal net, BigDecimal vat, Map<String, String> cells) {

    /** What is paid. */
    BigDecimal total() {
        return net.add(vat);
    }

    /** About so much with VAT, where the sheet states the rate. */
    static Price atRate(Dice dice, Trader trader, BigDecimal rate, BigDecimal about) {
        String stated = rate.toPlainString();
        BigDecimal net = about.subtract(Vat.inside(about, rate, trader).setScale(2, DOWN));
        if (dice.oneIn(4)) {
            return new Price(
                    net, Vat.onTop(net, rate), Map.of("net", net.toPlainString(), "rate", stated));
        }
        return ofCells(dice, trader, rate, about, Map.of("rate", stated));
    }

    /** So much with VAT, where the rate follows from something else. */
    static Price ofCells(
            Dice dice,
            Trader trader,
            BigDecimal rate,
            BigDecimal gross,
            Map<String, String> others) {
        BigDecimal inside = Vat.inside(gross, rate, trader);
        if (dice.oneIn(3)) {
            return printed(dice, gross, inside, others);
        }
        return new Price(
                gross.subtract(inside), inside, with(others, "gross", gross.toPlainString()));
    }

    /**
     * So much with VAT that the document prints, rounded down or to the nearest penny: a supplier
     * may do either, VAT Notice 700 para 17.5; it is taken as printed.
     */
    static Price printed(
            Dice dice, BigDecimal gross, BigDecimal inside, Map<String, String> others) {
        BigDecimal vat = inside.setScale(2, dice.oneIn(2) ? DOWN : HALF_UP);
        BigDecimal net = gross.subtract(vat);
        Map<String, String> cells = with(others, "vat", vat.toPlainString());
        if (dice.oneIn(2)) {
            cells = with(cells, "net", net.toPlainString());
        }
        if (!cells.containsKey("net") || dice.oneIn(2)) {
            cells = with(cells, "gross", gross.toPlainString());
        }
        return new Price(net, vat, cells);
    }

    /** A price of which nothing is VAT. */
    static Price withoutVat(Dice dice, BigDecimal amount) {
        return new Price(
                amount,
                BigDecimal.ZERO,
                dice.oneIn(3)
                        ? Map.of("net", amount.toPlainString(), "vat", "0.00")
                        : Map.of("gross", amount.toPlainString()));
    }

    /** The same the other way: a negative row is a reversal. */
    Price reversed() {
        Map<String, String> turned = new TreeMap<>(cells);
        for (String column : new String[] {"net", "vat", "gross"}) {
            turned.computeIfPresent(
                    column, (c, text) -> new BigDecimal(text).negate().toPlainString());
        }
        return new Price(net.negate(), vat.negate(), turned);
    }

    private static Map<String, String> with(Map<String, String> cells, String column, String text) {
        Map<String, String> more = new TreeMap<>(cells);
        more.put(column, text);
        return more;
    }
}
