package quarterfold.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What a layout says of columns that nothing is read from, so that a report that has come to say
 * more is not read as if it said no more.
 *
 * @param unread columns that may hold amounts though nothing is read from them; amounts in any
 *     other column that is not read are refused. Empty where the layout does not say: then none are
 * @param texts columns, and the texts that may stand in them
 */
record Expected(Optional<Set<String>> unread, Map<String, List<String>> texts) {
    static final Expected NOTHING = new Expected(Optional.empty(), Map.of());

    /** As a layout says it, with a word on why. */
    List<String> lines() {
        List<String> lines = new ArrayList<>();
        if (unread.isPresent()) {
            lines.add("# Amounts in a column that is not named, here or above, are refused.");
            lines.add("unread: " + LayoutWriter.list(unread.get().stream().sorted().toList()));
        }
        if (!texts.isEmpty()) {
            lines.add("# Rows with other texts there are refused: they may be no sales.");
            lines.add("expect: " + LayoutWriter.when(texts));
        }
        return lines;
    }

    static Expected read(YamlMap yaml) {
        Map<String, List<String>> texts = RuleReader.conditions(yaml.map("expect"));
        texts.forEach(
                (column, known) -> {
                    if (known.isEmpty()) {
                        yaml.map("expect")
                                .wrong(column, "", "texts, such as expect: {Status: [Sent]}");
                    }
                });
        return new Expected(
                yaml.has("unread")
                        ? Optional.of(Set.copyOf(yaml.texts("unread")))
                        : Optional.empty(),
                texts);
    }
}
