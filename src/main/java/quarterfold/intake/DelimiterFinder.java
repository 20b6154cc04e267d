package quarterfold.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/** Finds which character parts the cells of a text, and whether quotes stand round them. */
final class DelimiterFinder {
    private static final int LOOKED_AT = 400;
    private static final char[] DELIMITERS = {',', ';', '\t', '|'};
    private static final Character[] QUOTES = {'"', '\'', (char) 0};

    private DelimiterFinder() {}

    /**
     * The delimiters that part cells, best first: the one that gives the most rows of one width,
     * the widest of those alike. Rows of several shapes have several widths, so that it may be
     * another.
     *
     * @throws BadFile if the text has no cells that any delimiter parts
     */
    static List<Layout.Shape> find(Tables tables, String name, EncodingFinder.Found encoding)
            throws BadFile {
        List<Scored> best = new ArrayList<>();
        for (char delimiter : DELIMITERS) {
            Stream.of(QUOTES)
                    .map(quote -> shape(delimiter, quote, encoding))
                    .map(shape -> scored(tables, shape))
                    .filter(scored -> scored.score() > 0)
                    .reduce(Scored::better)
                    .ifPresent(best::add);
        }
        if (best.isEmpty()) {
            throw new BadFile(
                    name,
                    "found no rows of two cells or more; expected cells parted by a comma, semicolon, tab or bar, such as 2026-09-30,sale,120.00");
        }
        best.sort(Comparator.comparingLong(Scored::score).reversed());
        return best.stream().map(Scored::shape).toList();
    }

    /**
     * @param astray rows with a cell that begins with another quote
     */
    private record Scored(Layout.Shape shape, long score, int astray) {
        /** The same delimiter with other quotes: those that leave none astray. */
        Scored better(Scored other) {
            boolean better =
                    other.astray < astray || (other.astray == astray && other.score > score);
            return better ? other : this;
        }
    }

    private static Layout.Shape shape(char delimiter, char quote, EncodingFinder.Found encoding) {
        return new Layout.Shape(
                delimiter, quote, encoding.charset(), encoding.twice(), 1, 0, Set.of());
    }

    private static Scored scored(Tables tables, Layout.Shape shape) {
        Map<Integer, Integer> widths = new HashMap<>();
        int quoted = 0;
        int astray = 0;
        int lines = 0;
        try (Rows rows = tables.rows("", shape)) {
            for (; lines < LOOKED_AT && rows.next(); lines++) {
                if (rows.width() > 1) {
                    widths.merge(rows.width(), 1, Integer::sum);
                }
                quoted += isQuoted(rows, shape.quote(), true) ? 1 : 0;
                astray += isQuoted(rows, shape.quote(), false) ? 1 : 0;
            }
        } catch (BadFile e) {
            return new Scored(shape, 0, 0);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        long best = 0;
        for (Map.Entry<Integer, Integer> width : widths.entrySet()) {
            long rows = width.getValue();
            best = Math.max(best, rows * 1_000 + Math.min(width.getKey(), 60) * rows * 10);
        }
        // Quotes left round cells mean that they are quotes, not text.
        return new Scored(shape, quoted * 2 > lines ? best / 2 : best, astray);
    }

    /** {@code round}: whether the quote must stand behind the cell too. */
    private static boolean isQuoted(Rows rows, char taken, boolean round) {
        for (int i = 0; i < rows.width(); i++) {
            String cell = rows.cell(i);
            int last = cell.length() - 1;
            if (last > 0
                    && (!round || cell.charAt(0) == cell.charAt(last))
                    && (cell.charAt(0) == '"' || cell.charAt(0) == '\'')
                    && cell.charAt(0) != taken) {
                return true;
            }
        }
        return false;
    }
}
