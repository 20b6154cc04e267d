package quarterfold.intake;

import java.io.IOException;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Finds which character parts the cells of a text, and whether quotes stand round them. */
final class DelimiterFinder {
    private static final int LOOKED_AT = 400;
    private static final char[] DELIMITERS = {',', ';', '\t', '|'};
    private static final char[] QUOTES = {'"', '\'', 0};

    private DelimiterFinder() {}

    /**
     * The delimiters that part cells, best first: the one that gives the most rows of one width,
     * the widest of those alike. Rows of several shapes have several widths, so that it may be
     * another.
     *
     * @throws BadFile if the text has no cells that any delimiter parts
     */
    static List<Layout.Shape> find(Tables tables, String name, EncodingFinder.Found encoding)
            throws BadFile, IOException {
        Map<Layout.Shape, Long> scores = new LinkedHashMap<>();
        for (char delimiter : DELIMITERS) {
            Optional<Layout.Shape> best = Optional.empty();
            long most = 0;
            for (char quote : QUOTES) {
                Layout.Shape shape = shape(delimiter, quote, encoding);
                long score = score(tables, shape);
                if (score > most) {
                    most = score;
                    best = Optional.of(shape);
                }
            }
            long of = most;
            best.ifPresent(shape -> scores.put(shape, of));
        }
        if (scores.isEmpty()) {
            throw new BadFile(
                    name,
                    "found no rows of two cells or more; expected cells parted by a comma, semicolon, tab or bar, such as 2026-09-30,sale,120.00");
        }
        return scores.entrySet().stream()
                .sorted(Map.Entry.<Layout.Shape, Long>comparingByValue().reversed())
                .map(Map.Entry::getKey)
                .toList();
    }

    private static Layout.Shape shape(char delimiter, char quote, EncodingFinder.Found encoding) {
        return new Layout.Shape(
                delimiter, quote, encoding.charset(), encoding.twice(), 1, 0, Set.of());
    }

    private static long score(Tables tables, Layout.Shape shape) throws IOException {
        Map<Integer, Integer> widths = new HashMap<>();
        int quoted = 0;
        int lines = 0;
        try (Rows rows = tables.rows("", shape)) {
            for (; lines < LOOKED_AT && rows.next(); lines++) {
                if (rows.width() > 1) {
                    widths.merge(rows.width(), 1, Integer::sum);
                }
                quoted += isQuoted(rows, shape.quote()) ? 1 : 0;
            }
        } catch (BadFile e) {
            return 0;
        }
        long best = 0;
        for (Map.Entry<Integer, Integer> width : widths.entrySet()) {
            long rows = width.getValue();
            best = Math.max(best, rows * 1_000 + Math.min(width.getKey(), 60) * rows * 10);
        }
        // Quotes left round cells mean that they are quotes, not text.
        return quoted * 2 > lines ? best / 2 : best;
    }

    private static boolean isQuoted(Rows rows, char taken) {
        for (int i = 0; i < rows.width(); i++) {
            String cell = rows.cell(i);
            int last = cell.length() - 1;
            if (last > 0
                    && cell.charAt(0) == cell.charAt(last)
                    && (cell.charAt(0) == '"' || cell.charAt(0) == '\'')
                    && cell.charAt(0) != taken) {
                return true;
            }
        }
        return false;
    }
}
