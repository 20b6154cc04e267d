package quarterfold.ledger;

import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The VAT accounting schemes of a business, each from its first day until the next begins.
 *
 * @param from the scheme by its first day: {@code standard}, {@code cash} or {@code flat-rate}; at
 *     least one
 * @param flatRateSector the trade sector by its id in {@code flat-rates.csv}, such as {@code 044};
 *     stated where a scheme is {@code flat-rate}
 */
public record Schemes(NavigableMap<LocalDate, String> from, Optional<String> flatRateSector) {

    public static final String STANDARD = "standard";
    public static final String CASH = "cash";
    public static final String FLAT_RATE = "flat-rate";

    static final List<String> WORDS = List.of(STANDARD, CASH, FLAT_RATE);

    /** Refuses no scheme at all. */
    public Schemes {
        if (from.isEmpty()) {
            throw new IllegalArgumentException("a business has a scheme");
        }
        from = Collections.unmodifiableNavigableMap(new TreeMap<>(from));
    }

    /** One scheme, from the first day on. */
    public static Schemes of(String word, Optional<String> flatRateSector) {
        return new Schemes(new TreeMap<>(Map.of(LocalDate.MIN, word)), flatRateSector);
    }

    /** The scheme on the day; on a day before the first, the first. */
    public String on(LocalDate day) {
        return Optional.ofNullable(from.floorEntry(day)).orElseGet(from::firstEntry).getValue();
    }

    /** The days on which one scheme gives way to another, rising. */
    public List<LocalDate> changes() {
        return List.copyOf(from.tailMap(from.firstKey(), false).keySet());
    }
}
