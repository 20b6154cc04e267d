package quarterfold.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.stream.Collectors;

/**
 * Finds a table whose rows have no dates, below lines that state one: the rows under column names,
 * each with a text and an amount.
 */
final class UndatedFinder {
    private static final String COLUMN = "Date above";

    private final TableFinder tables;
    private final Vocabulary words;
    private final NumberText numbers;

    UndatedFinder(TableFinder tables, Vocabulary words, NumberText numbers) {
        this.tables = tables;
        this.words = words;
        this.numbers = numbers;
    }

    /** A date in a line above: where it stands, and the words before it. */
    private record Stated(Grid.Line line, String text, MatchResult at) {
        String date() {
            return at.group();
        }

        String before() {
            return text.substring(0, at.start()).strip();
        }
    }

    /** The table, its rows as yet without dates; nothing where there is none. */
    Optional<TableFinder.Found> find(Grid grid) {
        List<Grid.Line> lines = grid.lines();
        for (int i = 1; i + 1 < lines.size(); i++) {
            if (tables.areNames(lines.get(i))
                    && hasNumber(lines.get(i + 1))
                    && !dates(lines.subList(0, i)).isEmpty()) {
                return below(grid, i);
            }
        }
        return Optional.empty();
    }

    private Optional<TableFinder.Found> below(Grid grid, int header) {
        List<Grid.Line> lines = grid.lines();
        Grid.Line names = lines.get(header);
        int end = header + 1;
        while (end < lines.size()
                && !tables.isOtherHeader(lines.get(end), Optional.of(names), lines, end)) {
            end++;
        }
        List<Grid.Line> candidates =
                lines.subList(header + 1, end).stream().filter(this::mayBeRow).toList();
        Optional<Integer> filled = filled(names, candidates);
        List<Grid.Line> body =
                candidates.stream()
                        .filter(l -> filled.filter(c -> isText(l.cell(c))).isPresent())
                        .toList();
        if (body.isEmpty()) {
            return Optional.empty();
        }
        List<Grid.Line> others = new ArrayList<>(lines.subList(header + 1, lines.size()));
        others.removeAll(body);
        return Optional.of(
                new TableFinder.Found(
                        grid,
                        Optional.of(names),
                        List.copyOf(lines.subList(0, header)),
                        body,
                        others,
                        Optional.empty(),
                        end < lines.size() ? Optional.of(lines.get(end)) : Optional.empty(),
                        tables.hits(names) * 1_000L + body.size()));
    }

    private boolean hasNumber(Grid.Line line) {
        return line.filled() >= 2 && line.cells().stream().anyMatch(numbers::isNumber);
    }

    private boolean mayBeRow(Grid.Line line) {
        String first = line.first();
        return hasNumber(line)
                && !words.isLabel(first, "total")
                && !words.isLabel(first, "count")
                && line.cells().stream().noneMatch(DateFinder::isLike);
    }

    private boolean isText(String cell) {
        return !cell.isEmpty() && !numbers.isNumber(cell);
    }

    /** The column that has a text in most rows, the first of several, if in two of three. */
    private Optional<Integer> filled(Grid.Line names, List<Grid.Line> rows) {
        long most = 0;
        Optional<Integer> best = Optional.empty();
        for (int i = 0; i < names.width(); i++) {
            int column = i;
            long texts = rows.stream().filter(line -> isText(line.cell(column))).count();
            if (!names.cell(column).isEmpty() && texts > most && texts * 3 >= rows.size() * 2L) {
                most = texts;
                best = Optional.of(column);
            }
        }
        return best;
    }

    private List<Stated> dates(List<Grid.Line> above) {
        List<Stated> dates = new ArrayList<>();
        for (Grid.Line line : above) {
            String text = AboveRows.line(line.cells());
            for (MatchResult at : DateFinder.within(text)) {
                Stated stated = new Stated(line, text, at);
                boolean digits = stated.date().matches("\\d{8}");
                if (text.indexOf('{') < 0
                        && text.indexOf('}') < 0
                        && (!digits || isDate(stated.before()))) {
                    dates.add(stated);
                }
            }
        }
        return dates;
    }

    private boolean isDate(String label) {
        return words.roles(label).contains(Role.DATE);
    }

