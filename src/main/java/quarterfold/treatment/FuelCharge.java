package quarterfold.treatment;

import java.time.temporal.ChronoUnit;
import java.util.Optional;
import quarterfold.law.Law;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Particular;
import quarterfold.money.Amount;

/**
 * The charge for road fuel put to private use in one car: what {@code fuel-scale.csv} has for its
 * emissions and for a period of whole months, in force when the period begins.
 */
record FuelCharge(Optional<Amount> listed, Optional<Amount> stated) {

    static FuelCharge of(Entry entry, Law law, Related.Periods periods) {
        Optional<Amount> listed =
                entry.line()
                        .particulars()
                        .word(Particular.CO2)
                        .map(Integer::parseInt)
                        .flatMap(
                                co2 ->
                                        periods.of(entry.taxPoint())
                                                .flatMap(p -> listed(law, co2, p)));
        return new FuelCharge(
                listed, Optional.of(entry.amounts().money()).filter(a -> !a.isZero()));
    }

    private static Optional<Amount> listed(Law law, int co2, Related.Span period) {
        long months = ChronoUnit.MONTHS.between(period.start(), period.end().plusDays(1));
        boolean whole = period.start().plusMonths(months).equals(period.end().plusDays(1));
        return whole
                ? law.fuelScale(co2, period.start())
                        .flatMap(band -> band.value().forMonths((int) months))
                : Optional.empty();
    }

    /** A word of {@link quarterfold.law.Fact#MEASURED}. */
    String measured() {
        if (listed.isEmpty()) {
            return stated.isEmpty() ? "unstated" : "unlisted";
        }
        return stated.filter(s -> !s.equals(listed.get())).isPresent() ? "different" : "listed";
    }

    /** The charge with VAT: as stated, or as listed. */
    Amount gross() {
        return stated.or(() -> listed).orElse(Amount.ZERO);
    }
}
