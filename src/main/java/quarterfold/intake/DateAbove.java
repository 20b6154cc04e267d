package quarterfold.intake;

import java.util.List;

/**
 * The date of a table whose rows have none: a line above its column names states it for all.
 *
 * @param line how the line reads; its one name is that of the column the date fills
 * @param filled a column of text that every row of the table has, by which it is known
 * @param others dates in other places above, which are written alike
 */
record DateAbove(LinePattern line, String filled, List<String> others) {
    DateAbove {
        others = List.copyOf(others);
    }
}
