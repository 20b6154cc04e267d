package quarterfold.intake;

import java.util.List;
import java.util.stream.IntStream;

/** Tells where a column's name stands above cells that are none of its kind. */
final class Slips {
    private final List<Grid.Line> rows;
    private final NumberText numbers;

    Slips(List<Grid.Line> rows, NumberText numbers) {
        this.rows = rows;
        this.numbers = numbers;
    }

    /** Where few rows are to blame the first of them is named, else the names are. */
    String told(Column column) {
        Role meant = column.meant().orElse(Role.NONE);
        List<Integer> stated =
                IntStream.range(0, column.texts().size())
                        .filter(row -> !isNothing(column.texts().get(row)))
                        .boxed()
                        .toList();
        List<Integer> wrong =
                stated.stream().filter(row -> !fits(column.texts().get(row), meant)).toList();
        if (!wrong.isEmpty() && wrong.size() * 2 < stated.size()) {
            return "row %d: found '%s' in '%s'; expected %s; has the row slipped, as by a delimiter in a text without quotes?"
                    .formatted(
                            rows.get(wrong.get(0)).number(),
                            column.texts().get(wrong.get(0)),
                            column.reference(),
                            expected(meant));
        }
        int first = wrong.isEmpty() ? stated.get(0) : wrong.get(0);
        return "'%s' stands above cells such as '%s'; expected %s; have the columns slipped? Else answer column/%s=ignored"
                .formatted(
                        column.reference(),
                        column.texts().get(first),
                        expected(meant),
                        column.reference());
    }

    private static boolean isNothing(String text) {
        return text.isEmpty() || NumberText.isNothing(text);
    }

    private boolean fits(String text, Role meant) {
        return meant == Role.DATE
                ? DateFinder.isLike(text)
                : meant.isNumber() && numbers.isNumber(text) && !DateFinder.isLike(text);
    }

    private static String expected(Role meant) {
        return meant == Role.DATE ? "dates" : meant.isNumber() ? "amounts" : "what its name says";
    }
}
