package quarterfold.intake;

import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Line;
import quarterfold.money.Amount;

/**
 * Rows of one file whose money goes against their kind, such as a refund that brings money: a file
 * that prints its signs in another way than those its layout was made for would have them.
 */
final class AgainstKind {
    static final String CODE = "money-against-kind";

    /** What a rule without conditions is about. */
    private static final String ALL = "all rows";

    /** What gives back what another kind took or brought, so that a reversal of it is rare. */
    private static final Set<Kind> BACK =
            EnumSet.of(
                    Kind.SALE_REFUND,
                    Kind.DELIVERY_REFUND,
                    Kind.PURCHASE_CREDIT,
                    Kind.EXPENSE_CREDIT,
                    Kind.FEE_REFUND);

    /** What columns beside a sale take off it. */
    private static final Set<Kind> OFF = EnumSet.of(Kind.FEE, Kind.DISCOUNT);

    /**
     * Rows of one rule, or amounts of one column beside sales; some rules have rows of the same
     * words.
     */
    static final class Heap {
        private final Kind kind;
        private final String layout;
        private final boolean document;
        private final String put;
        private long all;
        private long rows;
        private long first;
        private long money;

        /** {@code put}: what a person puts right in the layout. */
        Heap(Kind kind, String layout, boolean document, String put) {
            this.kind = kind;
            this.layout = layout;
            this.document = document;
            this.put = put;
        }

        /** Of the owner's signs, of sales and of fees, some may be reversals; most are none. */
        boolean isAsked() {
            return rows > 0 && ((document && BACK.contains(kind)) || rows * 2 > all);
        }
    }

    private final Map<String, Heap> heaps = new LinkedHashMap<>();

    /** What gives something back, among the entries that a row makes; else the first. */
    private static Kind kind(Layout.Rule rule) {
        return rule.enter().stream()
                .map(Layout.Enter::kind)
                .filter(BACK::contains)
                .findFirst()
                .orElseGet(
                        () ->
                                rule.enter().isEmpty()
                                        ? Kind.OTHER_MONEY
                                        : rule.enter().get(0).kind());
    }

    /** Whether a rule's rows are looked at: sales, what gives back, and fees alone on their row. */
    private static boolean isLookedAt(Layout layout, Layout.Rule rule) {
        Kind kind = kind(rule);
        if (kind == Kind.FEE && rule.enter().size() != 1) {
            return false;
        }
        boolean sells =
                layout.rules().stream()
                        .flatMap(r -> r.enter().stream())
                        .anyMatch(e -> e.kind() == Kind.SALE);
        return BACK.contains(kind) || kind == Kind.SALE || (kind == Kind.FEE && sells);
    }

    /** Where a rule's rows are added, if they are looked at. */
    Optional<Heap> heap(Layout layout, Layout.Rule rule) {
        return isLookedAt(layout, rule)
                ? Optional.of(
                        heaps.computeIfAbsent(
                                rule.when().isEmpty() ? ALL : Asked.about(rule.when()),
                                about ->
                                        new Heap(
                                                kind(rule),
                                                layout.name(),
                                                rule.signs(layout) == Layout.Signs.DOCUMENT,
                                                "signs there, for the rule alone if need be")))
                : Optional.empty();
    }

    /** Where what a column takes off the sale beside it is added, if the entry is such. */
    Optional<Heap> beside(Layout layout, Layout.Rule rule, Layout.Enter enter) {
        boolean off =
                OFF.contains(enter.kind())
                        && rule.enter().size() > 1
                        && rule.enter().get(0).kind() == Kind.SALE
                        && enter.amounts().containsKey(Field.GROSS);
        return off
                ? Optional.of(
                        heaps.computeIfAbsent(
                                enter.amounts().getOrDefault(Field.GROSS, ""),
                                column ->
                                        new Heap(
                                                enter.kind(),
                                                layout.name(),
                                                false,
                                                "outgoing there, which names columns printed without a minus though their money goes out")))
                : Optional.empty();
    }

    static void add(Heap heap, long row, Line line) {
        if (line.profile().kind() != heap.kind) {
            return; // beside it in the row
        }
        long money = line.signedMoney().tenThousandths();
        heap.all++;
        if (money * heap.kind.direction() < 0) {
            heap.first = heap.rows == 0 ? row : heap.first;
            heap.rows++;
            heap.money = Math.addExact(heap.money, money);
        }
    }

    /** Raises a question for each. */
    void raise(Payouts.Raise raise) {
        heaps.forEach(
                (about, heap) -> {
                    if (heap.isAsked()) {
                        raise.query(
                                CODE,
                                about,
                                "%d %s of '%s', the first in row %d, %s entered as %s, which %s, but by their sign they %s %s. If the file prints signs in another way than layout %s says, correct %s; else set this aside: they are reversals"
                                        .formatted(
                                                heap.rows,
                                                heap.rows == 1 ? "row" : "rows",
                                                about,
                                                heap.first,
                                                heap.rows == 1 ? "is" : "are",
                                                heap.kind.code(),
                                                heap.kind.direction() < 0
                                                        ? "takes money away"
                                                        : "brings money",
                                                heap.kind.direction() < 0 ? "bring" : "take",
                                                new Amount(Math.abs(heap.money)),
                                                heap.layout,
                                                heap.put));
                    }
                });
    }
}
