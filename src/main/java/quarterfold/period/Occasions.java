package quarterfold.period;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.Set;
import java.util.function.Consumer;
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
        Consumer<Entry> once =
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
                };
        ledger.forEachWithParticulars(once);
        answers.entries().forEach(number -> ledger.entry(number).ifPresent(once));
        EntrySearch search = ledger.search();
        LocalDate before = period.start().minusDays(1);
        search.forEach(
                timing.earliestExport(period.start()),
                before,
                timing::mayReachFromMonthsBefore,
                once);
        search.forEach(p -> timing.mayReachFromAnyTime(p) || answers.mayMove(p), once);
        if (timing.countsPayments()) {
            search.forEachPaid(period.start(), period.end(), Occasions::isSupply, once);
            search.forEach(p -> isSupply(p) && timing.mayBePaidByRows(p), once);
            if (timing.reckonings().stream().anyMatch(period::contains)) {
                search.forEach(Occasions::isSupply, once);
            }
        }
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
