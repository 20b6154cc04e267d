package quarterfold.intake;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * A header row: the column each name stands in, from 0. {@code #3} is the third column whatever its
 * name, and {@code Amount#2} the second of the columns named so.
 */
final class Header {
    /** Columns from here on stand in no row: a line above says them of all. */
    static final int ABOVE = 2 * Rows.COLUMN_LIMIT;

    private final List<String> names;
    private final List<String> above;
    private final Map<String, Integer> columns = new HashMap<>();
    private final Map<String, Integer> alike = new HashMap<>();

    Header(List<String> names) {
        this(names, List.of());
    }

    /** {@code above}: the names of what lines above say of all rows. */
    Header(List<String> names, List<String> above) {
        this.names = List.copyOf(names);
        this.above = List.copyOf(above);
        for (int i = 0; i < above.size(); i++) {
            columns.put(above.get(i), ABOVE + i);
        }
        for (int i = names.size() - 1; i >= 0; i--) {
            columns.put(names.get(i), i);
        }
        for (int i = 0; i < names.size(); i++) {
            alike.merge(plain(names.get(i)), i, (one, other) -> -1);
        }
    }

    /** A name as a person reads it: without regard to capitals and the kind of spaces. */
    private static String plain(String name) {
        return name.replaceAll("[\\s\\u00a0\\u2007\\u202f\\ufeff]+", " ")
                .strip()
                .toLowerCase(Locale.ROOT);
    }

    static List<String> texts(Rows rows) {
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < rows.width(); i++) {
            texts.add(rows.cell(i).strip());
        }
        return trimmed(texts);
    }

    /** Without blanks at the end. */
    static List<String> trimmed(List<String> texts) {
        while (!texts.isEmpty() && texts.get(texts.size() - 1).isEmpty()) {
            texts.remove(texts.size() - 1);
        }
        return texts;
    }

    /** Of a table below, whose rows have what lines above say too. */
    Header below(List<String> others) {
        return new Header(others, above);
    }

    /** The names of what lines above say of all rows; the columns are {@link #ABOVE} and on. */
    List<String> above() {
        return above;
    }

    List<String> names() {
        return names;
    }

    int width() {
        return names.size();
    }

    /** The number of a column beyond the names. */
    String name(int column) {
        if (column >= ABOVE) {
            return above.get(column - ABOVE);
        }
        return column < names.size() ? names.get(column) : "#" + (column + 1);
    }

    /** How a layout names a column: its name, {@code Amount#2}, or {@code #3} without a name. */
    String reference(int column) {
        String name = name(column);
        if (column >= names.size() || name.isEmpty()) {
            return name.isEmpty() ? "#" + (column + 1) : name;
        }
        return Collections.frequency(names, name) == 1
                ? name
                : name + "#" + Collections.frequency(names.subList(0, column + 1), name);
    }

    /** The names where no row says them: {@code #1} and on. */
    static List<String> numbered(int columns) {
        return IntStream.rangeClosed(1, columns).mapToObj(i -> "#" + i).toList();
    }

    boolean has(String name) {
        return column(name) >= 0;
    }

    /** The column of the name, else the one of a name that reads the same; or -1. */
    int column(String name) {
        Integer exact = columns.get(name);
        if (exact != null) {
            return exact;
        }
        Integer same = name.isBlank() ? null : alike.get(plain(name));
        if (same != null) {
            return same;
        }
        int mark = name.lastIndexOf('#');
        if (mark < 0 || !name.substring(mark + 1).matches("[1-9]\\d{0,3}")) {
            return -1;
        }
        int number = Integer.parseInt(name.substring(mark + 1));
        return mark == 0
                ? (number <= names.size() ? number - 1 : -1)
                : occurrence(name.substring(0, mark), number);
    }

    /** The column of the name, or of the number {@code #7} beyond the names too; or -1. */
    int place(String name) {
        return isNumber(name) ? Integer.parseInt(name.substring(1)) - 1 : column(name);
    }

    /** Whether it is the number of a column, such as {@code #7}. */
    static boolean isNumber(String name) {
        return name.matches("#[1-9]\\d{0,3}");
    }

    private int occurrence(String name, int number) {
        int left = number;
        for (int i = 0; i < names.size(); i++) {
            if (names.get(i).equals(name) && --left == 0) {
                return i;
            }
        }
        return -1;
    }

    /** The columns of these names. */
    Set<Integer> columns(Iterable<String> named) {
        Set<Integer> found = new HashSet<>();
        named.forEach(name -> found.add(column(name)));
        return found;
    }

    /** Names among {@code named} that stand in more than one column, with a word on where. */
    Map<String, String> repeated(Iterable<String> named) {
        Map<String, String> repeated = new LinkedHashMap<>();
        for (String name : named) {
            int first = columns.getOrDefault(name, -1);
            int last = names.lastIndexOf(name);
            if (last >= 0 && above.contains(name)) {
                repeated.put(name, "column " + (last + 1) + " and in a line above");
            } else if (last >= 0 && first != last) {
                repeated.put(name, "columns " + (first + 1) + " and " + (last + 1));
            }
        }
        return repeated;
    }

    @Override
    public String toString() {
        return String.join(", ", names);
    }
}
