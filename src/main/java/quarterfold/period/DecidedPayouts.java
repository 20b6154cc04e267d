package quarterfold.period;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Decision.Target;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.KindDecisions;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.PayoutQuestion;
import quarterfold.ledger.RaisedQuery;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;

/**
 * The payouts that rows are, or are not, since somebody decided what they are: each is held against
 * the other rows of its settlement, as an import holds those it knows.
 */
final class DecidedPayouts {
    private static final String PLAIN_SHEET = "plain-sheet";

    private final Ledger ledger;

    DecidedPayouts(Ledger ledger) {
        this.ledger = ledger;
    }

    private record Key(long source, String settlement, String currency) {
        static Key of(Entry entry) {
            return new Key(
                    entry.source(), entry.profile().settlement(), entry.profile().currency());
        }
    }

    private static final class Sum {
        private long rows;
        private boolean paidOut;
        private Amount payout = Amount.ZERO;
        private Amount others = Amount.ZERO;

        void add(Entry entry) {
            Amount money = entry.line().signedMoney();
            if (entry.kind() == Kind.PAYOUT) {
                paidOut = true;
                payout = payout.minus(money);
            } else {
                rows++;
                others = others.plus(money);
            }
        }
    }

    /** A question for each settlement of the sources whose payout is not what its rows come to. */
    List<RaisedQuery> of(Set<Long> sources) {
        if (!ledger.kinds().isAny()) {
            return List.of();
        }
        Map<Key, Sum> sums = new LinkedHashMap<>();
        forEachDecided(
                entry -> {
                    if (sources.contains(entry.source())) {
                        sums.put(Key.of(entry), new Sum());
                    }
                });
        if (sums.isEmpty()) {
            return List.of();
        }
        ledger.search()
                .forEach(
                        profile ->
                                sums.keySet().stream()
                                        .anyMatch(k -> k.settlement().equals(profile.settlement())),
                        entry ->
                                Optional.ofNullable(sums.get(Key.of(entry)))
                                        .ifPresent(sum -> sum.add(entry)));
        Map<Long, Source> byId = new TreeMap<>();
        ledger.sources().forEach(source -> byId.put(source.id(), source));
        List<RaisedQuery> queries = new ArrayList<>();
        sums.forEach(
                (key, sum) ->
                        Optional.ofNullable(byId.get(key.source()))
                                .filter(source -> isUntied(key, sum, source))
                                .ifPresent(source -> queries.add(query(key, sum, source))));
        return queries;
    }

    /** Entries that a decision makes payouts, or payouts that it makes something else. */
    private void forEachDecided(Consumer<Entry> each) {
        for (Decision decision : Decision.inForce(ledger.decisions())) {
            if (!KindDecisions.isOne(decision)) {
                continue;
            }
            if (decision.target() == Target.ENTRY) {
                EntryNumber.of(decision.about())
                        .flatMap(ledger::entry)
                        .filter(e -> e.kind() == Kind.PAYOUT || wasPayout(e))
                        .ifPresent(each);
            } else {
                RaisedQuery.Name.parse(decision.about())
                        .ifPresent(
                                query ->
                                        ledger.search()
                                                .forEachAsked(
                                                        query,
                                                        entry -> {
                                                            if (entry.kind() == Kind.PAYOUT) {
                                                                each.accept(entry);
                                                            }
                                                        }));
            }
        }
    }

    private boolean wasPayout(Entry entry) {
        return ledger.sources().stream()
                .filter(source -> source.id() == entry.source())
                .flatMap(source -> ledger.entries(source, entry.number(), 1).stream())
                .anyMatch(entered -> entered.kind() == Kind.PAYOUT);
    }

    /** As at an import: in a channel's own report a payout must have its rows. */
    private static boolean isUntied(Key key, Sum sum, Source source) {
        boolean whole = !source.layout().equals(PLAIN_SHEET);
        return sum.paidOut
                && (whole || (!key.settlement().isEmpty() && sum.rows > 0))
                && !sum.payout.equals(sum.others);
    }

    private static RaisedQuery query(Key key, Sum sum, Source source) {
        String name = key.settlement().isEmpty() ? source.name() : key.settlement();
        return new RaisedQuery(
                source.id(),
                RaisedQuery.PAYOUT_DOES_NOT_TIE,
                name,
                PayoutQuestion.words(name, key.currency(), sum.payout, sum.rows, sum.others));
    }
}
