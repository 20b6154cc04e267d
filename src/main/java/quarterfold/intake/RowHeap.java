package quarterfold.intake;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Rows that say the same of themselves.
 *
 * @param when the columns that say it, and what
 * @param marked whether the first of them is but the mark of their shape
 */
record RowHeap(Map<String, String> when, boolean marked, List<Integer> rows) {

    /** What they say; nothing where only the mark of the shape is known, and they say more. */
    Optional<KindFinder.Said> said(KindFinder kinds) {
        List<String> texts = List.copyOf(when.values());
        List<String> own = marked ? texts.subList(1, texts.size()) : texts;
        boolean more = marked && own.stream().anyMatch(t -> !t.isEmpty());
        return more && kinds.said(own).isEmpty() ? Optional.empty() : kinds.said(texts);
    }

    String about() {
        Map<String, List<String>> lists = new LinkedHashMap<>();
        when.forEach((column, text) -> lists.put(column, List.of(text)));
        return Asked.about(lists);
    }
}
