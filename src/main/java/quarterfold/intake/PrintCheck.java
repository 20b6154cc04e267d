package quarterfold.intake;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import quarterfold.intake.Print.Of;
import quarterfold.intake.Print.TotalLine;

/** Checks that the lines of a printed report give the columns its layout reads. */
final class PrintCheck {
    private PrintCheck() {}

    static void check(Layout layout, Print print, YamlMap yaml) {
        YamlMap text = yaml.map("text");
        for (String key :
                List.of("file", "other_rows", "balance", "optional", "payout", "sign", "tax")) {
            if (yaml.has(key)) {
                yaml.problem(
                        key,
                        "found it beside text; expected the lines of a PDF, or a table, such as text alone");
            }
        }
        List<String> given = print.columns();
        for (String column : layout.columns()) {
            if (!given.contains(column)) {
                text.problem(
                        "rows",
                        "found no line with {%s} in it; expected one for each column the layout names, such as %s {%s}"
                                .formatted(column, column, column));
            }
        }
        continued(layout, print, text);
        Set<String> proved = new HashSet<>();
        for (TotalLine total : print.totals()) {
            for (String column : total.sums()) {
                if (print.rows().stream().anyMatch(row -> !row.names().contains(column))) {
                    text.wrong(
                            "totals",
                            column,
                            "a column that every line of rows gives, such as "
                                    + print.rows().get(0).names().get(0));
                }
            }
            if (!total.optional() && total.of() == Of.FILE) {
                proved.addAll(total.sums());
            }
        }
        for (String column : layout.amounts()) {
            if (!proved.contains(column)) {
                text.problem(
                        "totals",
                        "found no line with the total of '%s'; expected one, so that a row that is missing is found, such as {line: \"Total {%s}\", sums: [%s]}"
                                .formatted(column, column, column));
            }
        }
    }

    /** What goes on over a line is text of a row: no amount, and nothing that totals go by. */
    private static void continued(Layout layout, Print print, YamlMap text) {
        Set<String> fixed = new HashSet<>(layout.amounts());
        for (TotalLine total : print.totals()) {
            fixed.addAll(total.sums());
            fixed.addAll(total.same());
        }
        for (LinePattern line : print.continues()) {
            for (String column : line.names()) {
                boolean ofRows = print.rows().stream().allMatch(r -> r.names().contains(column));
                if (!ofRows || fixed.contains(column)) {
                    text.wrong(
                            "continues",
                            column,
                            "a column that every line of rows gives and that is no amount and in no total, such as What");
                }
            }
        }
    }
}
