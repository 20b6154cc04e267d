package quarterfold.intake;

import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import quarterfold.intake.Layout.Signs;
import quarterfold.ledger.Kind;

/** Checks that the parts of a layout, each sound by itself, fit together. */
final class LayoutCheck {
    private LayoutCheck() {}

    static void check(Layout layout, YamlMap yaml) {
        Set<String> counted = new HashSet<>(layout.amounts());
        if (counted.size() < layout.amounts().size()) {
            yaml.problem("amounts", "found a column twice; expected each once, such as [Amount]");
        }
        tax(layout, yaml, counted);
        RepeatsReader.check(layout, yaml);
        optional(layout, yaml);
        stated(layout, yaml);
        layout.print().ifPresent(print -> PrintCheck.check(layout, print, yaml));
        for (Map.Entry<String, Layout.WorkedOut> worked : layout.workedOut().entrySet()) {
            for (String factor : worked.getValue().columns()) {
                if (layout.workedOut().containsKey(factor)) {
                    yaml.problem(
                            "worked_out",
                            "found '%s', itself worked out; expected a column of the file, such as Quantity"
                                    .formatted(factor));
                }
            }
        }
        if (layout.signs() != Signs.OWNER
                && (!layout.outgoing().isEmpty()
                        || layout.mark().isPresent()
                        || layout.balance().isPresent())) {
            yaml.problem(
                    "signs",
                    "found %s beside outgoing, sign or balance, which say which way money goes; expected signs: owner"
                            .formatted(code(layout.signs())));
        }
        List<YamlMap> rows = yaml.maps("rows");
        for (int i = 0; i < rows.size(); i++) {
            rule(layout, layout.rules().get(i), rows.get(i), counted);
            amounts(layout, layout.rules().get(i), rows.get(i));
            if (i + 1 < rows.size() && layout.rules().get(i).when().equals(layout.when())) {
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
                            for (Signs signs : others(layout)) {
                                at.problem(
                                        "column",
                                        "found a tax column beside signs: %s; expected signs: owner, or vat: in each entry, such as {kind: sale, gross: Price, vat: Tax}"
                                                .formatted(code(signs)));
                            }
                            mustCount(at, "column", tax.column(), counted);
                            tax.withheld().ifPresent(w -> mustCount(at, "withheld", w, counted));
                        });
    }

    /** The signs of the layout and of its rules that are not the owner's. */
    private static Set<Signs> others(Layout layout) {
        Set<Signs> others = EnumSet.of(layout.signs());
        layout.rules().forEach(rule -> others.add(rule.signs(layout)));
        others.remove(Signs.OWNER);
        return others;
    }

    private static String code(Signs signs) {
        return signs.name().toLowerCase(Locale.ROOT);
    }

    /** Without column names a total stands in a column that has a number. */
    private static void stated(Layout layout, YamlMap yaml) {
        for (YamlMap row : yaml.maps("other_rows")) {
            YamlMap states = row.map("states");
            for (String column : states.keys()) {
                if (layout.shape().headerRow() == 0 && !Header.isNumber(column.strip())) {
                    states.wrong(
                            column,
                            column,
                            "the number of a column, in a layout without column names, such as #6");
                }
            }
        }
    }

    /**
     * A column that may be missing fills a field, or is of money beside other columns of money;
     * money under a new name is then told.
     */
    private static void optional(Layout layout, YamlMap yaml) {
        Set<String> named = layout.named();
        named.addAll(layout.expected().texts().keySet());
        Set<String> fixed = LayoutColumns.fixed(layout);
        Set<String> needed = layout.needed();
        for (String column : layout.optional()) {
            if (!named.contains(column) || fixed.contains(column)) {
                yaml.wrong(
                        "optional",
                        column,
                        "a column without which a row reads as before, so none of the date, of the texts that rules look at, of tax, of what is worked out, or of all the money, such as Remark");
            } else if (needed.contains(column) && layout.expected().unread().isEmpty()) {
                yaml.wrong(
                        "optional",
                        column,
                        "the key unread beside a column of money that may be missing, so that one with a new name is told, such as unread: []");
            }
        }
    }

    private static void mustCount(YamlMap at, String key, String column, Set<String> counted) {
        if (!counted.contains(column)) {
            at.wrong(
                    key,
                    column,
                    "a column that amounts names too, such as amounts: [Price, " + column + "]");
        }
    }

    /** Beside a tax column a sale has one price; and no sign shows money that does not move. */
    private static void amounts(Layout layout, Layout.Rule rule, YamlMap row) {
        for (Layout.Enter enter : rule.enter()) {
            boolean sale = enter.kind().side() == Kind.Side.SALES;
            if (layout.tax().isPresent()
                    && sale
                    && !enter.amounts().keySet().equals(Set.of(Field.GROSS))) {
                row.problem(
                        "enter",
                        "found a %s with net or vat beside a tax column; expected its price alone, such as {kind: %s, gross: Price}"
                                .formatted(enter.kind().code(), enter.kind().code()));
            }
            Signs signs = rule.signs(layout);
            if (signs != Signs.DOCUMENT && enter.kind().direction() == 0) {
                row.problem(
                        "enter",
                        "found %s, which moves no money, under signs: %s; expected amounts as printed, such as signs: document"
                                .formatted(enter.kind().code(), code(signs)));
            }
        }
    }

    /**
     * With document signs each counted column needs one direction, which its entry's kind gives.
     */
    private static void rule(Layout layout, Layout.Rule rule, YamlMap row, Set<String> counted) {
        if (rule.signs(layout) != Signs.DOCUMENT || rule.enter().size() < 2) {
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
