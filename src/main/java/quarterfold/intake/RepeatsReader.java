package quarterfold.intake;

import java.util.Set;
import java.util.TreeSet;
import quarterfold.intake.Layout.Signs;
import quarterfold.intake.RepeatRule.Meeting;

/** Reads what a layout says of rows that an earlier export has too. */
final class RepeatsReader {
    private RepeatsReader() {}

    /**
     * The rule of a layout that says nothing: as multisets. Reports with the owner's signs are
     * looked through for the same entries in other words; lists of documents are not, since a
     * document entered twice is found by its supplier.
     */
    static RepeatRule usual(Signs signs) {
        return new RepeatRule(Meeting.ONCE, Set.of(), signs == Signs.OWNER);
    }

    static RepeatRule read(YamlMap yaml) {
        boolean owner = yaml.text("signs").filter("owner"::equals).isPresent();
        Signs signs = owner ? Signs.OWNER : Signs.DOCUMENT;
        if (!yaml.has("repeats")) {
            return usual(signs);
        }
        YamlMap repeats = yaml.map("repeats");
        repeats.known("rows", "ignore");
        String rows = repeats.text("rows").orElse("once");
        if (!rows.equals("once") && !rows.equals("each")) {
            repeats.wrong("rows", rows, "once or each, such as once");
        }
        Set<String> ignored = new TreeSet<>();
        repeats.texts("ignore").forEach(column -> ignored.add(column.strip()));
        return rows.equals("each")
                ? RepeatRule.EACH
                : new RepeatRule(Meeting.ONCE, Set.copyOf(ignored), usual(signs).looks());
    }

    /** Adds a problem where a column is not to be compared though entries are made of it. */
    static void check(Layout layout, YamlMap yaml) {
        for (String column : new TreeSet<>(layout.repeats().ignored())) {
            if (layout.columns().contains(column)) {
                yaml.map("repeats")
                        .wrong(
                                "ignore",
                                column,
                                "a column that the layout reads nothing from, such as one that numbers the rows of an export");
            }
        }
    }
}
