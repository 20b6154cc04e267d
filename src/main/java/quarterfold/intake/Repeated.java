package quarterfold.intake;

import quarterfold.money.Amount;

/**
 * Rows of a file that repeat rows of earlier files and are set aside.
 *
 * @param money what they state, seen by the business; it is entered with the earlier files
 */
public record Repeated(long rows, Amount money) {
    static final Repeated NONE = new Repeated(0, Amount.ZERO);
}
