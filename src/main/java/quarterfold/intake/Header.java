package quarterfold.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A header row: the column each name stands in, from 0. */
final class Header {
    private final List<String> names;
    private final Map<String, Integer> columns = new HashMap<>();

    Header(List<String> names) {
        this.names = List.copyOf(names);
        for (int i = names.size() - 1; i >= 0; i--) {
            columns.put(names.get(i), i);
        }
    }

    static List<String> texts(Rows rows) {
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < rows.width(); i++) {
            texts.add(rows.cell(i).strip());
        }
        return texts;
    }

    int width() {
        return names.size();
    }

    String name(int column) {
        return names.get(column);
    }

    boolean has(String name) {
        return columns.containsKey(name);
    }

    /** The column of the name, or -1. */
    int column(String name) {
        return columns.getOrDefault(name, -1);
    }

    /** Names among {@code named} that stand in more than one column, with a word on where. */
    Map<String, String> repeated(Iterable<String> named) {
        Map<String, String> repeated = new LinkedHashMap<>();
        for (String name : named) {
            int first = column(name);
            int last = names.lastIndexOf(name);
            if (first != last) {
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
