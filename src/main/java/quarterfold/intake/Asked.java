package quarterfold.intake;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import quarterfold.ledger.Kind;
import quarterfold.ledger.RaisedQuery;
import quarterfold.money.Amount;

/** The rows of one file about which its layout still asks, by what they say. */
final class Asked {
    /** A question of a layout that is not about the kind of entries. */
    static final String CODE = "layout-asks";

    private static final String KIND =
            "Say what they are with --state and their kind, such as --state kind=fee: it holds for these rows, and in the layout for those to come. If what they are entered as is right, leave it with --set-aside";
    private static final String OTHER =
            "If that is right, leave it with --set-aside. Else state of each entry what it is, such as --entry 4 --state kind=fee, and correct the layout, for files to come";

    /** What stands in a layout above the question of a rule that asks. */
    static final String OPEN =
            "# Open: give the kind in place of other-money, and take this question away.";

    private static final class Heap {
        private final String question;
        private long rows;
        private final Optional<Kind> kind;
        private long money;

        Heap(Layout.Rule rule) {
            question = rule.ask();
            kind = Asked.kind(rule);
        }
    }

    private final Map<String, Heap> heaps = new LinkedHashMap<>();
    private final AgainstKind against = new AgainstKind();

    /** What a question about rows of a rule is about: {@code Type: Adjustment; Part: Other}. */
    static String about(Map<String, List<String>> when) {
        return when.entrySet().stream()
                .map(e -> e.getKey() + ": " + String.join(" or ", e.getValue()))
                .collect(Collectors.joining("; "));
    }

    void add(Layout.Rule rule, long money) {
        Heap heap = heaps.computeIfAbsent(about(rule.when()), about -> new Heap(rule));
        heap.rows++;
        heap.money = Math.addExact(heap.money, money);
    }

    /**
     * The kind of the entries that a rule asks about: that of its one entry; of several those of
     * which it is not known what they are. None where it asks something else.
     */
    static Optional<Kind> kind(Layout.Rule rule) {
        return rule.enter().stream()
                .map(Layout.Enter::kind)
                .filter(kind -> rule.enter().size() == 1 || kind == Kind.OTHER_MONEY)
                .findFirst();
    }

    /** The rows whose money goes against their kind. */
    AgainstKind against() {
        return against;
    }

    /** Raises a question for each. */
    void raise(Payouts.Raise raise) {
        against.raise(raise);
        heaps.forEach(
                (about, heap) ->
                        raise.query(
                                heap.kind.isPresent() ? RaisedQuery.KIND_UNKNOWN : CODE,
                                about,
                                "%s (%s: %d %s, %s, entered as %s.) %s"
                                        .formatted(
                                                heap.question,
                                                about,
                                                heap.rows,
                                                heap.rows == 1 ? "row" : "rows",
                                                new Amount(heap.money),
                                                heap.kind.map(Kind::code).orElse("the layout says"),
                                                heap.kind.isPresent() ? KIND : OTHER)));
    }
}
