package quarterfold.intake;

import java.io.IOException;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The row of column names of a report that has a few rows more or fewer above it than its layout
 * says.
 */
final class MovedNames {
    /** How far it may have moved. */
    private static final int ROWS = 8;

    private MovedNames() {}

    /**
     * The layout with the one row that names all its columns; nothing where no row near does, or
     * several do, or a row above it is a row of the table.
     */
    static Optional<Layout> find(Tables tables, String table, Layout layout)
            throws BadFile, IOException {
        int row = layout.shape().headerRow();
        Set<String> wanted = layout.columns();
        layout.above().forEach(line -> wanted.removeAll(line.names()));
        List<List<String>> above = new ArrayList<>();
        Optional<Header> found = Optional.empty();
        int at = 0;
        try (Rows rows = tables.rows(table, layout.shape())) {
            while (rows.next() && rows.number() <= row + ROWS) {
                Header header = new Header(Header.texts(rows));
                boolean names = rows.number() != row && wanted.stream().allMatch(header::has);
                if (names && found.isPresent()) {
                    return Optional.empty();
                }
                if (names) {
                    found = Optional.of(header);
                    at = (int) rows.number();
                } else if (found.isEmpty()) {
                    above.add(header.names());
                }
            }
        }
        boolean moved = found.isPresent() && at >= row - ROWS && wanted.size() > 1;
        return moved && !hasDate(layout, found.get(), above)
                ? Optional.of(layout.at(at))
                : Optional.empty();
    }

    private static boolean hasDate(Layout layout, Header header, List<List<String>> above) {
        int date = header.column(layout.fields().getOrDefault(Field.DATE, ""));
        DateReader dates = new DateReader(layout.dates(), ZoneOffset.UTC, true);
        return above.stream()
                .anyMatch(
                        cells ->
                                date >= 0
                                        && date < cells.size()
                                        && dates.read(cells.get(date)).isPresent());
    }
}
