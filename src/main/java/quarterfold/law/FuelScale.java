package quarterfold.law;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import quarterfold.money.Amount;

/**
 * The charge for road fuel put to private use, for one car: a row of {@code fuel-scale.csv}. An
 * amount that was not found in a published text is empty, never worked out from another.
 *
 * @param co2From the lowest emissions of the band, in grams per kilometre; the next band ends it
 * @param twelveMonths the charge with VAT, in pounds, for a period of twelve months
 * @param threeMonths the same for three months
 * @param oneMonth the same for one month
 */
public record FuelScale(
        int co2From,
        Optional<Amount> twelveMonths,
        Optional<Amount> threeMonths,
        Optional<Amount> oneMonth) {

    static FuelScale of(Table.Row row) {
        FuelScale scale =
                new FuelScale(
                        row.parse("co2_from", FuelScale::grams, "whole grams such as 125"),
                        amount(row, "months_12"),
                        amount(row, "months_3"),
                        amount(row, "months_1"));
        if (scale.twelveMonths.isEmpty()
                && scale.threeMonths.isEmpty()
                && scale.oneMonth.isEmpty()) {
            throw row.fault("[months_12], [months_3] and [months_1] are all empty");
        }
        return scale;
    }

    /** The charge with VAT for a period of 12, 3 or 1 months; empty for any other. */
    public Optional<Amount> forMonths(int months) {
        return switch (months) {
            case 12 -> twelveMonths;
            case 3 -> threeMonths;
            case 1 -> oneMonth;
            default -> Optional.empty();
        };
    }

    /** The band of these emissions on the day: the highest that does not begin above them. */
    static Optional<Dated<FuelScale>> band(List<Dated<FuelScale>> rows, int co2, LocalDate day) {
        return rows.stream()
                .filter(d -> d.isInForce(day) && d.value().co2From <= co2)
                .max(Comparator.comparingInt(d -> d.value().co2From));
    }

    private static int grams(String text) {
        int grams = Integer.parseInt(text);
        if (grams < 0) {
            throw new IllegalArgumentException(text);
        }
        return grams;
    }

    private static Optional<Amount> amount(Table.Row row, String column) {
        return row.maybe(column, Amount::of, "an amount such as 163");
    }
}
