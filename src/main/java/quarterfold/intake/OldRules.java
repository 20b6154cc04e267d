package quarterfold.intake;

import static java.util.stream.Collectors.joining;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import quarterfold.intake.Layout.Rule;

/**
 * Rules of a layout for rows that a report, learned again, does not have: another month had them,
 * or a person wrote them. They stay, behind the rules that were learned; one that says what
 * learning asks stands before them.
 *
 * @param first rules that answer what learning asks, as the layout before has them
 * @param last the others that stay
 * @param answered the questions they answer, by their ids
 * @param notes what stays and what does not, for a person
 */
record OldRules(List<String> first, List<String> last, Set<String> answered, List<String> notes) {
    /** A rule of so many texts is read as a whole. */
    private static final int TOLD_APART = 1_000;

    private static final String ROWS = "rows";

    static final OldRules NONE = new OldRules(List.of(), List.of(), Set.of(), List.of());

    /**
     * What stays of the layout before.
     *
     * @param file the layout file's name
     */
    static OldRules keep(String file, String before, String learned, HandWritten.Fit fit)
            throws BadFile, IOException {
        Problems problems = new Problems();
        Layout old = LayoutReader.read(file, before, problems);
        Layout made = LayoutReader.read(file, learned, problems);
        List<List<String>> items = items(HandWritten.block(before, ROWS));
        if (!problems.none() || items.size() != old.rules().size()) {
            return NONE;
        }
        OldRules kept =
                new OldRules(
                        new ArrayList<>(),
                        new ArrayList<>(),
                        new LinkedHashSet<>(),
                        new ArrayList<>());
        for (int i = 0; i < items.size(); i++) {
            Rule rule = old.rules().get(i);
            Optional<Rule> asked = asked(rule, made);
            if (asked.isEmpty() && isCovered(rule, made.rules())) {
                continue;
            }
            String text = String.join("\n", items.get(i)) + "\n";
            OldRules with = asked.isPresent() ? kept.with(text, "") : kept.with("", text);
            boolean fits =
                    !rule.when().isEmpty()
                            && old.signs() == made.signs()
                            && HandWritten.isSound(file, with.into(learned), fit);
            if (fits) {
                (asked.isPresent() ? kept.first : kept.last).add(text);
                asked.ifPresent(a -> kept.answered.add("kind/" + Asked.about(a.when())));
            }
            kept.notes.add(
                    (fits
                                    ? "kept from the layout as it was: %s"
                                    : "not kept from the layout as it was, for it does not fit this report: %s")
                            .formatted(said(items.get(i))));
        }
        return kept;
    }

    /** The learned rule that asks what this one says. */
    private static Optional<Rule> asked(Rule rule, Layout made) {
        return made.rules().stream()
                .filter(m -> !m.ask().isEmpty() && rule.ask().isEmpty())
                .filter(m -> isCovered(m, List.of(rule)))
                .findFirst();
    }

    private OldRules with(String before, String behind) {
        List<String> firstToo = new ArrayList<>(first);
        List<String> lastToo = new ArrayList<>(last);
        (before.isEmpty() ? lastToo : firstToo).add(before.isEmpty() ? behind : before);
        return new OldRules(firstToo, lastToo, answered, notes);
    }

    /** The learned layout with them. */
    String into(String learned) {
        List<String> rows = HandWritten.block(learned, ROWS);
        if ((first.isEmpty() && last.isEmpty()) || rows.size() < 2) {
            return learned;
        }
        String block = String.join("\n", rows) + "\n";
        String kept =
                rows.get(0)
                        + "\n"
                        + String.join("", first)
                        + String.join("\n", rows.subList(1, rows.size()))
                        + "\n"
                        + String.join("", last);
        return learned.replace("\n" + block, "\n" + kept);
    }

    /** Whether each row that the rule fits is one that the others fit too. */
    private static boolean isCovered(Rule rule, List<Rule> others) {
        List<Map<String, String>> rows = rows(rule);
        return !rows.isEmpty()
                && rows.stream()
                        .allMatch(row -> others.stream().anyMatch(other -> fits(other, row)));
    }

    /** The texts of each kind of row that the rule fits; none where they are too many. */
    static List<Map<String, String>> rows(Rule rule) {
        List<Map<String, String>> rows = List.of(Map.of());
        for (Map.Entry<String, List<String>> condition : rule.when().entrySet()) {
            List<Map<String, String>> longer = new ArrayList<>();
            for (Map<String, String> row : rows) {
                for (String text : condition.getValue()) {
                    Map<String, String> with = new LinkedHashMap<>(row);
                    with.put(condition.getKey(), text);
                    longer.add(with);
                }
            }
            rows = longer;
            if (rows.size() > TOLD_APART) {
                return List.of();
            }
        }
        return rows;
    }

    static boolean fits(Rule rule, Map<String, String> row) {
        return rule.when().entrySet().stream()
                .allMatch(
                        c ->
                                Optional.ofNullable(row.get(c.getKey()))
                                        .filter(c.getValue()::contains)
                                        .isPresent());
    }

    /** The rules of a list, each with the lines under it, indented as those that are learned. */
    private static List<List<String>> items(List<String> block) {
        List<List<String>> items = new ArrayList<>();
        int indent = -1;
        for (String line : block.subList(Math.min(1, block.size()), block.size())) {
            int own = line.length() - line.stripLeading().length();
            boolean starts = line.strip().startsWith("-") && (indent < 0 || own == indent);
            if (starts) {
                indent = own;
                items.add(new ArrayList<>());
            }
            boolean comment = line.isBlank() || line.strip().startsWith("#");
            if (!items.isEmpty() && !comment) {
                String bare = line.substring(Math.min(indent, own));
                items.get(items.size() - 1).add("  " + bare);
            }
        }
        return items;
    }

    private static String said(List<String> item) {
        return item.stream().map(String::strip).collect(joining(" "));
    }
}
