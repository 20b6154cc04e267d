package quarterfold.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Finds what stands in a table more than once: a sale once for each of its states, or a whole row.
 */
final class RepeatStudy {
    private static final int STATES = 8;
    private static final int TOLD = 10;

    private final List<Column> columns;
    private final List<Grid.Line> rows;
    private final KindFinder kinds;
    private final Vocabulary words;
    private final Findings findings;

    RepeatStudy(
            List<Column> columns,
            List<Grid.Line> rows,
            KindFinder kinds,
            Vocabulary words,
            Findings findings) {
        this.columns = columns;
        this.rows = rows;
        this.kinds = kinds;
        this.words = words;
        this.findings = findings;
    }

    /**
     * The rows of states that do not count, as conditions, where a person said which state does.
     */
    Optional<Map<String, List<String>>> study() {
        tellDoubles();
        Optional<Map<String, List<String>>> voided = voided();
        if (voided.isPresent()) {
            return voided;
        }
        boolean identified =
                columns.stream().anyMatch(c -> c.role() == Role.ORDER || c.role() == Role.DOCUMENT);
        if (!identified) {
            return Optional.empty();
        }
        for (Column column : columns) {
            if (maybeState(column)) {
                Optional<Map<String, List<String>>> states = states(column);
                if (states.isPresent()) {
                    return states.get().isEmpty() ? Optional.empty() : states;
                }
            }
        }
        return Optional.empty();
    }

    /**
     * Rows whose state says that nothing came of them, or that the money went back, where a person
     * said that they do not count.
     */
    private Optional<Map<String, List<String>>> voided() {
        for (Column column : columns) {
            List<String> out = new ArrayList<>();
            if (column.role() == Role.STATUS) {
                out.addAll(notCounted(column, "void", ""));
            }
            if (column.role() == Role.STATUS && !haveRefunds()) {
                out.addAll(
                        notCounted(
                                column,
                                "refunded",
                                " no row is a refund; answer yes if refunds come in a report of their own"));
            }
            if (!out.isEmpty()) {
                return Optional.of(Map.of(column.reference(), List.copyOf(out)));
            }
        }
        return Optional.empty();
    }

    /** The texts of a meaning, where only some rows have one and they do not count. */
    private List<String> notCounted(Column column, String meaning, String hint) {
        List<String> texts =
                column.distinct().keySet().stream().filter(t -> words.isLabel(t, meaning)).toList();
        if (texts.isEmpty() || texts.size() == column.distinct().size()) {
            return List.of();
        }
        return findings.ask(
                        new Question(
                                meaning + "/" + column.reference(),
                                "do rows count whose '%s' is %s?%s"
                                        .formatted(
                                                column.reference(),
                                                String.join(" or ", texts),
                                                hint),
                                List.of("yes", "no"),
                                true))
                .filter("no"::equals)
                .map(no -> texts)
                .orElse(List.of());
    }

    /** Whether rows of their own say what was refunded. */
    private boolean haveRefunds() {
        return columns.stream()
                .filter(c -> c.role() == Role.TYPE)
                .flatMap(c -> c.distinct().keySet().stream())
                .anyMatch(
                        t ->
                                kinds.said(List.of(t))
                                        .filter(s -> s.event().equals("refund"))
                                        .isPresent());
    }

    private static boolean maybeState(Column column) {
        int distinct = column.distinct().size();
        boolean text =
                column.role() == Role.STATUS
                        || column.role() == Role.TYPE
                        || column.role() == Role.NONE
                        || column.role() == Role.IGNORED;
        return text && distinct >= 2 && distinct <= STATES && !column.hasValues();
    }

    /** Nothing where no row repeats another but for this column. */
    private Optional<Map<String, List<String>>> states(Column state) {
        List<Column> others =
                columns.stream()
                        .filter(c -> c != state && c.role() != Role.DATE && c.role() != Role.PAID)
                        .filter(c -> !c.stated().stream().allMatch(DateFinder::isLike))
                        .filter(c -> !isCounter(c))
                        .toList();
        Map<List<String>, List<Integer>> same = new HashMap<>();
        for (int row = 0; row < rows.size(); row++) {
            int at = row;
            List<String> rest = others.stream().map(c -> c.texts().get(at)).toList();
            same.computeIfAbsent(rest, r -> new ArrayList<>()).add(row);
        }
        List<List<Integer>> repeated =
                same.values().stream().filter(g -> repeats(state, g)).toList();
        if (repeated.isEmpty()) {
            return Optional.empty();
        }
        Set<String> texts = new LinkedHashSet<>(state.distinct().keySet());
        Optional<String> counts =
                findings.ask(
                        new Question(
                                "state/" + state.reference(),
                                "%,d sales stand there once for each '%s', such as rows %s; the rows of which '%s' count?"
                                        .formatted(
                                                repeated.size(),
                                                state.reference(),
                                                repeated.get(0).stream()
                                                        .map(
                                                                r ->
                                                                        Long.toString(
                                                                                rows.get(r)
                                                                                        .number()))
                                                        .collect(Collectors.joining(", ")),
                                                state.reference()),
                                List.copyOf(texts),
                                true));
        if (counts.isEmpty()) {
            return Optional.of(Map.of());
        }
        texts.remove(counts.get());
        return Optional.of(Map.of(state.reference(), List.copyOf(texts)));
    }

    /** A number of the line, which is another on each row. */
    private boolean isCounter(Column column) {
        return column.role() == Role.IGNORED && column.distinct().size() == rows.size();
    }

    private boolean repeats(Column state, List<Integer> group) {
        Set<String> texts = new HashSet<>();
        Set<Optional<KindFinder.Said>> said = new HashSet<>();
        for (int row : group) {
            texts.add(state.texts().get(row));
            said.add(kinds.said(List.of(state.texts().get(row))));
        }
        return texts.size() > 1 && (state.role() != Role.TYPE || said.size() == 1);
    }

    private void tellDoubles() {
        Map<List<String>, Integer> seen = new HashMap<>();
        List<Long> doubles = new ArrayList<>();
        for (Grid.Line row : rows) {
            if (seen.merge(row.cells(), 1, Integer::sum) > 1) {
                doubles.add(row.number());
            }
        }
        if (!doubles.isEmpty()) {
            findings.note(
                    "%,d rows are the same as a row above, cell by cell, such as row %s; each is entered"
                            .formatted(
                                    doubles.size(),
                                    doubles.stream()
                                            .limit(TOLD)
                                            .map(n -> Long.toString(n))
                                            .collect(Collectors.joining(", "))));
        }
    }
}
