package quarterfold.period;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import quarterfold.ledger.Close;
import quarterfold.ledger.ClosedCorrection;
import quarterfold.ledger.ClosedEntry;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Entry;
import quarterfold.ledger.KindDecisions;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.RaisedQuery;
import quarterfold.money.Amount;
import quarterfold.treatment.Cause;
import quarterfold.treatment.Context;
import quarterfold.treatment.Occasion;
import quarterfold.treatment.Share;
import quarterfold.treatment.TakenUp;
import quarterfold.treatment.Timing;
import quarterfold.treatment.Treated;

/**
 * Finds the entries of closed returns that were decided otherwise since, the lines of imports that
 * an amended certificate or statement has replaced since, a channel's invoices for fees that
 * settlements claim too since, bills without a claim that are the VAT of an import entered since,
 * and amounts in other currencies that were closed without an exchange rate which is held since:
 * each is treated again with the tables and settings of its close and the decisions of now, and
 * held against what returns had for it so far. What was put right before is not found again; what
 * is undone since is.
 */
final class ChangedEntries {

    private static final String NO_RATE = "/no-exchange-rate";

    private final Ledger ledger;
    private final Context context;
    private final Timing timing;
    private final ClosedRuns runs;
    private final Closes closes;
    private final AsClosed asClosed;

    ChangedEntries(Ledger ledger, Context context, Timing timing, ClosedRuns runs, Closes closes) {
        this.ledger = ledger;
        this.context = context;
        this.timing = timing;
        this.runs = runs;
        this.closes = closes;
        asClosed = new AsClosed(ledger);
    }

    /**
     * @param shownOn the day the correction of an entry is shown on: in the period that takes it up
     */
    List<Wrong> of(LocalDate shownOn) {
        long earliest = closes.all().stream().mapToLong(Close::lastDecision).min().orElse(0);
        List<Decision> all = ledger.decisions();
        List<Decision> since = all.stream().filter(d -> d.id() > earliest).toList();
        Map<Long, Decision> byId =
                all.stream().collect(Collectors.toMap(Decision::id, Function.identity()));
        List<Decision> about = since.stream().map(d -> undone(d, byId)).toList();
        Set<Long> candidates = new TreeSet<>(numbers(about));
        candidates.addAll(context.ties().imports().ofAmendedMonths());
        closes.all().stream()
                .flatMap(close -> close.queries().stream())
                .filter(query -> query.id().endsWith(NO_RATE))
                .forEach(query -> candidates.add(query.entry()));
        context.together()
                .claims()
                .ifPresent(
                        claims -> {
                            candidates.addAll(claims.feesClaimedAgain());
                            candidates.addAll(claims.importVatBilledBefore());
                        });
        List<Wrong> wrong = new ArrayList<>();
        for (long number : candidates) {
            List<ClosedEntry> frozen = ledger.closedEntry(number);
            Optional<Entry> entry = ledger.entry(number);
            if (!frozen.isEmpty() && entry.isPresent()) {
                compare(entry.get(), frozen, shownOn, wrong);
            }
        }
        return wrong;
    }

    /** What an undoing is about: the decision it undoes. */
    private static Decision undone(Decision decision, Map<Long, Decision> byId) {
        Decision about = decision;
        while (about.action() == Decision.Action.UNDO) {
            about = byId.getOrDefault(Long.parseLong(about.value()), about);
            if (about.action() == Decision.Action.UNDO && about.id() >= decision.id()) {
                return decision;
            }
        }
        return about;
    }

    /** The numbers of the entries the decisions are about, and of those they call the same. */
    private Set<Long> numbers(List<Decision> about) {
        Set<Long> numbers = new TreeSet<>();
        Set<String> parties = abouts(about, Decision.Target.PARTY);
        Set<String> products = abouts(about, Decision.Target.PRODUCT);
        abouts(about, Decision.Target.ENTRY).forEach(n -> numbers.add(Long.valueOf(n)));
        about.stream()
                .filter(KindDecisions::isOne)
                .flatMap(d -> RaisedQuery.Name.parse(d.about()).stream())
                .forEach(
                        query -> ledger.search().forEachAsked(query, e -> numbers.add(e.number())));
        about.stream()
                .filter(d -> d.action() == Decision.Action.DUPLICATE_OF)
                .forEach(d -> numbers.add(Long.valueOf(d.value())));
        if (!parties.isEmpty() || !products.isEmpty()) {
            ledger.forEach(
                    entry -> {
                        if (parties.contains(entry.profile().party())
                                || parties.contains(entry.profile().channel())
                                || products.contains(entry.line().item().product())) {
                            numbers.add(entry.number());
                        }
                    });
        }
        return numbers;
    }

