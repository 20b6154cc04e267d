package quarterfold.intake;

import java.util.List;
import java.util.Optional;
import quarterfold.money.Amount;

/**
 * Whether the amounts of rows with several go the ways that the words of the rows and the names of
 * the columns say.
 */
record WideSigns(MoneyPlan plan, Findings findings) {

    /**
     * Whether refunds are printed as sales are, without a minus, by a person's answer. What a sale
     * brings else comes in and what it costs goes out, or names stand over the wrong cells.
     */
    boolean areTurned(RowHeap heap, Optional<KindFinder.Said> said) {
        String event = said.map(KindFinder.Said::event).orElse("");
        if (event.equals("sale")) {
            Directions.check(plan, heap.rows(), 1, findings);
        }
        if (!event.equals("refund")) {
            return false;
        }
        Optional<MoneyPlan.Part> price = IdentityChoice.price(plan.parts());
        long sum = price.map(p -> sum(p, heap.rows())).orElse(0L);
        if (sum <= 0 || LayoutParts.tax(plan).isPresent()) {
            Directions.check(plan, heap.rows(), -1, findings);
            return false;
        }
        Optional<String> answer =
                findings.ask(
                        new Question(
                                "signs/" + heap.about(),
                                "rows of '%3$s' give money back, and yet '%1$s' comes to %2$s on them; are all their amounts printed without a minus?"
                                        .formatted(
                                                price.orElseThrow().column().reference(),
                                                new Amount(sum),
                                                heap.about()),
                                List.of("yes", "no"),
                                true));
        if (answer.filter("no"::equals).isPresent()) {
            Directions.check(plan, heap.rows(), -1, findings);
        }
        return answer.filter("yes"::equals).isPresent();
    }

    private static long sum(MoneyPlan.Part part, List<Integer> rows) {
        long sum = 0;
        for (int row : rows) {
            sum += part.sign() * part.column().values()[row];
        }
        return sum;
    }
}
