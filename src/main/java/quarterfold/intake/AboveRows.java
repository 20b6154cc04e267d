package quarterfold.intake;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * The rows of a table with what lines above its column names say of all of them, as further cells
 * of each row: from {@link Header#ABOVE} on, in the order of {@link #above}.
 */
final class AboveRows implements Rows {

    /** What a line above states under a name, and where. */
    private record Stated(String name, String text, String place) {}

    private final Rows rows;
    private final List<LinePattern> lines;
    private final int headerRow;
    private final List<Stated> stated = new ArrayList<>();

    private AboveRows(Rows rows, List<LinePattern> lines, int headerRow) {
        this.rows = rows;
        this.lines = lines;
        this.headerRow = headerRow;
    }

    /** The rows of one table from its first, read by the form; the caller closes them. */
    static Rows of(Tables tables, String table, Form form) throws BadFile, IOException {
        Rows rows = tables.rows(table, form.shape());
        return form.above().isEmpty()
                ? rows
                : new AboveRows(rows, form.above(), form.shape().headerRow());
    }

    /** A row's texts as one line, with single spaces. */
    static String line(List<String> cells) {
        return cells.stream()
                .map(cell -> cell.strip().replaceAll("[\\s\\u00a0\\u202f]+", " "))
                .filter(cell -> !cell.isEmpty())
                .collect(Collectors.joining(" "));
    }

    @Override
    public boolean next() throws BadFile {
        boolean more = rows.next();
        if (more && rows.number() < headerRow) {
            take(line(IntStream.range(0, rows.width()).mapToObj(rows::cell).toList()));
        }
        return more;
    }

    private void take(String line) throws BadFile {
        for (LinePattern pattern : lines) {
            Optional<Map<String, String>> found = pattern.match(line);
            if (found.isPresent()) {
                for (Map.Entry<String, String> each : found.get().entrySet()) {
                    state(new Stated(each.getKey(), each.getValue(), rows.place()), pattern);
                }
                return;
            }
        }
    }

    private void state(Stated found, LinePattern pattern) throws BadFile {
        Optional<Stated> before =
                stated.stream().filter(s -> s.name().equals(found.name())).findFirst();
        if (before.isEmpty()) {
            stated.add(found);
        } else if (!before.get().text().equals(found.text())) {
            throw new BadFile(
                    found.place(),
                    "found '%s', and '%s' in a line above it, where the layout reads '%s'; expected one such line above the column names, such as a pattern with more words of the line that is meant"
                            .formatted(found.text(), before.get().text(), pattern));
        }
    }

    @Override
    public List<String> above() {
        return stated.stream().map(Stated::name).toList();
    }

    private static boolean isAbove(int column) {
        return column >= Header.ABOVE;
    }

    private Stated stated(int column) {
        return stated.get(column - Header.ABOVE);
    }

    @Override
    public long number() {
        return rows.number();
    }

    @Override
    public int width() {
        return rows.width();
    }

    @Override
    public String cell(int column) {
        return isAbove(column) ? stated(column).text() : rows.cell(column);
    }

    @Override
    public boolean isNumber(int column) {
        return !isAbove(column) && rows.isNumber(column);
    }

    @Override
    public boolean isError(int column) {
        return !isAbove(column) && rows.isError(column);
    }

    @Override
    public SheetLook look() {
        return rows.look();
    }

    @Override
    public boolean isEven() {
        return rows.isEven();
    }

    @Override
    public String place(int column) {
        return isAbove(column) ? stated(column).place() : rows.place(column);
    }

    @Override
    public String place() {
        return rows.place();
    }

    @Override
    public void close() throws IOException {
        rows.close();
    }
}