    /**
     * The table with the date of a line above in every row, as a last column; which of several
     * dates, and whether one that no word calls the date, a person says.
     */
    TableFinder.Found dated(TableFinder.Found table, Findings findings) {
        List<Stated> dates = dates(table.preamble());
        List<String> distinct = dates.stream().map(Stated::date).distinct().toList();
        Stated chosen = dates.get(dates.size() - 1);
        if (distinct.size() == 1 && isDate(dates.get(0).before())) {
            chosen = dates.get(0);
            findings.note(
                    "no row has a date: '%s' in row %d is the day of all of them"
                            .formatted(chosen.date(), chosen.line().number()));
        } else {
            Optional<String> answer =
                    findings.ask(
                            new Question(
                                    "date-above",
                                    "no row has a date, and above them stand %s; which of these is the day of all rows?"
                                            .formatted(
                                                    dates.stream()
                                                            .map(UndatedFinder::shown)
                                                            .collect(Collectors.joining(", "))),
                                    distinct,
                                    true));
            for (Stated date : dates) {
                if (answer.filter(date.date()::equals).isPresent()) {
                    chosen = date;
                    break;
                }
            }
        }
        tellWithoutText(table, findings);
        return with(table, chosen, distinct);
    }

    /** Only below all rows may one without a text be their total. */
    private void tellWithoutText(TableFinder.Found table, Findings findings) {
        Grid.Line names = table.header().orElseThrow();
        long last = table.body().get(table.body().size() - 1).number();
        String column = names.cell(filled(names, table.body()).orElseThrow());
        table.others().stream()
                .filter(line -> line.number() < last && mayBeRow(line))
                .forEach(
                        line ->
                                findings.unsound(
                                        "row %d ('%s') has a number, but no text in '%s' as the rows beside it have: it would be lost"
                                                .formatted(line.number(), line.first(), column)));
    }

    private static String shown(Stated stated) {
        return "'%s' (row %d%s)"
                .formatted(
                        stated.date(),
                        stated.line().number(),
                        stated.before().isEmpty() ? "" : ": " + stated.before());
    }

    private TableFinder.Found with(TableFinder.Found table, Stated chosen, List<String> distinct) {
        Grid.Line names = table.header().orElseThrow();
        int width =
                Math.max(
                        names.width(),
                        table.body().stream().mapToInt(Grid.Line::width).max().orElse(0));
        String name = COLUMN;
        while (names.cells().contains(name)) {
            name += " the rows";
        }
        String column = name;
        int filled = filled(names, table.body()).orElseThrow();
        List<String> others = new ArrayList<>(distinct);
        others.remove(chosen.date());
        return new TableFinder.Found(
                table.grid(),
                Optional.of(wider(names, width, column)),
                table.preamble(),
                table.body().stream().map(l -> wider(l, width, chosen.date())).toList(),
                table.others(),
                table.record(),
                table.second(),
                table.score(),
                Optional.of(
                        new DateAbove(
                                LinePattern.of(pattern(chosen, column)),
                                RoleFinder.reference(names.cells(), filled),
                                others)));
    }

    private static Grid.Line wider(Grid.Line line, int width, String last) {
        List<String> cells = new ArrayList<>(line.cells());
        while (cells.size() < width) {
            cells.add("");
        }
        cells.add(last);
        return new Grid.Line(line.number(), List.copyOf(cells), line.numbers());
    }

    /** The line's words; what has digits may be otherwise in another file. */
    private static String pattern(Stated stated, String column) {
        String after = stated.text().substring(stated.at().end());
        String before = stated.text().substring(0, stated.at().start());
        return (loose(before)
                        + "{"
                        + column
                        + ": "
                        + expression(stated.date())
                        + "}"
                        + loose(after))
                .strip();
    }

    /** A text of the line as a pattern has it. */
    static String loose(String text) {
        return text.replaceAll("[^ ]*\\d[^ ]*", "{}").replaceAll("(?:\\{\\} )+\\{\\}", "{}");
    }

    private static String expression(String date) {
        return date.replaceAll("\\p{L}+", "L")
                .replaceAll("\\d{4}", "Y")
                .replaceAll("\\d{1,2}", "D")
                .replace(".", "[.]")
                .replace("L", "\\p{L}+")
                .replace("Y", "[0-9]{4}")
                .replace("D", "[0-9]{1,2}");
    }
}
