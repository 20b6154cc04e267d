package quarterfold.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import quarterfold.intake.Layout.OtherRow;

/**
 * Rows that look like those of a table, with a date and amounts, and only sum up others: their words
 * say so and every amount of them ties, or a person says that they are {@value #ANSWER}.
 *
 * @param rows how they are known
 * @param positions where they stand among the rows of the table, from 0
 */
record TotalRows(List<OtherRow> rows, Set<Integer> positions) {
    /** What answers the question after a kind of rows that are none. */
    static final String ANSWER = "no-row";

    static final TotalRows NONE = new TotalRows(List.of(), Set.of());

    boolean isEmpty() {
        return positions.isEmpty();
    }

    /** The rows of the table without them. */
    List<Grid.Line> others(List<Grid.Line> body) {
        List<Grid.Line> others = new ArrayList<>();
        for (int row = 0; row < body.size(); row++) {
            if (!positions.contains(row)) {
                others.add(body.get(row));
            }
        }
        return others;
    }

    /** {@code columns}: with the values of their cells. */
    static TotalRows find(
            List<Column> columns, List<Grid.Line> body, Vocabulary words, Findings findings) {
        List<Column> said =
                columns.stream().filter(c -> RuleStudy.SAYING.contains(c.role())).toList();
        Map<Map<String, String>, List<Integer>> like = new LinkedHashMap<>();
        boolean marked = said.stream().anyMatch(c -> c.role() == Role.RECORD);
        for (int row = 0; row < body.size() && !said.isEmpty() && !marked; row++) {
            Map<String, String> when = new LinkedHashMap<>();
            for (Column column : said) {
                when.put(column.reference(), column.texts().get(row));
            }
            like.computeIfAbsent(when, w -> new ArrayList<>()).add(row);
        }
        Map<RowHeap, Boolean> heaps = new LinkedHashMap<>();
        Set<Integer> positions = new TreeSet<>();
        like.forEach(
                (when, rows) -> {
                    RowHeap heap = new RowHeap(when, false, rows);
                    boolean answered =
                            findings.answer("kind/" + heap.about())
                                    .filter(ANSWER::equals)
                                    .isPresent();
                    if (answered || isTotal(when, words)) {
                        heaps.put(heap, answered);
                        positions.addAll(rows);
                    }
                });
        List<OtherRow> found = new ArrayList<>();
        heaps.forEach(
                (heap, answered) -> {
                    List<String> sums = sums(heap.rows(), columns, positions);
                    boolean ties = ties(heap.rows(), columns, sums);
                    if (ties) {
                        findings.prove(
                                "%s ('%s') %s the sum of the rows above: it ties"
                                        .formatted(
                                                places(heap.rows(), body),
                                                heap.about(),
                                                heap.rows().size() == 1 ? "states" : "each state"));
                    } else if (answered) {
                        findings.note(
                                "%s ('%s'): set aside, for you say that it is no row"
                                        .formatted(places(heap.rows(), body), heap.about()));
                    } else {
                        heap.rows().forEach(positions::remove);
                        return;
                    }
                    found.add(row(heap, sums));
                });
        return found.isEmpty() || positions.size() == body.size() ? NONE : new TotalRows(List.copyOf(found), Set.copyOf(positions));
    }

    private static boolean isTotal(Map<String, String> when, Vocabulary words) {
        List<String> texts = when.values().stream().filter(t -> !t.isEmpty()).toList();
        return !texts.isEmpty()
                && texts.stream()
                        .allMatch(t -> words.isLabel(t, "total") && words.meanings(t).isEmpty());
    }

    /** The columns whose cell in each of the rows is the sum of those since the one before it. */
    private static List<String> sums(
            List<Integer> rows, List<Column> columns, Set<Integer> positions) {
        List<String> sums = new ArrayList<>();
        for (Column column : columns) {
            boolean ties = column.hasValues() && column.role().isNumber() && !column.isZero();
            int since = 0;
            for (int row : rows) {
                long sum = 0;
                for (int i = since; ties && i < row; i++) {
                    sum = Math.addExact(sum, positions.contains(i) ? 0 : column.values()[i]);
                }
                ties = ties && sum == column.values()[row];
                since = row + 1;
            }
            if (ties) {
                sums.add(column.reference());
            }
        }
        return sums;
    }

    /** Whether every amount of the rows is in one of the columns that tie. */
    private static boolean ties(List<Integer> rows, List<Column> columns, List<String> sums) {
        return !sums.isEmpty()
                && columns.stream()
                        .filter(c -> c.hasValues() && !sums.contains(c.reference()))
                        .allMatch(c -> rows.stream().allMatch(row -> c.values()[row] == 0));
    }

    private static OtherRow row(RowHeap heap, List<String> sums) {
        Map<String, List<String>> when = new LinkedHashMap<>();
        heap.when().forEach((column, text) -> when.put(column, List.of(text)));
        return new OtherRow(
                "",
                "",
                List.of(),
                when,
                sums,
                false,
                false,
                sums.isEmpty() ? "no row of the table" : "total");
    }

    private static String places(List<Integer> rows, List<Grid.Line> body) {
        return (rows.size() == 1 ? "row " : "rows ")
                + rows.stream()
                        .limit(5)
                        .map(row -> Long.toString(body.get(row).number()))
                        .collect(Collectors.joining(", "))
                + (rows.size() > 5 ? " …" : "");
    }
}
