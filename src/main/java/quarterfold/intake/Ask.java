package quarterfold.intake;

import quarterfold.ledger.Kind;
import quarterfold.ledger.Line;

/**
 * A question about what a row of a file is.
 *
 * @param about what it is about, as {@link Asked#about} tells it
 * @param kind of the lines of the row that it is about
 */
record Ask(long row, String about, Kind kind) {

    boolean isOf(Line line) {
        return line.row() == row && line.profile().kind() == kind;
    }
}
