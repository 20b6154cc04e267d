package quarterfold.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Finds where in a file its table stands: the row of column names, the rows below that hold a date
 * and a number, and the rows about and among them that do not.
 */
final class TableFinder {
    private static final int HEADER_SEARCH = 4;

    /**
     * A table.
     *
     * @param header the row of column names, where there is one
     * @param preamble rows above
     * @param body rows of the table
     * @param others rows below the header that are none of the table
     * @param record the text of the first cell that marks rows of the table, where rows of several
     *     kinds each have their own shape
     * @param second the names of the columns of another table below, where there is one
     * @param score how good a table it is, for choosing among sheets
     * @param dated the line above that dates all rows, where they have no dates
     */
    record Found(
            Grid grid,
            Optional<Grid.Line> header,
            List<Grid.Line> preamble,
            List<Grid.Line> body,
            List<Grid.Line> others,
            Optional<String> record,
            Optional<Grid.Line> second,
            long score,
            Optional<DateAbove> dated) {

        /** A table of rows that have their dates. */
        Found(
                Grid grid,
                Optional<Grid.Line> header,
                List<Grid.Line> preamble,
                List<Grid.Line> body,
                List<Grid.Line> others,
                Optional<String> record,
                Optional<Grid.Line> second,
                long score) {
            this(grid, header, preamble, body, others, record, second, score, Optional.empty());
        }

        /** The same with other rows above. */
        Found with(List<Grid.Line> above) {
            return new Found(grid, header, above, body, others, record, second, score, dated);
        }

        /** The same without some of its rows. */
        Found of(List<Grid.Line> rows) {
            return new Found(grid, header, preamble, rows, others, record, second, score, dated);
        }

        /** The same with other rows round it. */
        Found round(List<Grid.Line> above, List<Grid.Line> round) {
            return new Found(grid, header, above, body, round, record, second, score, dated);
        }
    }

    private final Vocabulary words;
    private final NumberText numbers;

    TableFinder(Vocabulary words, NumberText numbers) {
        this.words = words;
        this.numbers = numbers;
    }

    /** Nothing where no row has a date and a number. */
    Optional<Found> find(Grid grid) {
        Optional<String> record = recordType(grid);
        if (record.isPresent()) {
            return Optional.of(ofRecords(grid, record.get()));
        }
        return ofTable(grid);
    }

    /** The table of rows that are dated in one column. */
    Optional<Found> ofTable(Grid grid) {
        Optional<Integer> dateColumn = dateColumn(grid.lines());
        return dateColumn.map(column -> ofRows(grid, column));
    }

    private Found ofRecords(Grid grid, String record) {
        List<Grid.Line> body = new ArrayList<>();
        List<Grid.Line> others = new ArrayList<>();
        for (Grid.Line line : grid.lines()) {
            (line.cell(0).equals(record) ? body : others).add(line);
        }
        return new Found(
                grid,
                Optional.empty(),
                List.of(),
                body,
                others,
                Optional.of(record),
                Optional.empty(),
                body.size());
    }

    /** The letter of the record type most rows have, where all rows have one and shapes differ. */
    private Optional<String> recordType(Grid grid) {
        Map<String, Integer> rows = new LinkedHashMap<>();
        Map<String, Integer> widths = new HashMap<>();
        for (Grid.Line line : grid.lines()) {
            String first = line.cell(0);
            if (!first.matches("\\p{Lu}{1,3}\\d?")) {
                return Optional.empty();
            }
            rows.merge(first, 1, Integer::sum);
            widths.merge(first, line.width(), Math::max);
        }
        if (rows.size() < 2
                || rows.size() > 8
                || widths.values().stream().distinct().count() < 2
                || rows.values().stream().noneMatch(n -> n == 1)) {
            return Optional.empty();
        }
        return rows.entrySet().stream()
                .reduce((a, b) -> b.getValue() > a.getValue() ? b : a)
                .map(Map.Entry::getKey);
    }

