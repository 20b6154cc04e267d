package quarterfold.intake;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Columns that, each added or taken away, come to nothing on every row: {@code gross - commission -
 * net = 0}.
 *
 * @param columns those with a coefficient other than 0, in the file's order
 * @param signs 1 or -1 for each
 * @param broken the rows, from 0, that do not keep it
 */
record Equation(List<Column> columns, List<Integer> signs, List<Integer> broken) {
    private static final int MOST = 13;
    private static final int LOOKED_AT = 60;

    /** The sign of a column; 0 where it is none of these. */
    int sign(Column column) {
        int at = columns.indexOf(column);
        return at < 0 ? 0 : signs.get(at);
    }

    /** What the others come to on a row, as the column should have it. */
    long expected(Column of, int row) {
        long sum = 0;
        for (int i = 0; i < columns.size(); i++) {
            if (columns.get(i) != of) {
                sum += signs.get(i) * columns.get(i).values()[row];
            }
        }
        return -sum * sign(of);
    }

    /**
     * Those that at least nine rows in ten keep, and of which no column can be left out. Rows that
     * state nothing in any of the columns do not count.
     */
    static List<Equation> find(List<Column> all, int rows) {
        List<Column> columns =
                all.stream().filter(c -> c.hasValues() && !c.isZero()).limit(MOST).toList();
        int[] sample = sample(columns, rows);
        List<Equation> found = new ArrayList<>();
        search(columns, new int[columns.size()], 0, sample, rows, found);
        found.sort(Comparator.comparingInt(e -> e.columns().size()));
        List<Equation> least = new ArrayList<>();
        for (Equation equation : found) {
            boolean more =
                    least.stream()
                            .anyMatch(
                                    l ->
                                            equation.columns().containsAll(l.columns())
                                                    && l.broken().size()
                                                            <= equation.broken().size());
            if (!more) {
                least.add(equation);
            }
        }
        return least;
    }

    /** The rows that state most. */
    private static int[] sample(List<Column> columns, int rows) {
        return IntStream.range(0, rows)
                .boxed()
                .sorted(
                        Comparator.comparingLong(
                                r -> -columns.stream().filter(c -> c.values()[r] != 0).count()))
                .limit(LOOKED_AT)
                .mapToInt(r -> r)
                .toArray();
    }

    private static void search(
            List<Column> columns,
            int[] signs,
            int at,
            int[] sample,
            int rows,
            List<Equation> found) {
        if (at == signs.length) {
            long used = IntStream.of(signs).filter(s -> s != 0).count();
            if (used >= 2 && holds(columns, signs, sample)) {
                Equation equation = of(columns, signs, rows);
                int broken = equation.broken().size();
                if (broken * 10 <= rows || (rows >= 4 && broken == 1)) {
                    found.add(equation);
                }
            }
            return;
        }
        boolean begun = IntStream.range(0, at).anyMatch(i -> signs[i] != 0);
        for (int sign = begun ? -1 : 0; sign <= 1; sign++) {
            signs[at] = sign;
            search(columns, signs, at + 1, sample, rows, found);
        }
        signs[at] = 0;
    }

    private static boolean holds(List<Column> columns, int[] signs, int[] sample) {
        int allowed = sample.length / 10 + (sample.length >= 4 ? 1 : 0);
        for (int row : sample) {
            long sum = 0;
            for (int i = 0; i < signs.length; i++) {
                sum += signs[i] == 0 ? 0 : signs[i] * columns.get(i).values()[row];
            }
            if (sum != 0 && --allowed < 0) {
                return false;
            }
        }
        return true;
    }

    private static Equation of(List<Column> columns, int[] signs, int rows) {
        List<Column> used = new ArrayList<>();
        List<Integer> usedSigns = new ArrayList<>();
        for (int i = 0; i < signs.length; i++) {
            if (signs[i] != 0) {
                used.add(columns.get(i));
                usedSigns.add(signs[i]);
            }
        }
        List<Integer> broken = new ArrayList<>();
        for (int row = 0; row < rows; row++) {
            long sum = 0;
            for (int i = 0; i < used.size(); i++) {
                sum += usedSigns.get(i) * used.get(i).values()[row];
            }
            if (sum != 0) {
                broken.add(row);
            }
        }
        return new Equation(used, usedSigns, broken);
    }
}
