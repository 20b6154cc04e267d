package quarterfold.intake;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import quarterfold.ledger.Kind;

/**
 * Finds the shapes of rows in a file that has several: rows marked by the text of their first cell,
 * or tables that stand one below another.
 */
final class ShapeFinder {
    private static final int MOST = 12;
    private static final String MARK = "\\p{L}[\\p{L}\\p{M} _./-]{0,24}\\d{0,2}";

    /**
     * @param parts the shapes, the first that of most rows, or the table that stands first
     * @param above rows above the first table
     * @param loose rows known by a text that have no date and amount
     */
    record Shapes(List<ShapePart> parts, List<Grid.Line> above, List<Grid.Line> loose) {}

    private final TableFinder tables;
    private final Vocabulary words;
    private final NumberText numbers;
    private final KindFinder kinds;

    ShapeFinder(TableFinder tables, Vocabulary words, NumberText numbers, KindFinder kinds) {
        this.tables = tables;
        this.words = words;
        this.numbers = numbers;
        this.kinds = kinds;
    }

    /** Nothing where all rows are of one shape. */
    Optional<Shapes> find(TableFinder.Found whole) {
        return records(whole).or(() -> stacked(whole.grid()));
    }

    /** Rows with one text in their first cell. */
    private record Group(
            Set<String> letters, List<Grid.Line> names, List<Grid.Line> body, int width) {
        boolean isShape() {
            return !body.isEmpty();
        }
    }

    private Optional<Shapes> records(TableFinder.Found whole) {
        Map<String, List<Grid.Line>> marked = new LinkedHashMap<>();
        for (Grid.Line line : whole.grid().lines()) {
            if (!line.cell(0).matches(MARK)) {
                return Optional.empty();
            }
            marked.computeIfAbsent(line.cell(0), m -> new ArrayList<>()).add(line);
            if (marked.size() > MOST) {
                return Optional.empty();
            }
        }
        List<Group> groups = new ArrayList<>();
        List<Grid.Line> loose = new ArrayList<>();
        for (Map.Entry<String, List<Grid.Line>> each : marked.entrySet()) {
            Group group = group(each.getKey(), each.getValue(), whole.grid().lines());
            if (group.isShape()) {
                groups.add(group);
            } else {
                loose.addAll(each.getValue());
            }
        }
        boolean codes = whole.header().isPresent();
        boolean differ = false;
        for (Group a : groups) {
            differ |= groups.stream().anyMatch(b -> contradict(a, b, codes));
        }
        return groups.size() > 1 && (differ || whole.record().isPresent())
                ? Optional.of(new Shapes(parts(whole.grid(), merged(groups)), List.of(), loose))
                : Optional.empty();
    }

    /** What follows names, if there are any, must all have a date in one column, and an amount. */
    private Group group(String letter, List<Grid.Line> lines, List<Grid.Line> all) {
        boolean named = lines.size() > 1 && isNames(lines.get(0));
        List<Grid.Line> body = named ? lines.subList(1, lines.size()) : lines;
        int width = body.stream().mapToInt(Grid.Line::width).max().orElse(0);
        boolean dated = false;
        for (int column = 1; column < width; column++) {
            dated |= ColumnLook.of(body, column, numbers) == ColumnLook.DATES && all(body, column);
        }
        boolean shape = dated && body.stream().allMatch(tables::hasDateAndNumber);
        long number = lines.get(0).number();
        boolean atEnd = number == all.get(0).number() || number == all.get(all.size() - 1).number();
        if (shape && lines.size() == 1 && atEnd) {
            shape = kinds.said(lines.get(0).cells()).isPresent(); // no first or last record
        }
        return new Group(
                Set.of(letter),
                named ? List.of(lines.get(0)) : List.of(),
                shape ? List.copyOf(body) : List.of(),
                width);
    }

    private static boolean all(List<Grid.Line> body, int column) {
        return body.stream().noneMatch(line -> line.cell(column).isEmpty());
    }

    private boolean isNames(Grid.Line line) {
        long known = line.cells().stream().skip(1).filter(c -> !words.roles(c).isEmpty()).count();
        return tables.isTexts(line) && known * 2 >= line.filled() - 1 && known >= 2;
    }

    private boolean contradict(Group a, Group b, boolean codes) {
        for (int column = 1; column < Math.max(a.width(), b.width()); column++) {
            ColumnLook look = ColumnLook.of(a.body(), column, numbers);
            if (look.contradicts(ColumnLook.of(b.body(), column, numbers), codes)) {
                return true;
            }
        }
        return false;
    }

    /** Whether no column has words for kinds in one group and other texts in the other. */
    private boolean sayAlike(Group a, Group b) {
        for (int column = 1; column < a.width(); column++) {
            if (saysKinds(a, column) != saysKinds(b, column)) {
                return false;
            }
        }
        return true;
    }

