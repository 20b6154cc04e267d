package quarterfold.intake;

import static java.util.stream.Collectors.joining;

import java.util.Map;
import quarterfold.intake.Layout.OtherRow;

/** A kind of other rows as a layout's YAML has it, on one line. */
final class OtherRowText {
    private OtherRowText() {}

    /** Rows with a text in a column, which are of no account. */
    static String byText(String column, String text) {
        return "{when: {%s: %s}, why: of no account}"
                .formatted(LayoutWriter.text(column), LayoutWriter.text(text));
    }

    /**
     * How a person puts a row into a layout.
     *
     * @param layout what it is called in a sentence
     * @param first whether the layout has none yet
     */
    static String advice(String layout, boolean first, String row) {
        return "add to "
                + layout
                + (first ? ": other_rows: [" + row + "]" : " under other_rows: - " + row);
    }

    static String of(OtherRow other) {
        StringBuilder row = new StringBuilder("{");
        row.append(other.is().isEmpty() ? "" : "is: " + LayoutWriter.quoted(other.is()) + ", ");
        row.append(
                other.starts().isEmpty()
                        ? ""
                        : "starts: " + LayoutWriter.quoted(other.starts()) + ", ");
        row.append(
                other.blank().isEmpty() ? "" : "blank: " + LayoutWriter.list(other.blank()) + ", ");
        row.append(other.when().isEmpty() ? "" : "when: " + LayoutWriter.when(other.when()) + ", ");
        row.append(other.sums().isEmpty() ? "" : "sums: " + LayoutWriter.list(other.sums()) + ", ");
        row.append(other.count() ? "count: yes, " : "");
        row.append(other.rest() ? "rest: yes, " : "");
        row.append(other.states().isEmpty() ? "" : "states: " + states(other) + ", ");
        return row + "why: " + LayoutWriter.quoted(other.why()) + "}";
    }

    private static String states(OtherRow other) {
        return other.states().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .map(e -> LayoutWriter.text(e.getKey()) + ": " + e.getValue().code())
                .collect(joining(", ", "{", "}"));
    }
}
