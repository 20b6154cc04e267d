package quarterfold.intake;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What the lines of a printed report are, top to bottom: how its text becomes rows with columns.
 *
 * @param knownBy lines that such a report has, each of them somewhere
 * @param facts lines that hold for the rows below them, until stated again
 * @param page the line that numbers a page, with the names {@link #PAGE} and maybe {@link #PAGES};
 *     none or one
 * @param rows lines that are a row
 * @param continues lines that go on with the row printed right above them, each name a column
 * @param totals lines that state what rows sum to
 * @param other lines that say nothing that is kept
 */
record Print(
        List<LinePattern> knownBy,
        List<FactLine> facts,
        List<LinePattern> page,
        List<LinePattern> rows,
        List<LinePattern> continues,
        List<TotalLine> totals,
        List<LinePattern> other) {
    static final String PAGE = "page";
    static final String PAGES = "pages";

    /**
     * @param set columns and the texts the line gives them by being there
     * @param optional whether a report may be without it
     */
    record FactLine(LinePattern line, Map<String, String> set, boolean optional) {}

    /** The rows a total is of. */
    enum Of {
        FILE,
        PAGE,
        /** Those since the last line of the same kind. */
        ABOVE
    }

    /**
     * @param sums columns of which it states the sum
     * @param same columns that the rows it is of share with it
     * @param optional whether a report may be without it
     */
    record TotalLine(
            LinePattern line, List<String> sums, Of of, List<String> same, boolean optional) {}

    /** Whether a line is of a kind of its own, so that it goes on with no row. */
    boolean isKnown(String line) {
        return Stream.of(
                        knownBy.stream(),
                        facts.stream().map(FactLine::line),
                        page.stream(),
                        rows.stream(),
                        totals.stream().map(TotalLine::line),
                        other.stream())
                .flatMap(patterns -> patterns)
                .anyMatch(pattern -> pattern.match(line).isPresent());
    }

    /** The columns that the lines give, of rows first. */
    List<String> columns() {
        Set<String> columns = new LinkedHashSet<>();
        rows.forEach(row -> columns.addAll(row.names()));
        for (FactLine fact : facts) {
            columns.addAll(fact.line().names());
            columns.addAll(fact.set().keySet());
        }
        return new ArrayList<>(columns);
    }
}
