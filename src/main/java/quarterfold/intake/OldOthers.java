package quarterfold.intake;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import quarterfold.intake.Layout.OtherRow;

/**
 * Rows of which a layout says, by a text in one of their columns, that they do not count: they do
 * not count either where the report is learned again, which cannot tell them from others.
 */
final class OldOthers {
    private OldOthers() {}

    /**
     * What stays of them.
     *
     * @param reads whether the report reads no worse by a layout, whatever rows are set aside
     * @param answered the questions that a person answered: what they say of rows holds
     */
    static OldColumns.Kept with(
            Layout old,
            OldColumns.Kept columns,
            Header file,
            HandWritten.Fit reads,
            Set<String> answered)
            throws BadFile, IOException {
        Layout kept = columns.layout();
        if (!OldColumns.fits(old, kept)) {
            return columns;
        }
        List<String> notes = new ArrayList<>(columns.notes());
        for (OtherRow other : old.otherRows()) {
            boolean told =
                    other.when().keySet().stream()
                            .anyMatch(
                                    c ->
                                            answered.contains("void/" + c)
                                                    || answered.contains("refunded/" + c));
            if (!isByText(other)
                    || told
                    || kept.otherRows().stream().anyMatch(o -> o.when().equals(other.when()))) {
                continue;
            }
            List<OtherRow> rows = new ArrayList<>(kept.otherRows());
            rows.add(other);
            Layout with = OldMoney.with(kept, rows);
            boolean fits =
                    columns(other).stream().allMatch(file::has) && OldColumns.isSound(with, reads);
            kept = fits ? with : kept;
            notes.add(
                    (fits
                                    ? "kept from the layout as it was: other_rows: [%s]"
                                    : "not kept from the layout as it was, for it does not fit this report: other_rows: [%s]")
                            .formatted(OtherRowText.of(other)));
        }
        return new OldColumns.Kept(kept, notes);
    }

    /** Those by a text in a column that the report lacks, and that stays: it has none of them. */
    static List<OtherRow> staying(Layout old, Set<String> stay, Header file) {
        return old.otherRows().stream()
                .filter(OldOthers::isByText)
                .filter(o -> o.when().keySet().stream().anyMatch(stay::contains))
                .filter(o -> columns(o).stream().allMatch(c -> stay.contains(c) || file.has(c)))
                .toList();
    }

    /** Whether rows with the text in the column do not count. */
    static boolean hold(Layout old, String column, String text) {
        return old.otherRows().stream()
                .filter(OldOthers::isByText)
                .anyMatch(o -> o.when().getOrDefault(column, List.of()).contains(text));
    }

    private static boolean isByText(OtherRow other) {
        return !other.when().isEmpty()
                && other.is().isEmpty()
                && other.starts().isEmpty()
                && other.sums().isEmpty()
                && other.states().isEmpty()
                && !other.rest()
                && !other.count();
    }

    private static Set<String> columns(OtherRow other) {
        Set<String> columns = new LinkedHashSet<>(other.blank());
        columns.addAll(other.when().keySet());
        return columns;
    }
}
