package quarterfold.intake;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import quarterfold.intake.Layout.Signs;
import quarterfold.ledger.Coded;
import quarterfold.ledger.Kind;
import quarterfold.money.Amount;

/** Asks what rows are whose words do not tell, or tell what their money does not bear out. */
final class KindAsking {
    private final MoneyPlan plan;
    private final List<String> kinds;
    private final Findings findings;

    KindAsking(MoneyPlan plan, List<String> kinds, Findings findings) {
        this.plan = plan;
        this.kinds = kinds;
        this.findings = findings;
    }

    /** The kind a person said that the rows are of. */
    Optional<Kind> answered(RowHeap heap) {
        return findings.answer("kind/" + heap.about()).flatMap(a -> Coded.find(Kind.class, a));
    }

    /** {@code doubt}: why it is asked though words are known; empty where none are. */
    Optional<Kind> ask(RowHeap heap, String doubt) {
        long sum = 0;
        for (int row : heap.rows()) {
            sum += plan.money(row);
        }
        return findings.ask(
                        new Question(
                                "kind/" + heap.about(),
                                "what is '%s' (%,d %s, %s)?"
                                                .formatted(
                                                        heap.about(),
                                                        heap.rows().size(),
                                                        heap.rows().size() == 1 ? "row" : "rows",
                                                        new Amount(sum))
                                        + doubt,
                                answers(heap),
                                false))
                .flatMap(a -> Coded.find(Kind.class, a));
    }

    /** Rows that a mark makes rows of a shape are no totals among them. */
    private List<String> answers(RowHeap heap) {
        return heap.marked()
                ? kinds
                : Stream.concat(kinds.stream(), Stream.of(TotalRows.ANSWER)).toList();
    }

    /** Why rows are asked about whose words are of a kind, and whose money is not. */
    static String against(Kind kind) {
        return " By its words it is %s, but its money %s."
                .formatted(kind.code(), kind.direction() < 0 ? "comes in" : "goes out");
    }

    /**
     * Whether rows have money, and all of it goes the other way than that of their kind. What is
     * kept back may be released, and other money goes either way.
     */
    boolean isAgainst(RowHeap heap, Kind kind, Signs signs) {
        boolean either = kind == Kind.RESERVE || kind == Kind.TRANSFER || kind == Kind.OTHER_MONEY;
        int direction = kind.direction() * signs.owners(kind.direction());
        boolean some = heap.rows().stream().anyMatch(row -> plan.money(row) != 0);
        return !either
                && direction != 0
                && some
                && heap.rows().stream().noneMatch(row -> plan.money(row) * direction > 0);
    }
}
