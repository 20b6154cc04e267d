package quarterfold.intake;

import static java.util.stream.Collectors.joining;

import java.util.Map;
import quarterfold.intake.Layout.OtherRow;

/** A kind of other rows as a layout's YAML has it, on one line. */
final class OtherRowText {
    private OtherRowText() {}

    static String of(OtherRow other) {
        StringBuilder row = new StringBuilder("{");
        row.append(other.is().isEmpty() ? "" : "is: " + LayoutWriter.quoted(other.is()) + ", ");
        row.append(
                other.starts().isEmpty()
                        ? ""
                        : "starts: " + LayoutWriter.quoted(other.starts()) + ", ");
        row.append(
                other.blank().isEmpty() ? "" : "blank: " + LayoutWriter.list(other.blank()) + ", ");
        row.append(
                other.when().isEmpty() ? "" : "when: " + LayoutWriter.when(other.when()) + ", ");
        row.append(
                other.sums().isEmpty() ? "" : "sums: " + LayoutWriter.list(other.sums()) + ", ");
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
