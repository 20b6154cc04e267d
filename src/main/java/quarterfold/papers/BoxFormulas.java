package quarterfold.papers;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import quarterfold.law.Box;
import quarterfold.money.Rounding;

/**
 * A form's boxes as spreadsheet formulas, by the form's own table: sums of the entry sheets' cells,
 * or of other boxes.
 *
 * <p>A spreadsheet's numbers are binary, so a sum of pennies can miss by a millionth. Every sum is
 * therefore brought back to the four decimals its cells have before the box's own rounding.
 */
final class BoxFormulas {

    private BoxFormulas() {}

    /** The exact sum of what entries add to a box. */
    static String sumOf(List<String> ranges) {
        return "ROUND(SUM(" + String.join(",", ranges) + "),4)";
    }

    /**
     * The figure of a box from the cell of its exact sum. LibreOffice takes a number to twelve
     * digits before TRUNC, so a box that drops pence is exact below a hundred million pounds; above
     * it the sheet's check can say that a box differs by one.
     */
    static String rounded(Rounding rounding, String exact) {
        return switch (rounding) {
            case NEAREST_PENNY -> "ROUND(" + exact + ",2)";
            case PENNY_DOWN -> "TRUNC(" + exact + ",2)";
            case NEAREST_TENTH_OF_A_PENNY -> "ROUND(" + exact + ",3)";
            case NEAREST_HALF_PENNY -> "ROUND(" + exact + "*200,0)/200";
            case POUNDS_DOWN -> "TRUNC(" + exact + ",0)";
        };
    }

    /** The figure of a box that is computed from the cells of others' figures. */
    static String computed(Box box, Map<String, String> cells) {
        List<String> parts = box.formula().boxes().stream().map(id -> cell(cells, id)).toList();
        return switch (box.formula().operation()) {
            case ENTRIES ->
                    throw new IllegalArgumentException(
                            "box " + box.id() + " is summed from entries, not computed");
            case SUM -> rounded(box.rounding(), parts.stream().collect(Collectors.joining("+")));
            case GAP -> {
                String both = String.join(",", parts);
                yield rounded(box.rounding(), "MAX(" + both + ")-MIN(" + both + ")");
            }
        };
    }

    private static String cell(Map<String, String> cells, String id) {
        String cell = cells.get(id);
        if (cell == null) {
            throw new IllegalArgumentException(
                    "form.csv: a formula names box " + id + ", which the form does not have");
        }
        return cell;
    }

    /** A text in a formula. */
    static String quoted(String text) {
        return "\"" + text.replace("\"", "\"\"") + "\"";
    }
}
