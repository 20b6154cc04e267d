package quarterfold.intake;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import quarterfold.intake.Layout.Signs;
import quarterfold.ledger.Kind;
import quarterfold.money.Amount;

/**
 * Finds what the + and - of rows mean: from the ways that their kinds say money goes, beside the
 * signs they are printed with.
 */
final class SignStudy {
    /** What may go either way. */
    private static final Set<Kind> EITHER =
            EnumSet.of(Kind.RESERVE, Kind.TRANSFER, Kind.OTHER_MONEY, Kind.BANK_LINE);

    /** Rows that say the same of themselves, and what they are. */
    record Heap(Kind kind, List<Integer> rows) {}

    /** Heaps that go one way, and how many of their rows are printed with a sign. */
    private record Way(List<Heap> heaps, long plus, long minus) {}

    private final MoneyPlan plan;
    private final List<Heap> heaps;
    private final Findings findings;
    private boolean apart;

    SignStudy(MoneyPlan plan, List<Heap> heaps, Findings findings) {
        this.plan = plan;
        this.heaps = heaps;
        this.findings = findings;
    }

    /** What most rows are printed with; {@code apart} then says whether some differ. */
    Signs study() {
        Way out = way(h -> h.kind().direction() < 0);
        Way back = way(SignStudy::isCredit);
        Way in = way(h -> h.kind().direction() > 0 && !isCredit(h));
        if (plan.shape() == MoneyPlan.Shape.PAIR) {
            if (out.plus() > out.minus()) {
                findings.unsound(
                        "most rows that should take money away have it in the credit column; expected the owner's view, such as fees under debit");
            }
            return Signs.OWNER;
        }
        boolean credits = back.minus() > back.plus();
        if (credits && out.plus() > out.minus() && in.plus() == 0) {
            return Signs.TURNED;
        }
        if ((credits && out.plus() > out.minus()) || isMixed(out)) {
            return ask(out, back);
        }
        boolean printed =
                out.minus() == 0
                        && (plan.shape() == MoneyPlan.Shape.DOCUMENT
                                || plan.shape() == MoneyPlan.Shape.PRODUCT);
        return checked(printed || out.plus() > out.minus() ? Signs.DOCUMENT : Signs.OWNER);
    }

    /** The signs of a heap's own, where they are not those of the most. */
    Optional<Signs> own(Heap heap) {
        if (heap.kind().direction() == 0) {
            return Optional.of(Signs.DOCUMENT);
        }
        if (!apart || EITHER.contains(heap.kind())) {
            return Optional.empty();
        }
        boolean minus = sign(heap) < 0;
        if (heap.kind().direction() > 0) {
            return minus && isCredit(heap) ? Optional.of(Signs.TURNED) : Optional.empty();
        }
        return Optional.of(minus ? Signs.OWNER : Signs.DOCUMENT);
    }

    private static boolean isCredit(Heap heap) {
        return heap.kind().direction() > 0 && heap.kind().side() == Kind.Side.PURCHASES;
    }

    private Way way(Predicate<Heap> goes) {
        List<Heap> going =
                heaps.stream().filter(h -> !EITHER.contains(h.kind())).filter(goes).toList();
        return new Way(going, count(going, 1), count(going, -1));
    }

    private long count(List<Heap> of, int sign) {
        return of.stream()
                .flatMap(h -> h.rows().stream())
                .filter(row -> Long.signum(plan.money(row)) == sign)
                .count();
    }

    private int sign(Heap heap) {
        return Long.signum(count(List.of(heap), 1) - count(List.of(heap), -1));
    }

    /** Whether some heaps of a way have a minus and others none, or neither sign is rare. */
    private boolean isMixed(Way way) {
        boolean heapsDiffer =
                way.heaps().stream().anyMatch(h -> sign(h) > 0)
                        && way.heaps().stream().anyMatch(h -> sign(h) < 0);
        return heapsDiffer
                || (way.plus() > 0
                        && way.minus() * 10 >= way.plus()
                        && way.plus() * 10 >= way.minus());
    }

    private Signs ask(Way out, Way back) {
        String said =
                "of the rows that should take money away %,d have a minus and %,d have none"
                        .formatted(out.minus(), out.plus());
        if (back.minus() > 0) {
            said +=
                    ", and of those that should bring it back %,d have a minus"
                            .formatted(back.minus());
        }
        Optional<String> answer =
                findings.ask(
                        new Question(
                                "signs",
                                said
                                        + "; are amounts printed with the owner's + and - (owner), all as on a document (document), or does each go as its kind says, with or without a minus (kinds)?",
                                List.of("owner", "document", "kinds"),
                                true));
        apart = answer.filter("kinds"::equals).isPresent();
        return answer.filter(a -> !a.equals("owner")).isPresent() ? Signs.DOCUMENT : Signs.OWNER;
    }

    /** Those found, if sales bring money. */
    private Signs checked(Signs found) {
        long in =
                heaps.stream()
                        .filter(h -> h.kind() == Kind.SALE)
                        .flatMap(h -> h.rows().stream())
                        .mapToLong(plan::money)
                        .sum();
        if (in >= 0) {
            return found;
        }
        boolean turned =
                findings.ask(
                                new Question(
                                        "signs-turned",
                                        "sales come to %s, less than nothing; does + mean money out here?"
                                                .formatted(new Amount(in)),
                                        List.of("yes", "no"),
                                        true))
                        .filter("yes"::equals)
                        .isPresent();
        return turned ? Signs.TURNED : found;
    }
}
