package quarterfold.law;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * What the codes of a country's tables mean, in words a person reads: {@code words.csv}. They are
 * words about the law and no part of it, so a close does not freeze them.
 *
 * <p>A row gives a column, a value it may hold, and words for it. The value {@code *} is the clause
 * that any value of the column completes at <code>{}</code>; several values joined by a bar have
 * those words where they all stand together.
 */
public final class LawWords {

    private static final String CLAUSE = "*";
    private static final String GAP = "{}";

    private final Map<String, Map<String, String>> byColumn = new TreeMap<>();

    private LawWords(TableFile file) {
        for (Table.Row row : Table.read(file).rows()) {
            String column = row.needed("column");
            String value = row.needed("value");
            Map<String, String> words =
                    byColumn.computeIfAbsent(column, c -> new LinkedHashMap<>());
            if (words.put(value, row.needed("words")) != null) {
                throw row.fault("[value]: '%s' of %s has a row already".formatted(value, column));
            }
            if (value.equals(CLAUSE) && !row.cell("words").contains(GAP)) {
                throw row.fault(
                        "[words]: found '%s'; expected a clause with {}, such as: the goods go to {}"
                                .formatted(row.cell("words")));
            }
        }
    }

    /** Reads the shipped words of a country, such as {@code GB}. */
    public static LawWords of(String country) {
        return of(Law.shipped(country, "words.csv"));
    }

    static LawWords of(TableFile file) {
        return new LawWords(file);
    }

    /** The words of one value, if the table has any. */
    public Optional<String> find(String column, String value) {
        return Optional.ofNullable(byColumn.getOrDefault(column, Map.of()).get(value));
    }

    /** The words of one value, or the value itself. */
    public String say(String column, String value) {
        return find(column, value).orElse(value);
    }

    /**
     * A condition as a clause: that the column has one of these values, such as {@code the goods go
     * to Great Britain or Northern Ireland}. A column without words gives its name and the values.
     */
    public String clause(String column, List<String> values) {
        String frame =
                find(column, CLAUSE).orElse("the " + column.replace('_', ' ') + " is " + GAP);
        return frame.replace(GAP, either(said(column, values)));
    }

    /** Words that stand for several values at once, each with the words of those. */
    public Map<String, List<String>> together(String column) {
        Map<String, List<String>> together = new LinkedHashMap<>();
        groups(column)
                .forEach(
                        (words, values) ->
                                together.put(
                                        words, values.stream().map(v -> say(column, v)).toList()));
        return together;
    }

    private Map<String, Set<String>> groups(String column) {
        Map<String, Set<String>> groups = new LinkedHashMap<>();
        byColumn.getOrDefault(column, Map.of())
                .forEach(
                        (value, words) -> {
                            if (value.contains("|")) {
                                groups.put(
                                        words,
                                        new LinkedHashSet<>(Arrays.asList(value.split("\\|", -1))));
                            }
                        });
        return groups;
    }

    private List<String> said(String column, List<String> values) {
        Set<String> left = new LinkedHashSet<>(values);
        Set<String> said = new LinkedHashSet<>();
        groups(column)
                .forEach(
                        (words, together) -> {
                            if (left.containsAll(together)) {
                                left.removeAll(together);
                                said.add(words);
                            }
                        });
        left.forEach(value -> said.add(say(column, value)));
        return List.copyOf(said);
    }

    private static String either(List<String> words) {
        int last = words.size() - 1;
        return last < 1
                ? String.join("", words)
                : String.join(", ", words.subList(0, last)) + " or " + words.get(last);
    }
}
