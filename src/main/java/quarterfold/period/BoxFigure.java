package quarterfold.period;

import quarterfold.law.Box;
import quarterfold.money.Amount;

/**
 * One box of a return.
 *
 * @param exact the sum before the box's one rounding, to four decimals
 * @param figure what the return shows
 */
public record BoxFigure(Box box, Amount exact, Amount figure) {

    /** The figure as the form has it: {@code 4960.00}, or {@code 24800} in whole pounds. */
    public String text() {
        return box.text(figure);
    }
}
