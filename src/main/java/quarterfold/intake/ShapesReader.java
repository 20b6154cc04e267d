package quarterfold.intake;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads the {@code shapes} of a layout. */
final class ShapesReader {
    private ShapesReader() {}

    static List<Layout> read(Layout whole, YamlMap yaml) {
        List<Layout> shapes = new ArrayList<>();
        for (YamlMap shape : yaml.maps("shapes")) {
            shapes.add(shape(whole, shape));
        }
        return List.copyOf(shapes);
    }

    /** What a shape does not say of dates, numbers, signs and currency is as the whole has it. */
    private static Layout shape(Layout whole, YamlMap yaml) {
        yaml.known(
                "when",
                "columns",
                "dates",
                "numbers",
                "signs",
                "currency",
                "fields",
                "constants",
                "worked_out",
                "rows",
                "tax",
                "check",
                "amounts",
                "payout",
                "outgoing",
                "sign",
                "other_rows",
                "balance",
                "optional",
                "unread",
                "expect");
        LayoutReader reader = new LayoutReader(yaml);
        Map<String, List<String>> when = RuleReader.conditions(yaml.map("when"));
        Map<Field, String> constants = new EnumMap<>(Field.class);
        constants.putAll(whole.constants());
        constants.putAll(LayoutReader.values(yaml.map("constants")));
        return new Layout(
                whole.name(),
                form(whole.shape(), yaml),
                yaml.has("dates") ? LayoutReader.dates(yaml.map("dates")) : whole.dates(),
                yaml.has("numbers") ? LayoutReader.numbers(yaml.map("numbers")) : whole.numbers(),
                yaml.has("signs") ? reader.signs() : whole.signs(),
                reader.currency().or(whole::currency),
                reader.fields(),
                constants,
                LayoutReader.workedOut(yaml.map("worked_out")),
                RuleReader.rules(yaml, when),
                reader.tax(),
                yaml.maps("check").stream().map(LayoutReader::check).toList(),
                reader.required("amounts", "amounts: [Amount]"),
                reader.payout(),
                Set.copyOf(yaml.texts("outgoing")),
                LayoutExtras.mark(yaml),
                LayoutExtras.otherRows(yaml),
                LayoutExtras.balance(yaml),
                whole.repeats(),
                Set.copyOf(yaml.texts("optional")),
                Optional.empty(),
                when,
                List.of(),
                whole.above(),
                true,
                Expected.read(yaml));
    }

    private static Layout.Shape form(Layout.Shape whole, YamlMap yaml) {
        boolean numbered = whole.headerRow() == 0 && yaml.has("columns");
        return new Layout.Shape(
                whole.delimiter(),
                whole.quote(),
                whole.encoding(),
                whole.twice(),
                whole.headerRow(),
                numbered ? LayoutExtras.columns(yaml, 0) : whole.columns(),
                whole.blanks());
    }
}
