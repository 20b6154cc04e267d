package quarterfold.independent;

import static java.math.RoundingMode.HALF_UP;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Map;
import java.util.TreeMap;

/**
 * What payments of a document bring of one of its amounts. The sum of all payments so far brings
 * its share to four decimals, as VAT is carried; a payment brings what it adds to that.
 */
record Parts(BigDecimal whole, Map<LocalDate, BigDecimal> paid) {

    /** The amount by the days it counts on. */
    Map<LocalDate, BigDecimal> of(BigDecimal amount) {
        Map<LocalDate, BigDecimal> parts = new TreeMap<>();
        BigDecimal sum = BigDecimal.ZERO;
        BigDecimal brought = BigDecimal.ZERO;
        for (Map.Entry<LocalDate, BigDecimal> payment : new TreeMap<>(paid).entrySet()) {
            sum = sum.add(payment.getValue());
            BigDecimal now = amount.multiply(sum).divide(whole, 4, HALF_UP);
            parts.put(payment.getKey(), now.subtract(brought));
            brought = now;
        }
        return parts;
    }

    BigDecimal unpaid() {
        return whole.subtract(paid.values().stream().reduce(BigDecimal.ZERO, BigDecimal::add));
    }
}
