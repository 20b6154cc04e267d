package quarterfold.period;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Entry;
import quarterfold.ledger.EntrySearch;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.Profile;
import quarterfold.treatment.Answers;
import quarterfold.treatment.Occasion;
import quarterfold.treatment.Timing;

/**
 * Finds what happens in a period: the occasions whose day is in it, of entries dated in it and of
 * the few that reach into it from another: those with days beside their tax point, those decided
 * upon, exports of the months before, and in a book on cash accounting what is paid in it.
 */
final class Occasions {

    private static final Set<Decision.Action> STATES =
            EnumSet.of(Decision.Action.STATE, Decision.Action.EVIDENCE_SEEN);

    private final Ledger ledger;
    private final Timing timing;
    private final Answers answers;

    Occasions(Ledger ledger, Timing timing, Answers answers) {
        this.ledger = ledger;
        this.timing = timing;
        this.answers = answers;
    }

    /** A way through the entries with a tax point between two days. */
    interface Scan {
        void forEach(LocalDate first, LocalDate last, Consumer<Entry> each);
    }

    void forEach(Period period, Scan scan, Consumer<Occasion> each) {
        scan.forEach(period.start(), period.end(), entry -> of(entry, period, each));
        Set<Long> reached = new HashSet<>();
        forEachReaching(
                period.start(),
                period.end(),
                period.start().minusDays(1),
                entry -> {
                    if (!period.contains(entry.taxPoint()) && !reached.contains(entry.number())) {
                        of(
                                entry,
                                period,
                                occasion -> {
                                    reached.add(entry.number());
                                    each.accept(occasion);
                                });
                    }
                });
    }

    /**
     * The entries that may have an occasion between two days though their tax point is another: it
     * may name one more than once.
     *
     * @param through the last tax point of those that reach out by their own days alone
     */
    void forEachReaching(LocalDate first, LocalDate last, LocalDate through, Consumer<Entry> each) {
        ledger.forEachWithParticulars(each);
        decided().forEach(number -> ledger.entry(number).ifPresent(each));
        EntrySearch search = ledger.search();
        search.forEach(
                timing.earliestExport(first), through, timing::mayReachFromMonthsBefore, each);
        search.forEach(p -> timing.mayReachFromAnyTime(p) || answers.mayMove(p), each);
        if (timing.countsPayments()) {
            search.forEachPaid(first, last, Occasions::isSupply, each);
            search.forEach(p -> isSupply(p) && timing.mayBePaidByRows(p), each);
            if (timing.reckonings().stream()
                    .anyMatch(d -> !d.isBefore(first) && !d.isAfter(last))) {
                search.forEach(Occasions::isSupply, each);
            }
        }
    }

    /** The entries of which a decision ever stated a fact, also one that is undone since. */
    private List<Long> decided() {
        return ledger.decisions().stream()
                .filter(d -> d.target() == Decision.Target.ENTRY)
                .filter(d -> STATES.contains(d.action()))
                .map(d -> Long.valueOf(d.about()))
                .distinct()
                .sorted()
                .toList();
    }

    private static boolean isSupply(Profile profile) {
        return profile.kind().side() == Kind.Side.SALES
                || profile.kind().side() == Kind.Side.PURCHASES;
    }

    private void of(Entry entry, Period period, Consumer<Occasion> each) {
        for (Occasion occasion : timing.of(entry)) {
            if (period.contains(occasion.day())) {
                each.accept(occasion);
            }
        }
    }
}