    private static Set<String> abouts(List<Decision> decisions, Decision.Target target) {
        return decisions.stream()
                .filter(d -> d.target() == target)
                .map(Decision::about)
                .filter(about -> !about.isEmpty())
                .collect(Collectors.toSet());
    }

    private record Day(LocalDate day, String cause) {}

    /** One occasion: what was declared, and what is right now; empty where it is no more. */
    private record Compared(
            ClosedEntry frozen, Map<String, Amount> declared, Optional<Treated> now) {

        Map<String, Amount> right() {
            return now.map(Treated::boxes).orElse(Map.of());
        }
    }

    private void compare(
            Entry entry, List<ClosedEntry> frozen, LocalDate shownOn, List<Wrong> wrong) {
        Map<Day, Map<String, Amount>> corrected = new HashMap<>();
        for (ClosedCorrection past : ledger.corrections(entry.number())) {
            corrected.put(new Day(past.day(), past.cause()), past.right());
        }
        Map<Day, Occasion> now = new HashMap<>();
        timing.of(entry).forEach(o -> now.put(new Day(o.day(), o.cause().code()), o));
        List<Compared> compared = new ArrayList<>();
        for (ClosedEntry one : frozen) {
            Day day = new Day(one.day(), one.cause());
            if (!one.cause().equals(Cause.CORRECTED.code())) {
                compared.add(
                        new Compared(
                                one,
                                corrected.getOrDefault(day, one.boxes()),
                                Optional.ofNullable(now.get(day))
                                        .map(o -> runs.treat(o, closes.of(one.closedIn())))));
            }
        }
        List<Compared> differing =
                compared.stream()
                        .filter(c -> !Wrong.difference(c.declared(), c.right()).isEmpty())
                        .toList();
        if (!differing.isEmpty()) {
            Treated shown = shown(entry, frozen, compared, shownOn);
            differing.forEach(c -> wrong.add(wrong(shown, c)));
        }
    }

    private Wrong wrong(Treated shown, Compared compared) {
        ClosedEntry frozen = compared.frozen();
        return new Wrong(
                shown,
                frozen.day(),
                quarterfold.ledger.Coded.find(Cause.class, frozen.cause()).orElseThrow(),
                closes.of(frozen.day()).orElseGet(() -> closes.of(frozen.closedIn())),
                false,
                isWithoutRate(frozen, shown) && compared.declared().equals(frozen.boxes()),
                compared.declared(),
                compared.right());
    }

    /** Whether it was closed for want of a rate in no box: in its own currency. */
    private static boolean isWithoutRate(ClosedEntry frozen, Treated now) {
        return frozen.exchange().isEmpty() && now.conversion().isPresent();
    }

    /** What an entry of another kind was worth is no part of what it is worth now. */
    private boolean isOfItsKind(ClosedEntry frozen, Entry now) {
        return asClosed.entry(now, frozen.closedIn()).kind() == now.kind();
    }

    /** The correction of an entry over all its occasions: as it is treated now, the difference. */
    private Treated shown(
            Entry entry, List<ClosedEntry> frozen, List<Compared> compared, LocalDate shownOn) {
        YearMonth first = frozen.get(0).closedIn();
        List<Treated> now = compared.stream().flatMap(c -> c.now().stream()).toList();
        Treated basis =
                now.isEmpty()
                        ? runs.treat(Occasion.of(entry), closes.of(first))
                        : now.get(now.size() - 1);
        List<ClosedEntry> had =
                frozen.stream()
                        .filter(f -> !isWithoutRate(f, basis) && isOfItsKind(f, entry))
                        .toList();
        return new Treated(
                new Occasion(entry, shownOn, Cause.CORRECTED, Share.WHOLE),
                TakenUp.ERROR,
                basis.treatment(),
                basis.rule(),
                basis.why(),
                basis.citation(),
                basis.rate(),
                sum(now, Treated::net).minus(sum(had, ClosedEntry::net)),
                sum(now, Treated::vat).minus(sum(had, ClosedEntry::vat)),
                sum(now, Treated::claim).minus(sum(had, ClosedEntry::claim)),
                Map.of(),
                basis.queries().stream().map(q -> context.answers().settled(entry, q)).toList(),
                Optional.empty(),
                basis.conversion());
    }

    private static <T> Amount sum(List<T> all, Function<T, Amount> amount) {
        return all.stream().map(amount).reduce(Amount.ZERO, Amount::plus);
    }
}
