package quarterfold.intake;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import quarterfold.intake.Layout.Enter;
import quarterfold.intake.Layout.Rule;
import quarterfold.intake.Layout.Signs;
import quarterfold.ledger.Coded;
import quarterfold.ledger.Kind;

/** Reads the {@code rows} of a layout. */
final class RuleReader {
    private RuleReader() {}

    /** {@code shape}: what stands on every row the rules are for. */
    static List<Rule> rules(YamlMap yaml, Map<String, List<String>> shape) {
        List<Rule> rules = yaml.maps("rows").stream().map(row -> rule(row, shape)).toList();
        if (rules.isEmpty()) {
            yaml.problem(
                    "rows",
                    "found no rule; expected at least one, such as - {when: {}, enter: [{kind: sale, gross: Amount}]}");
        }
        return rules;
    }

    private static Rule rule(YamlMap row, Map<String, List<String>> shape) {
        row.known("when", "enter", "set_aside", "ask", "signs");
        if (!row.has("when")) {
            row.problem("when", "found nothing; expected conditions, such as when: {Type: Order}");
        }
        Map<String, List<String>> conditions = new LinkedHashMap<>(shape);
        conditions.putAll(conditions(row.map("when")));
        if (row.has("enter") == row.has("set_aside")) {
            row.problem(
                    "enter",
                    "found %s; expected either entries or a reason, such as enter: [{kind: sale, gross: Amount}]"
                            .formatted(
                                    row.has("enter")
                                            ? "entries and a reason to set the row aside"
                                            : "neither entries nor a reason to set the row aside"));
        }
        String reason =
                row.has("set_aside") ? row.required("set_aside", "no money on this row") : "";
        return new Rule(
                conditions,
                entries(row),
                reason,
                row.text("ask").orElse("").strip(),
                row.line(),
                row.has("signs") ? Optional.of(signs(row)) : Optional.empty());
    }

    /** What + means, of a layout or of a rule's rows. */
    static Signs signs(YamlMap yaml) {
        String signs = yaml.required("signs", "document");
        return switch (signs) {
            case "owner" -> Signs.OWNER;
            case "turned" -> Signs.TURNED;
            case "document" -> Signs.DOCUMENT;
            default -> {
                yaml.wrong(
                        "signs",
                        signs,
                        "owner (+ comes in, - goes out), document (as printed) or turned (+ goes out, - comes in), such as document");
                yield Signs.DOCUMENT;
            }
        };
    }

    /** Columns and the texts that may stand in them. */
    static Map<String, List<String>> conditions(YamlMap when) {
        Map<String, List<String>> conditions = new LinkedHashMap<>();
        for (String column : when.keys()) {
            conditions.put(column.strip(), when.texts(column).stream().map(String::strip).toList());
        }
        return conditions;
    }

    private static List<Enter> entries(YamlMap row) {
        List<Enter> entries = new ArrayList<>();
        for (YamlMap entry : row.maps("enter")) {
            entry.known("kind", "gross", "net", "vat", "set");
            String code = entry.required("kind", "sale");
            Optional<Kind> kind = Coded.find(Kind.class, code);
            if (kind.isEmpty()) {
                entry.wrong("kind", code, Field.KIND.expected());
            }
            Map<Field, String> amounts = new EnumMap<>(Field.class);
            for (Field field : List.of(Field.GROSS, Field.NET, Field.VAT)) {
                if (entry.has(field.code())) {
                    amounts.put(field, entry.required(field.code(), "Amount").strip());
                }
            }
            if (amounts.isEmpty()) {
                entry.problem(
                        "gross",
                        "found no amount; expected a column for gross, net or vat, such as gross: Amount");
            }
            entries.add(
                    new Enter(
                            kind.orElse(Kind.OTHER_MONEY),
                            amounts,
                            LayoutReader.values(entry.map("set"))));
        }
        if (row.has("enter") && entries.isEmpty()) {
            row.problem(
                    "enter",
                    "found no entry; expected at least one, such as - {kind: sale, gross: Amount}");
        }
        return entries;
    }

    static String noField() {
        return "found a name that is no field here; expected one of %s, such as order"
                .formatted(
                        Stream.of(Field.values())
                                .filter(Field::isGiven)
                                .map(Field::code)
                                .collect(Collectors.joining(", ")));
    }
}
