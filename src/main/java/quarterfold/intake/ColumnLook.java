package quarterfold.intake;

import java.util.ArrayList;
import java.util.List;

/** What the cells of a column look like, in rows that are marked alike. */
enum ColumnLook {
    DATES,
    /** Numbers of which one at least shows decimals. */
    MONEY,
    NUMBERS,
    TEXTS,
    /** Some of several. */
    MIXED,
    BLANK;

    static ColumnLook of(List<Grid.Line> rows, int column, NumberText numbers) {
        List<String> stated = new ArrayList<>();
        for (Grid.Line row : rows) {
            String cell = row.cell(column);
            if (!cell.isEmpty() && !NumberText.isNothing(cell)) {
                stated.add(cell);
            }
        }
        if (stated.isEmpty()) {
            return BLANK;
        }
        if (stated.stream().allMatch(DateFinder::isLike)) {
            return DATES;
        }
        if (stated.stream().allMatch(numbers::isNumber)) {
            return stated.stream().anyMatch(LineAmounts::showsDecimals) ? MONEY : NUMBERS;
        }
        return stated.stream().noneMatch(c -> numbers.isNumber(c) || DateFinder.isLike(c))
                ? TEXTS
                : MIXED;
    }

    /**
     * Whether no column of one table looks so in some rows and otherwise in others.
     *
     * @param codes whether numbers without decimals may be codes, which texts may stand beside
     */
    boolean contradicts(ColumnLook other, boolean codes) {
        if (this == other || this == MIXED || other == MIXED || this == BLANK || other == BLANK) {
            return false;
        }
        boolean numbers = this != TEXTS && other != TEXTS && this != DATES && other != DATES;
        boolean mayBeCodes =
                codes && (this == NUMBERS || other == NUMBERS) && (this == TEXTS || other == TEXTS);
        return !numbers && !mayBeCodes;
    }
}
