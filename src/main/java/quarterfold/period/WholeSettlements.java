package quarterfold.period;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.RaisedQuery;
import quarterfold.ledger.Source;

/**
 * Settlements that exports of days cut in parts and that tie once all parts are entered: each row
 * is entered once, so the entries of a settlement, its payout with them, come to nothing. Files of
 * one layout have settlements of one channel. What a column states as the payout is no entry, so
 * the question about it, which has a code of its own, stays.
 */
final class WholeSettlements {
    private final Ledger ledger;

    WholeSettlements(Ledger ledger) {
        this.ledger = ledger;
    }

    /** A settlement, by the layout of its files. */
    private record Named(String layout, String settlement) {}

    /** What its entries of one currency come to. */
    private static final class Sum {
        private BigDecimal money = BigDecimal.ZERO;
        private boolean paidOut;
        private boolean others;
    }

    /** The questions without those about settlements that tie in the ledger as it stands. */
    List<RaisedQuery> open(List<RaisedQuery> raised) {
        Set<String> names =
                raised.stream()
                        .filter(WholeSettlements::isOfPayout)
                        .map(RaisedQuery::about)
                        .collect(Collectors.toSet());
        if (names.isEmpty()) {
            return raised;
        }
        Map<Long, String> layouts =
                ledger.sources().stream().collect(Collectors.toMap(Source::id, Source::layout));
        Set<Named> tied = tied(names, layouts);
        return raised.stream()
                .filter(
                        q ->
                                !isOfPayout(q)
                                        || !tied.contains(
                                                new Named(
                                                        layouts.getOrDefault(q.source(), ""),
                                                        q.about())))
                .toList();
    }

    private static boolean isOfPayout(RaisedQuery query) {
        return query.code().equals(RaisedQuery.PAYOUT_DOES_NOT_TIE);
    }

    private Set<Named> tied(Set<String> names, Map<Long, String> layouts) {
        Map<Named, Map<String, Sum>> sums = new HashMap<>();
        ledger.search()
                .forEach(
                        profile -> names.contains(profile.settlement()),
                        entry ->
                                add(
                                        entry,
                                        sums.computeIfAbsent(
                                                new Named(
                                                        layouts.getOrDefault(entry.source(), ""),
                                                        entry.profile().settlement()),
                                                n -> new HashMap<>())));
        Set<Named> tied = new HashSet<>();
        sums.forEach(
                (named, byCurrency) -> {
                    List<Sum> paid = byCurrency.values().stream().filter(s -> s.paidOut).toList();
                    if (!paid.isEmpty()
                            && paid.stream().allMatch(s -> s.others && s.money.signum() == 0)) {
                        tied.add(named);
                    }
                });
        return tied;
    }

    private static void add(Entry entry, Map<String, Sum> byCurrency) {
        Sum sum = byCurrency.computeIfAbsent(entry.profile().currency(), c -> new Sum());
        sum.money = sum.money.add(entry.line().signedMoney().decimal());
        if (entry.kind() == Kind.PAYOUT) {
            sum.paidOut = true;
        } else {
            sum.others = true;
        }
    }
}
