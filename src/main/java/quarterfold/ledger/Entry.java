package quarterfold.ledger;

import java.time.LocalDate;

/**
 * One line of the ledger: a {@link Line} with its place. Never changed and never removed.
 *
 * @param number 1, 2, 3 … over the whole ledger, without gaps
 * @param source the {@link Source} it came from
 */
public record Entry(long number, long source, Line line) {

    public Profile profile() {
        return line.profile();
    }

    public Kind kind() {
        return line.profile().kind();
    }

    public LocalDate taxPoint() {
        return line.taxPoint();
    }

    public Amounts amounts() {
        return line.amounts();
    }

    /** The same entry as one of another tax point. */
    public Entry at(LocalDate taxPoint) {
        return taxPoint.equals(line.taxPoint())
                ? this
                : new Entry(number, source, line.at(taxPoint));
    }
}
