package quarterfold.law;

import java.time.LocalDate;

/**
 * A value of a table with the days it is in force, both included, and the text that sets it.
 *
 * @param to {@link LocalDate#MAX} while it is still in force
 */
public record Dated<T>(T value, LocalDate from, LocalDate to, String source) {

    public boolean isInForce(LocalDate day) {
        return !day.isBefore(from) && !day.isAfter(to);
    }

    boolean overlaps(Dated<?> other) {
        return !from.isAfter(other.to) && !other.from.isAfter(to);
    }
}
