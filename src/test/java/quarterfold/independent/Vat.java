package quarterfold.independent;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;

/** VAT of one price, and the rates of the years the generator knows. */
final class Vat {

    static final BigDecimal REDUCED = new BigDecimal("5");
    static final BigDecimal NONE = BigDecimal.ZERO;
    private static final BigDecimal HUNDRED = new BigDecimal(100);

    private Vat() {}

    /**
     * The standard rate: 17.5 per cent, 15 from 1 December 2008 (SI 2008/3020), 17.5 again from 1
     * January 2010 (FA 2009 s.9), 20 from 4 January 2011 (F(No.2)A 2010 s.3).
     */
    static BigDecimal standard(LocalDate day) {
        if (!day.isBefore(LocalDate.of(2011, 1, 4))) {
            return new BigDecimal("20");
        }
        boolean lower =
                !day.isBefore(LocalDate.of(2008, 12, 1)) && day.isBefore(LocalDate.of(2010, 1, 1));
        return new BigDecimal(lower ? "15" : "17.5");
    }

    /**
     * Inside a price: {@code price x rate / (100 + rate)}, VATA 1994 s.19(2); carried to four
     * decimals, or to the nearest penny in a book that rounds each sale: both are methods
     * VATREC12020 accepts.
     */
    static BigDecimal inside(BigDecimal price, BigDecimal rate, Trader trader) {
        return price.multiply(rate)
                .divide(HUNDRED.add(rate), trader.perLine() ? 2 : 4, RoundingMode.HALF_UP);
    }

    /** On the value of a document, to the penny: VAT Notice 700 para 17.5. */
    static BigDecimal onTop(BigDecimal net, BigDecimal rate) {
        return net.multiply(rate).divide(HUNDRED, 2, RoundingMode.HALF_UP);
    }

    /** The value of goods whose import VAT this is. */
    static BigDecimal valueFor(BigDecimal vat, BigDecimal rate) {
        return vat.multiply(HUNDRED).divide(rate, 4, RoundingMode.HALF_UP);
    }

    /** So many per cent, to four decimals as all VAT is carried to. */
    static BigDecimal share(BigDecimal amount, int percent) {
        return amount.multiply(BigDecimal.valueOf(percent))
                .divide(HUNDRED, 4, RoundingMode.HALF_UP);
    }
}
