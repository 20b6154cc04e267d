package quarterfold.intake;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import quarterfold.money.Amount;

/** The rows of one file about which its layout still asks, by what they say. */
final class Asked {
    static final String CODE = "kind-unknown";

    private static final class Heap {
        private final String question;
        private long rows;
        private long money;

        Heap(String question) {
            this.question = question;
        }
    }

    private final Map<String, Heap> heaps = new LinkedHashMap<>();

    /** What a question about rows of a rule is about: {@code Type: Adjustment; Part: Other}. */
    static String about(Map<String, List<String>> when) {
        return when.entrySet().stream()
                .map(e -> e.getKey() + ": " + String.join(" or ", e.getValue()))
                .collect(Collectors.joining("; "));
    }

    void add(Layout.Rule rule, long money) {
        Heap heap = heaps.computeIfAbsent(about(rule.when()), about -> new Heap(rule.ask()));
        heap.rows++;
        heap.money = Math.addExact(heap.money, money);
    }

    /** Raises a question for each. */
    void raise(Payouts.Raise raise) {
        heaps.forEach(
                (about, heap) ->
                        raise.query(
                                CODE,
                                about,
                                "%s (%s: %d %s, %s, entered as the layout says.) If that is right, leave it with --set-aside. Else give the kind in the layout, for files to come; and enter, in a plain sheet, rows of the right kind for this file, and rows of the kind entered that take these back"
                                        .formatted(
                                                heap.question,
                                                about,
                                                heap.rows,
                                                heap.rows == 1 ? "row" : "rows",
                                                new Amount(heap.money))));
    }
}