    boolean hasDateAndNumber(Grid.Line line) {
        boolean date = false;
        boolean number = false;
        for (String cell : line.cells()) {
            if (DateFinder.isLike(cell)) {
                date = true;
            } else {
                number |= numbers.isNumber(cell);
            }
        }
        return date && number && line.filled() >= 3;
    }

    private Optional<Integer> dateColumn(List<Grid.Line> lines) {
        Map<Integer, Integer> counts = new HashMap<>();
        for (Grid.Line line : lines) {
            if (hasDateAndNumber(line)) {
                for (int i = 0; i < line.width(); i++) {
                    if (DateFinder.isLike(line.cell(i))) {
                        counts.merge(i, 1, Integer::sum);
                    }
                }
            }
        }
        return counts.entrySet().stream()
                .reduce((a, b) -> b.getValue() > a.getValue() ? b : a)
                .map(Map.Entry::getKey);
    }

    private Found ofRows(Grid grid, int dateColumn) {
        List<Grid.Line> lines = grid.lines();
        int first = 0;
        while (!isBody(lines.get(first), dateColumn)) {
            first++;
        }
        int header = header(lines, first);
        List<Grid.Line> body = new ArrayList<>();
        List<Grid.Line> others = new ArrayList<>();
        Optional<Grid.Line> second = Optional.empty();
        Optional<Grid.Line> names = header < 0 ? Optional.empty() : Optional.of(lines.get(header));
        for (int i = header + 1; i < lines.size(); i++) {
            Grid.Line line = lines.get(i);
            if (second.isEmpty()
                    && !body.isEmpty()
                    && !isBody(line, dateColumn)
                    && isOtherHeader(line, names, lines, i)) {
                second = Optional.of(line);
            }
            boolean of = second.isEmpty() && (header < 0 ? i >= first : true);
            (of && isBody(line, dateColumn) ? body : others).add(line);
        }
        List<Grid.Line> preamble = new ArrayList<>(lines.subList(0, header < 0 ? first : header));
        if (header < 0) {
            others.removeAll(preamble);
            others.addAll(0, preamble);
        }
        long hits = names.map(this::hits).orElse(0);
        return new Found(
                grid,
                names,
                preamble,
                body,
                others,
                Optional.empty(),
                second,
                hits * 1_000L + body.size());
    }

    private boolean isBody(Grid.Line line, int dateColumn) {
        String date = line.cell(dateColumn);
        return DateFinder.isLike(date) && !words.isLabel(date, "total") && hasDateAndNumber(line);
    }

    private int header(List<Grid.Line> lines, int first) {
        int used = lines.get(first).filled();
        int best = -1;
        int most = 0;
        for (int i = first - 1; i >= Math.max(0, first - HEADER_SEARCH); i--) {
            Grid.Line line = lines.get(i);
            int hits = hits(line);
            if (isTexts(line) && line.filled() * 2 >= used && line.filled() >= 2 && hits > most) {
                best = i;
                most = hits;
            }
        }
        if (best < 0 && first > 0) {
            Grid.Line above = lines.get(first - 1);
            return isTexts(above) && above.filled() * 4 >= used * 3 ? first - 1 : -1;
        }
        return best;
    }

    boolean isTexts(Grid.Line line) {
        return line.cells().stream()
                .noneMatch(c -> DateFinder.isLike(c) || (numbers.isNumber(c) && c.length() > 2));
    }

    int hits(Grid.Line line) {
        return (int) line.cells().stream().filter(c -> !words.roles(c).isEmpty()).count();
    }

    /** Whether a row is one of column names, by its words alone. */
    boolean areNames(Grid.Line line) {
        return line.filled() >= 2 && isTexts(line) && hits(line) * 2 >= line.filled();
    }

    /** Column names that are not those above, with a row of numbers below them. */
    boolean isOtherHeader(
            Grid.Line line, Optional<Grid.Line> header, List<Grid.Line> lines, int at) {
        if (!areNames(line)
                || header.filter(h -> h.cells().equals(line.cells())).isPresent()
                || at + 1 >= lines.size()) {
            return false;
        }
        Grid.Line below = lines.get(at + 1);
        return below.filled() >= 2 && below.cells().stream().anyMatch(numbers::isNumber);
    }
}