    private boolean saysKinds(Group group, int column) {
        return group.body().stream()
                .map(line -> line.cell(column))
                .filter(c -> !c.isEmpty())
                .allMatch(c -> !words.meanings(c).isEmpty());
    }

    /** Groups that may have the same columns, as one. */
    private List<Group> merged(List<Group> groups) {
        List<Group> merged = new ArrayList<>();
        for (Group group : groups) {
            Optional<Group> same =
                    merged.stream()
                            .filter(m -> m.width() == group.width())
                            .filter(m -> m.names().isEmpty() && group.names().isEmpty())
                            .filter(m -> !contradict(m, group, false) && sayAlike(m, group))
                            .findFirst();
            if (same.isEmpty()) {
                merged.add(group);
                continue;
            }
            Group with = same.get();
            Set<String> letters = new LinkedHashSet<>(with.letters());
            letters.addAll(group.letters());
            List<Grid.Line> body = new ArrayList<>(with.body());
            body.addAll(group.body());
            body.sort(Comparator.comparingLong(Grid.Line::number));
            merged.set(merged.indexOf(with), new Group(letters, List.of(), body, with.width()));
        }
        merged.sort(Comparator.comparingInt((Group g) -> g.body().size()).reversed());
        return merged;
    }

    private static List<ShapePart> parts(Grid grid, List<Group> groups) {
        List<ShapePart> parts = new ArrayList<>();
        for (Group group : groups) {
            List<String> letters = List.copyOf(group.letters());
            parts.add(
                    new ShapePart(
                            new TableFinder.Found(
                                    grid,
                                    Optional.empty(),
                                    List.of(),
                                    group.body(),
                                    List.of(),
                                    Optional.of(letters.get(0)),
                                    Optional.empty(),
                                    0),
                            letters,
                            group.names().stream().findFirst(),
                            parts.isEmpty() ? "" : String.join("-", letters),
                            "records " + String.join(", ", letters),
                            Optional.empty()));
        }
        return parts;
    }

    private Optional<Shapes> stacked(Grid grid) {
        List<Integer> starts = starts(grid.lines());
        if (starts.isEmpty()) {
            return Optional.empty();
        }
        starts.add(grid.lines().size());
        List<ShapePart> parts = new ArrayList<>();
        List<Grid.Line> above = List.of();
        int from = 0;
        for (int to : starts) {
            List<Grid.Line> lines = grid.lines().subList(from, to);
            Optional<TableFinder.Found> found =
                    tables.ofTable(new Grid(grid.table(), grid.shape(), lines, grid.whole()));
            boolean sound =
                    found.flatMap(TableFinder.Found::header).isPresent()
                            && (from == 0 || found.get().preamble().isEmpty());
            if (!sound) {
                return Optional.empty();
            }
            above = from == 0 ? found.get().preamble() : above;
            parts.add(table(found.get().with(above), parts));
            from = to;
        }
        Set<List<String>> headers = new HashSet<>();
        parts.forEach(p -> headers.add(p.table().header().orElseThrow().cells()));
        return headers.size() == parts.size()
                ? Optional.of(new Shapes(parts, above, List.of()))
                : Optional.empty();
    }

    private ShapePart table(TableFinder.Found found, List<ShapePart> before) {
        int number = before.size() + 1;
        return new ShapePart(
                found,
                List.of(),
                Optional.empty(),
                number == 1 ? "" : Integer.toString(number),
                "table " + number,
                before.isEmpty() ? Optional.empty() : title(before.get(number - 2)));
    }

    /** What the last row of words below the table before says that the rows of the next are. */
    private Optional<Kind> title(ShapePart before) {
        List<Grid.Line> others = before.table().others();
        if (others.isEmpty()) {
            return Optional.empty();
        }
        Grid.Line last = others.get(others.size() - 1);
        List<Grid.Line> body = before.table().body();
        return last.filled() == 1 && last.number() > body.get(body.size() - 1).number()
                ? kinds.said(List.of(last.first())).flatMap(KindFinder::kind)
                : Optional.empty();
    }

    /** Where tables begin, but for the first: names that are others than those above. */
    private List<Integer> starts(List<Grid.Line> lines) {
        List<Integer> starts = new ArrayList<>();
        boolean rows = false;
        Optional<Grid.Line> names = Optional.empty();
        for (int i = 0; i + 1 < lines.size(); i++) {
            Grid.Line line = lines.get(i);
            if (tables.hasDateAndNumber(line)) {
                rows = true;
            } else if (tables.hasDateAndNumber(lines.get(i + 1)) && tables.areNames(line)) {
                boolean others = names.filter(n -> n.cells().equals(line.cells())).isEmpty();
                if (rows && others) {
                    starts.add(i);
                }
                names = Optional.of(line);
            }
        }
        return starts;
    }
}
