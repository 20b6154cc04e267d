package quarterfold.intake;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import quarterfold.intake.Layout.Signs;

/** Checks that the parts of a layout, each sound by itself, fit together. */
final class LayoutCheck {
    private LayoutCheck() {}

    static void check(Layout layout, YamlMap yaml) {
        Set<String> counted = new HashSet<>(layout.amounts());
        if (counted.size() < layout.amounts().size()) {
            yaml.problem("amounts", "found a column twice; expected each once, such as [Amount]");
        }
        tax(layout, yaml, counted);
        for (Map.Entry<String, List<String>> product : layout.workedOut().entrySet()) {
            for (String factor : product.getValue()) {
                if (layout.workedOut().containsKey(factor)) {
                    yaml.problem(
                            "worked_out",
                            "found '%s', itself worked out; expected a column of the file, such as Quantity"
                                    .formatted(factor));
                }
            }
        }
        List<YamlMap> rows = yaml.maps("rows");
        for (int i = 0; i < rows.size(); i++) {
            rule(layout, layout.rules().get(i), rows.get(i), counted);
            if (i + 1 < rows.size() && layout.rules().get(i).when().isEmpty()) {
                rows.get(i + 1)
                        .problem(
                                "when",
                                "found a rule below one that fits every row; expected when: {} last, such as - {when: {}, …}");
            }
        }
    }

    private static void tax(Layout layout, YamlMap yaml, Set<String> counted) {
        layout.tax()
                .ifPresent(
                        tax -> {
                            YamlMap at = yaml.map("tax");
                            if (layout.signs() == Signs.DOCUMENT) {
                                at.problem(
                                        "column",
                                        "found a tax column beside signs: document; expected signs: owner, or vat: in each entry, such as {kind: sale, gross: Price, vat: Tax}");
                            }
                            mustCount(at, "column", tax.column(), counted);
                            tax.withheld().ifPresent(w -> mustCount(at, "withheld", w, counted));
                        });
    }

    private static void mustCount(YamlMap at, String key, String column, Set<String> counted) {
        if (!counted.contains(column)) {
            at.wrong(
                    key,
                    column,
                    "a column that amounts names too, such as amounts: [Price, " + column + "]");
        }
    }

    /**
     * With document signs each counted column needs one direction, which its entry's kind gives.
     */
    private static void rule(Layout layout, Layout.Rule rule, YamlMap row, Set<String> counted) {
        if (layout.signs() == Signs.OWNER || rule.enter().size() < 2) {
            return;
        }
        Set<String> seen = new HashSet<>();
        for (Layout.Enter enter : rule.enter()) {
            for (String column : enter.amounts().values()) {
                if (counted.contains(column) && !seen.add(column)) {
                    row.problem(
                            "enter",
                            "found '%s' in two entries of one row; expected each counted column in one, such as {kind: sale, gross: %s}"
                                    .formatted(column, column));
                }
            }
        }
    }
}
