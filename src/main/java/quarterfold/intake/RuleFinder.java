package quarterfold.intake;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Finds the first rule whose conditions a row meets. Each text in a condition's column has a small
 * number, so that what was found for one row holds for the next with the same texts. For one
 * thread.
 */
final class RuleFinder {
    private static final int KEPT = 1 << 16;
    private static final int UNKNOWN = -2;

    private final List<Layout.Rule> rules;
    private final List<String> names;
    private final int[] columns;
    private final List<Map<String, Integer>> numbers = new ArrayList<>();
    private final int[] found;

    RuleFinder(List<Layout.Rule> rules, Header header) {
        this.rules = rules;
        Set<String> when = new LinkedHashSet<>();
        rules.forEach(rule -> when.addAll(rule.when().keySet()));
        names = List.copyOf(when);
        columns = names.stream().mapToInt(header::column).toArray();
        long combinations = 1;
        for (String name : names) {
            Map<String, Integer> texts = new HashMap<>();
            for (Layout.Rule rule : rules) {
                for (String text : rule.when().getOrDefault(name, List.of())) {
                    texts.putIfAbsent(text, texts.size() + 1);
                }
            }
            numbers.add(texts);
            combinations = Math.min(KEPT + 1L, combinations * (texts.size() + 1));
        }
        found = new int[combinations <= KEPT ? (int) combinations : 0];
        Arrays.fill(found, UNKNOWN);
    }

    /** The rule's position, or -1 where none fits. */
    int find(Row row) {
        if (found.length == 0) {
            return search(row);
        }
        int combination = 0;
        for (int i = 0; i < columns.length; i++) {
            Map<String, Integer> texts = numbers.get(i);
            combination =
                    combination * (texts.size() + 1) + texts.getOrDefault(row.text(columns[i]), 0);
        }
        int rule = found[combination];
        if (rule == UNKNOWN) {
            rule = search(row);
            found[combination] = rule;
        }
        return rule;
    }

    private int search(Row row) {
        for (int i = 0; i < rules.size(); i++) {
            Map<String, List<String>> when = rules.get(i).when();
            boolean fits = true;
            for (int c = 0; fits && c < columns.length; c++) {
                List<String> texts = when.get(names.get(c));
                fits = texts == null || texts.contains(row.text(columns[c]));
            }
            if (fits) {
                return i;
            }
        }
        return -1;
    }

    /** The columns the rules look at, for a message. */
    String columns() {
        return String.join(", ", names);
    }

    /** What the row says in them. */
    String texts(Row row) {
        return String.join(", ", Arrays.stream(columns).mapToObj(row::text).toList());
    }

    /** What a rule's row says in them; nothing where the rule does not ask. */
    String example() {
        Map<String, List<String>> when = rules.get(0).when();
        List<String> texts =
                names.stream()
                        .filter(when::containsKey)
                        .map(name -> when.getOrDefault(name, List.of()).stream().findFirst())
                        .map(text -> text.orElse(""))
                        .toList();
        return String.join(", ", texts);
    }
}
