package quarterfold.treatment;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import quarterfold.law.Dated;
import quarterfold.law.TreatmentRow;

/**
 * Searches the facts, and the book's choices, for which a row of the treatment table is the first
 * that matches: each earlier row must be missed by some fact, and no facts may be stated together
 * that no entry has together.
 */
final class FirstMatch {

    /** Words of facts and choices by name. */
    record Facts(Map<String, String> words) {
        String get(String name) {
            return in(words, name);
        }
    }

    private final Map<String, Set<String>> words;
    private final List<Map<String, Set<String>>> never;

    /**
     * @param words every word each fact and choice may have
     * @param never what no entry has together: at least one fact of each must be missed
     */
    FirstMatch(Map<String, Set<String>> words, List<Map<String, Set<String>>> never) {
        this.words = words;
        this.never = never;
    }

    /** Facts and choices by name for which the row is the first on the day, if there are any. */
    Optional<Facts> search(
            List<Dated<TreatmentRow>> rows, Dated<TreatmentRow> wanted, LocalDate day) {
        Map<String, Set<String>> open = new HashMap<>();
        words.forEach((name, all) -> open.put(name, new LinkedHashSet<>(all)));
        conditions(wanted.value()).forEach((name, needed) -> in(open, name).retainAll(needed));
        List<Map<String, Set<String>>> missed = new ArrayList<>(never);
        for (Dated<TreatmentRow> row : rows.subList(0, rows.indexOf(wanted))) {
            if (row.isInForce(day)) {
                missed.add(conditions(row.value()));
            }
        }
        return miss(open, missed);
    }

    private static Map<String, Set<String>> conditions(TreatmentRow row) {
        Map<String, Set<String>> conditions = new HashMap<>();
        row.when().forEach((fact, needed) -> conditions.put(fact.column(), needed));
        if (!row.choice().isEmpty()) {
            String[] choice = row.choice().split("=", 2);
            conditions.put(choice[0], Set.of(choice[1]));
        }
        return conditions;
    }

    /** Misses the row that leaves the fewest ways first, so that a dead end shows early. */
    private static Optional<Facts> miss(
            Map<String, Set<String>> open, List<Map<String, Set<String>>> rows) {
        List<Map<String, Set<String>>> left =
                rows.stream().filter(row -> !isMissed(open, row)).toList();
        if (open.values().stream().anyMatch(Set::isEmpty)) {
            return Optional.empty();
        }
        if (left.isEmpty()) {
            Map<String, String> found = new HashMap<>();
            open.forEach((name, words) -> found.put(name, words.iterator().next()));
            return Optional.of(new Facts(found));
        }
        List<Map<String, Set<String>>> ways = ways(open, left.get(0));
        for (Map<String, Set<String>> row : left) {
            List<Map<String, Set<String>>> others = ways(open, row);
            if (others.size() < ways.size()) {
                ways = others;
            }
        }
        for (Map<String, Set<String>> narrower : ways) {
            Optional<Facts> found = miss(narrower, left);
            if (found.isPresent()) {
                return found;
            }
        }
        return Optional.empty();
    }

    private static boolean isMissed(Map<String, Set<String>> open, Map<String, Set<String>> row) {
        return row.entrySet().stream()
                .anyMatch(c -> in(open, c.getKey()).stream().noneMatch(c.getValue()::contains));
    }

    /** What is left open after each way of missing a row. */
    private static List<Map<String, Set<String>>> ways(
            Map<String, Set<String>> open, Map<String, Set<String>> row) {
        List<Map<String, Set<String>>> ways = new ArrayList<>();
        for (Map.Entry<String, Set<String>> condition : row.entrySet()) {
            Set<String> left = new LinkedHashSet<>(in(open, condition.getKey()));
            left.removeAll(condition.getValue());
            if (!left.isEmpty()) {
                Map<String, Set<String>> narrower = new HashMap<>(open);
                narrower.put(condition.getKey(), left);
                ways.add(narrower);
            }
        }
        return ways;
    }

    static <V> V in(Map<String, V> map, String name) {
        return Optional.ofNullable(map.get(name)).orElseThrow();
    }
}
