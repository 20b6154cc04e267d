package quarterfold.ledger;

import java.math.BigDecimal;
import java.time.LocalDate;

/**
 * An exchange rate as a file states it.
 *
 * @param row the row of the source, from 1, as a person counts it in the file
 * @param currency three capital letters, as the publisher has them
 * @param first the first day it holds
 * @param last the last day it holds
 * @param units of the currency for one unit of the publisher's {@link Publisher#base}; above nought
 */
public record PublishedRate(
        long row,
        Publisher publisher,
        String currency,
        LocalDate first,
        LocalDate last,
        BigDecimal units) {

    /** Refuses a rate that is nought or negative, or that ends before it begins. */
    public PublishedRate {
        if (units.signum() <= 0 || last.isBefore(first)) {
            throw new IllegalArgumentException(
                    "%s %s from %s to %s".formatted(currency, units, first, last));
        }
    }

    /** Such as {@code 1.1719 EUR for 1 GBP from 2026-08-01 to 2026-08-31 (row 12)}. */
    @Override
    public String toString() {
        return "%s %s for 1 %s from %s to %s (row %d)"
                .formatted(units.toPlainString(), currency, publisher.base(), first, last, row);
    }

    public boolean holds(LocalDate day) {
        return !day.isBefore(first) && !day.isAfter(last);
    }

    /** Whether the two are of one publisher and currency and hold on a same day. */
    public boolean overlaps(PublishedRate other) {
        return publisher == other.publisher
                && currency.equals(other.currency)
                && !other.last.isBefore(first)
                && !other.first.isAfter(last);
    }

    /** Whether the two are of the same value, however many noughts are written. */
    public boolean agrees(PublishedRate other) {
        return units.compareTo(other.units) == 0;
    }
}
