package quarterfold.period;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Consumer;
import quarterfold.law.Law;
import quarterfold.ledger.Book;
import quarterfold.ledger.Close;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Decision.Action;
import quarterfold.ledger.Entry;
import quarterfold.ledger.KindDecisions;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.RaisedQuery;

/**
 * Records a decision, once it is known to fit the ledger and the law, and tells what it changes.
 */
public final class Deciding {

    private final Book book;
    private final Ledger ledger;
    private final Law law;

    public Deciding(Book book, Ledger ledger, Law law) {
        this.book = book;
        this.ledger = ledger;
        this.law = law;
    }

    /**
     * A decision as it was recorded.
     *
     * @param effects what it changes in the open periods; those it leaves as they are are not there
     * @param closed how many of the entries it is about are in each closed return, which does not
     *     change
     * @param next the period that takes up corrections of closed ones
     * @param kindOf the question about the kind of rows that it answers, or that it opens again
     * @param told what to know of entries whose kind it says
     */
    public record Decided(
            Decision decision,
            List<Effect> effects,
            Map<YearMonth, Long> closed,
            Optional<Period> next,
            Optional<RaisedQuery.Name> kindOf,
            KindTold told) {}

    /** The entries a decision is about: their closed periods, and one of each kind and day. */
    private record Entries(Map<YearMonth, Long> closed, List<Entry> samples) {}

    /**
     * Records a decision; its number is given by the ledger.
     *
     * @throws LedgerException if it does not fit: nothing is recorded then
     */
    public Decided decide(Decision wanted) throws LedgerException {
        Decision decision = wanted.action() == Action.UNDO ? aboutTheUndone(wanted) : wanted;
        Returns before = new Returns(book, ledger, law);
        Decision meant = meant(decision);
        Entries about = entries(decision, meant, before.calendar());
        new DecisionCheck(ledger, law, decision, about.samples()).check();
        List<VatReturn> drafts =
                openPeriods(before.calendar()).stream().map(before::draft).toList();
        if (decision.target() == Decision.Target.QUERY
                && !isUndo(decision)
                && !isAsked(decision.about(), drafts)) {
            throw DecisionCheck.absent(decision, ledger);
        }
        if (KindDecisions.isOne(meant)) {
            new KindCheck(ledger, decision, meant, about.samples()).check();
        }
        Decision recorded = ledger.decide(decision);
        Returns after = new Returns(book, ledger, law);
        List<Effect> effects = new ArrayList<>();
        for (VatReturn draft : drafts) {
            effects.add(Effect.between(draft, after.draft(draft.period())));
        }
        return new Decided(
                recorded,
                effects.stream().filter(e -> !e.isNothing()).toList(),
                about.closed(),
                next(before.calendar()),
                kindOf(meant),
                told(decision, meant));
    }

    private static Optional<RaisedQuery.Name> kindOf(Decision meant) {
        return RaisedQuery.Name.parse(meant.about()).filter(q -> KindDecisions.isOne(meant));
    }

    private KindTold told(Decision decision, Decision meant) {
        if (isUndo(decision) || !KindDecisions.isOne(meant)) {
            return KindTold.NOTHING;
        }
        Optional<RaisedQuery.Name> query = kindOf(meant);
        KindTold.Looking looking = new KindTold.Looking(ledger.kinds(), query.isPresent());
        query.ifPresent(q -> ledger.search().forEachAsked(q, looking::see));
        EntryNumber.of(meant.about()).flatMap(ledger::entry).ifPresent(looking::see);
        return looking.told();
    }

    private static boolean isUndo(Decision decision) {
        return decision.action() == Action.UNDO;
    }

    /** An undoing is about what the undone decision is about; one of nothing is refused later. */
    private Decision aboutTheUndone(Decision wanted) {
        return undone(wanted)
                .map(
                        d ->
                                new Decision(
                                        0,
                                        d.target(),
                                        d.about(),
                                        wanted.action(),
                                        wanted.value(),
                                        wanted.why(),
                                        wanted.who(),
                                        wanted.day()))
                .orElse(wanted);
    }

