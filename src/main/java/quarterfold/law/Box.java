package quarterfold.law;

import java.math.RoundingMode;
import java.util.List;
import quarterfold.money.Amount;
import quarterfold.money.Rounding;

/**
 * One box of the return form: a row of {@code form.csv}.
 *
 * @param id such as {@code 1}; a text, since other countries' forms have lettered boxes
 * @param label the box in words
 * @param unit whether it shows pence
 * @param rounding the one rounding from the exact sum to the figure
 * @param formula how it is computed from other boxes, or summed from entries
 * @param exportName its field in the tax authority's published schema
 * @param source the text that sets it
 */
public record Box(
        String id,
        String label,
        Unit unit,
        Rounding rounding,
        Formula formula,
        String exportName,
        String source) {

    /** How a figure of the box is written. */
    public enum Unit {
        PENCE,
        POUNDS
    }

    /** Where the figure comes from. */
    public enum Operation {
        /** The sum of what entries add to the box. */
        ENTRIES,
        /** The sum of the boxes named. */
        SUM,
        /** The larger of the two boxes named less the smaller, on signed values. */
        GAP
    }

    /** An operation and the boxes it takes; none for {@link Operation#ENTRIES}. */
    public record Formula(Operation operation, List<String> boxes) {
        public Formula {
            boxes = List.copyOf(boxes);
        }
    }

    public boolean isComputed() {
        return formula.operation() != Operation.ENTRIES;
    }

    /** A figure as the form has it: {@code 4960.00}, or {@code 24800} in whole pounds. */
    public String text(Amount figure) {
        return unit == Unit.POUNDS
                ? figure.decimal().setScale(0, RoundingMode.UNNECESSARY).toPlainString()
                : figure.decimal().setScale(2, RoundingMode.UNNECESSARY).toPlainString();
    }
}
