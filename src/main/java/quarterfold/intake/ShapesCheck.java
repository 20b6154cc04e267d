package quarterfold.intake;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Checks that the shapes of a layout, each sound by itself, can be told apart. */
final class ShapesCheck {
    private ShapesCheck() {}

    static void check(Layout layout, YamlMap yaml) {
        List<YamlMap> maps = yaml.maps("shapes");
        if (layout.print().isPresent() && (!maps.isEmpty() || !layout.when().isEmpty())) {
            yaml.problem(
                    "shapes",
                    "found other shapes of rows beside text; expected a line of rows for each, such as \"{Date} {Amount}\"");
            return;
        }
        boolean files = layout.all().stream().anyMatch(s -> s.fields().containsKey(Field.FILE));
        if (files && !maps.isEmpty()) {
            yaml.problem(
                    "shapes",
                    "found other shapes of rows beside a column of documents; expected one shape, such as the layout without file under fields");
        }
        if (yaml.has("tables_below") && layout.tables().isEmpty()) {
            yaml.problem(
                    "tables_below",
                    "found it in a layout without a table below the first; expected a shape without when beside it, such as shapes: [{fields: {date: Day}, …}]");
        }
        above(layout, yaml);
        boolean named = layout.shape().headerRow() > 0;
        Set<Set<String>> columns = new HashSet<>();
        if (named && layout.when().isEmpty()) {
            columns.add(layout.columns());
        }
        for (int i = 0; i < maps.size(); i++) {
            Layout shape = layout.shapes().get(i);
            LayoutCheck.check(shape, maps.get(i));
            if (named && maps.get(i).has("columns")) {
                maps.get(i)
                        .problem(
                                "columns",
                                "found a number of columns beside a row that names them; expected it only with header_row: none");
            }
            if (!named && shape.when().isEmpty()) {
                maps.get(i)
                        .problem(
                                "when",
                                "found nothing, in a layout without column names; expected the texts by which such rows are known, such as when: {\"#1\": F}");
            }
            if (named && shape.when().isEmpty() && !columns.add(shape.columns())) {
                maps.get(i)
                        .problem(
                                "fields",
                                "found the very columns that another table of the layout reads; expected one of its own at least, such as Fee type");
            }
        }
    }

    /**
     * What a line above says fills a field of some shape, or is the payout; other money is in rows.
     */
    private static void above(Layout layout, YamlMap yaml) {
        List<String> names = new ArrayList<>();
        layout.above().forEach(line -> names.addAll(line.names()));
        if (!names.isEmpty() && layout.print().isPresent()) {
            yaml.problem(
                    "above",
                    "found lines above a table beside text; expected them as facts of the text, such as facts: [\"Issued: {Issued}\"]");
            return;
        }
        if (!names.isEmpty() && layout.shape().headerRow() < 2) {
            yaml.problem(
                    "above",
                    "found lines above the column names where no row is above them; expected the row of the names, such as file: {header_row: 3}");
        }
        Set<String> seen = new HashSet<>();
        for (String name : names) {
            boolean field = layout.all().stream().anyMatch(s -> s.fields().containsValue(name));
            boolean payout = layout.payoutColumn().filter(name::equals).isPresent();
            boolean payoutAlone = payout && !field && !layout.amounts().contains(name);
            boolean fieldAlone =
                    field && layout.all().stream().noneMatch(s -> s.needed().contains(name));
            if (!seen.add(name) || (!payoutAlone && !fieldAlone)) {
                yaml.wrong(
                        "above",
                        name,
                        "each name once, and that a field or the payout and nothing else is read from it, such as fields: {date: Issued}");
            }
        }
    }
}
