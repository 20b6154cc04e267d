package quarterfold.intake;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.ledger.Kind;

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
        List<String> own = own();
        boolean more = marked && own.stream().anyMatch(t -> !t.isEmpty());
        return more && kinds.said(own).isEmpty() ? Optional.empty() : kinds.said(texts);
    }

    private List<String> own() {
        List<String> texts = List.copyOf(when.values());
        return marked ? texts.subList(1, texts.size()) : texts;
    }

    /**
     * Why what they seem to say is asked: they have words too of which nothing is known; empty where
     * they have none. A fee is one by any other words, but for those that may make it something
     * else, such as {@code VAT on fees}.
     */
    String doubt(KindFinder kinds) {
        Optional<KindFinder.Said> said = said(kinds);
        boolean fee = said.flatMap(KindFinder::kind).filter(k -> k == Kind.FEE).isPresent();
        List<String> unknown = fee ? kinds.turning(own()) : kinds.unknown(own());
        return said.isEmpty() || said.get().isNote() || unknown.isEmpty()
                ? ""
                : " Some of its words are known, but not '%s'."
                        .formatted(String.join("', '", unknown));
    }

    String about() {
        Map<String, List<String>> lists = new LinkedHashMap<>();
        when.forEach((column, text) -> lists.put(column, List.of(text)));
        return Asked.about(lists);
    }
}
