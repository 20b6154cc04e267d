package quarterfold.treatment;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
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
        return open.values().stream().anyMatch(Set::isEmpty)
                ? Optional.empty()
                : miss(open, missed);
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

    /** Misses every row; first those that leave the fewest ways to miss them. */
    private static Optional<Facts> miss(
            Map<String, Set<String>> open, List<Map<String, Set<String>>> rows) {
        List<Map<String, Set<String>>> left = new ArrayList<>();
        Map<String, Set<String>> next = Map.of();
        int fewest = Integer.MAX_VALUE;
        for (Map<String, Set<String>> row : rows) {
            if (isMissed(open, row)) {
                continue;
            }
            left.add(row);
            int ways = ways(open, row).size();
            if (ways < fewest) {
                fewest = ways;
                next = row;
            }
        }
        if (left.isEmpty()) {
            Map<String, String> found = new HashMap<>();
            open.forEach((name, words) -> found.put(name, words.iterator().next()));
            return Optional.of(new Facts(found));
        }
        left.remove(next);
        for (Map.Entry<String, Set<String>> way : ways(open, next).entrySet()) {
            Map<String, Set<String>> narrower = new HashMap<>(open);
            narrower.put(way.getKey(), way.getValue());
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

    /** The words of one fact each that are left if the row is missed by that fact. */
    private static Map<String, Set<String>> ways(
            Map<String, Set<String>> open, Map<String, Set<String>> row) {
        Map<String, Set<String>> ways = new TreeMap<>();
        row.forEach(
                (name, needed) -> {
                    Set<String> left = new LinkedHashSet<>(in(open, name));
                    left.removeAll(needed);
                    if (!left.isEmpty()) {
                        ways.put(name, left);
                    }
                });
        return ways;
    }

    static <V> V in(Map<String, V> map, String name) {
        return Optional.ofNullable(map.get(name)).orElseThrow();
    }
}
