package quarterfold.papers;

import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;

/** How a cell of a law table holds several values: joined by bars. */
final class Cells {

    private static final Pattern SEVERAL = Pattern.compile("[a-z0-9-]+(\\|[a-z0-9-]+)+");

    private Cells() {}

    static List<String> values(String cell) {
        return Arrays.stream(cell.split("\\|", -1)).map(String::strip).toList();
    }

    /** The cell to be read: codes joined by bars become a list, and any other text stands. */
    static String text(String cell) {
        return SEVERAL.matcher(cell).matches() ? String.join(", ", values(cell)) : cell;
    }
}
