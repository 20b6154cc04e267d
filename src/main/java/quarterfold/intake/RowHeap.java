package quarterfold.intake;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Rows that say the same of themselves: the columns that say it and what, and which rows. */
record RowHeap(Map<String, String> when, List<Integer> rows) {
    List<String> texts() {
        return List.copyOf(when.values());
    }

    String about() {
        Map<String, List<String>> lists = new LinkedHashMap<>();
        when.forEach((column, text) -> lists.put(column, List.of(text)));
        return Asked.about(lists);
    }
}