    /** What a decision, or the one that it undoes in the end, says. */
    private Decision meant(Decision decision) {
        Decision meant = decision;
        for (Optional<Decision> undone = undone(meant);
                undone.isPresent() && undone.get().id() != meant.id();
                undone = undone(meant)) {
            meant = undone.get();
        }
        return meant;
    }

    private Optional<Decision> undone(Decision wanted) {
        return ledger.decisions().stream()
                .filter(d -> isUndo(wanted) && Long.toString(d.id()).equals(wanted.value()))
                .findFirst();
    }

    /** {@code meant}: the decision, or the one it undoes. */
    private Entries entries(Decision decision, Decision meant, Calendar calendar) {
        Map<YearMonth, Long> lastEntries = new TreeMap<>();
        ledger.closes().forEach(c -> lastEntries.put(c.period(), c.lastEntry()));
        Map<YearMonth, Long> closed = new TreeMap<>();
        Map<String, Entry> samples = new LinkedHashMap<>();
        Consumer<Entry> see =
                entry -> {
                    calendar.of(entry.taxPoint())
                            .map(Period::name)
                            .filter(p -> entry.number() <= lastEntries.getOrDefault(p, 0L))
                            .ifPresent(p -> closed.merge(p, 1L, Long::sum));
                    samples.putIfAbsent(
                            entry.kind() + " " + YearMonth.from(entry.taxPoint()), entry);
                };
        long found = 0;
        if (decision.target() == Decision.Target.ENTRY) {
            Optional<Entry> entry = EntryNumber.of(decision.about()).flatMap(ledger::entry);
            entry.ifPresent(see);
            found = entry.isPresent() ? 1 : 0;
        } else if (decision.target() == Decision.Target.QUERY) {
            RaisedQuery.Name.parse(decision.about())
                    .filter(query -> KindDecisions.isOne(meant))
                    .ifPresent(query -> ledger.search().forEachAsked(query, see));
        } else {
            long[] count = {0};
            ledger.forEach(
                    entry -> {
                        if (isAbout(decision, entry)) {
                            count[0]++;
                            see.accept(entry);
                        }
                    });
            found = count[0];
        }
        if (found == 0 && decision.target() != Decision.Target.QUERY && !isUndo(decision)) {
            throw DecisionCheck.absent(decision, ledger);
        }
        return new Entries(closed, List.copyOf(samples.values()));
    }

    private static boolean isAbout(Decision decision, Entry entry) {
        return switch (decision.target()) {
            case PARTY ->
                    decision.about().equals(entry.profile().party())
                            || decision.about().equals(entry.profile().channel());
            case PRODUCT -> decision.about().equals(entry.line().item().product());
            case ENTRY, QUERY -> false;
        };
    }

    /** Whether a question of that name is in an open period, kept by a close, or answered. */
    private boolean isAsked(String id, List<VatReturn> drafts) {
        boolean ofKind =
                RaisedQuery.Name.parse(id).filter(n -> !ledger.asked(n).isEmpty()).isPresent();
        return ofKind
                || drafts.stream()
                        .flatMap(d -> d.queries().stream())
                        .anyMatch(q -> q.id().equals(id))
                || ledger.closes().stream()
                        .flatMap(c -> c.queries().stream())
                        .anyMatch(q -> q.id().equals(id));
    }

    /** The open periods that hold entries, and the one after the last close. */
    private List<Period> openPeriods(Calendar calendar) {
        TreeSet<Period> periods = new TreeSet<>(Comparator.comparing(Period::start));
        ledger.sources().stream()
                .flatMap(s -> s.dates().stream())
                .flatMap(d -> calendar.from(d.first(), d.last()).stream())
                .forEach(periods::add);
        next(calendar).ifPresent(periods::add);
        return periods.stream().filter(p -> ledger.close(p.name()).isEmpty()).toList();
    }

    private Optional<Period> next(Calendar calendar) {
        return ledger.closes().stream()
                .map(Close::end)
                .max(LocalDate::compareTo)
                .flatMap(end -> calendar.of(end.plusDays(1)));
    }
}
