package quarterfold.treatment;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Entry;
import quarterfold.ledger.KindDecisions;
import quarterfold.ledger.Profile;

/**
 * What people decided, as far as it still holds, found by the entry it is about: decisions on the
 * entry itself after those on its party and its product, later ones after earlier.
 */
public final class Answers {

    public static final Answers NONE = of(List.of());

    private final Map<Decision.Target, Map<String, List<Decision>>> byTarget = new HashMap<>();
    private final KindDecisions kinds;
    private final boolean empty;

    private Answers(List<Decision> inForce, KindDecisions kinds) {
        this.kinds = kinds;
        empty = inForce.isEmpty();
        for (Decision decision : inForce) {
            byTarget.computeIfAbsent(decision.target(), t -> new HashMap<>())
                    .computeIfAbsent(decision.about(), a -> new ArrayList<>())
                    .add(decision);
        }
    }

    /** The answers of every decision but those a later one undoes, and the undoing itself. */
    public static Answers of(List<Decision> decisions) {
        return of(decisions, KindDecisions.NONE);
    }

    /** The same; {@code kinds}: what entries are by a decision on the question that asks it. */
    public static Answers of(List<Decision> decisions, KindDecisions kinds) {
        return new Answers(Decision.inForce(decisions), kinds);
    }

    /** Whether some decision states {@code field=value}. */
    public boolean state(String fieldAndValue) {
        return byTarget.values().stream()
                .flatMap(about -> about.values().stream())
                .flatMap(List::stream)
                .anyMatch(
                        d ->
                                d.action() == Decision.Action.STATE
                                        && d.value().equals(fieldAndValue));
    }

    /** Whether a decision about a party or channel states what may move the days of its entries. */
    public boolean mayMove(Profile profile) {
        return movesAny(Decision.Target.PARTY, profile.party())
                || movesAny(Decision.Target.PARTY, profile.channel())
                || byTarget.getOrDefault(Decision.Target.PRODUCT, Map.of()).values().stream()
                        .flatMap(List::stream)
                        .anyMatch(Answers::moves);
    }

    private boolean movesAny(Decision.Target target, String about) {
        return about(target, about).stream().anyMatch(Answers::moves);
    }

    private static boolean moves(Decision decision) {
        return decision.action() == Decision.Action.STATE
                || decision.action() == Decision.Action.EVIDENCE_SEEN;
    }

    /** Every decision that holds of an entry, the one that wins last. */
    public List<Decision> about(Entry entry) {
        if (empty) {
            return List.of();
        }
        List<Decision> all = new ArrayList<>();
        kinds.of(entry.number())
                .filter(d -> d.target() == Decision.Target.QUERY)
                .ifPresent(all::add);
        all.addAll(about(Decision.Target.PARTY, entry.profile().party()));
        all.addAll(about(Decision.Target.PARTY, entry.profile().channel()));
        all.addAll(about(Decision.Target.PRODUCT, entry.line().item().product()));
        all.addAll(about(Decision.Target.ENTRY, Long.toString(entry.number())));
        return all;
    }

    /** The entry with the facts that were stated or seen since it was entered in their places. */
    public Entry stated(Entry entry) {
        return empty ? entry : Answered.of(entry, this).entry();
    }

    /** A question about an entry, set aside where a decision on it says so. */
    public Query settled(Entry entry, Query query) {
        return about(entry).stream()
                .filter(d -> d.action() == Decision.Action.SET_ASIDE)
                .reduce((first, last) -> last)
                .map(query::setAside)
                .orElse(query);
    }

    /** The decision that answers a question without an entry, by its id. */
    Optional<Decision> about(Query query) {
        List<Decision> found = about(Decision.Target.QUERY, query.id());
        return found.isEmpty() ? Optional.empty() : Optional.of(found.get(found.size() - 1));
    }

    private List<Decision> about(Decision.Target target, String about) {
        return about.isEmpty()
                ? List.of()
                : byTarget.getOrDefault(target, Map.of()).getOrDefault(about, List.of());
    }
}
