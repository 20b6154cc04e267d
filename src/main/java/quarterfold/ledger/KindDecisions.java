package quarterfold.ledger;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The kinds that people gave entries after they came, as far as their decisions hold: an entry's
 * own, else that of the question which asks what it is; of several the last.
 */
public final class KindDecisions {
    public static final KindDecisions NONE = new KindDecisions(0);

    /** How a decision states a kind, before its code. */
    private static final String FIELD = "kind=";

    /** A longer condition would cost more than to look at every entry. */
    private static final int FEW = 200;

    private record Run(long last, Decision decision) {}

    private final long asOf;
    private final Map<Long, Decision> entries = new HashMap<>();
    private final TreeMap<Long, Run> runs = new TreeMap<>();

    private KindDecisions(long asOf) {
        this.asOf = asOf;
    }

    /** {@code asOf}: the number of the last decision. */
    static KindDecisions of(Connection connection, List<Decision> all, long asOf)
            throws SQLException {
        KindDecisions kinds = new KindDecisions(asOf);
        for (Decision decision : Decision.inForce(all)) {
            if (isOne(decision)) {
                kinds.add(connection, decision);
            }
        }
        return kinds;
    }

    private void add(Connection connection, Decision decision) throws SQLException {
        if (decision.target() == Decision.Target.ENTRY) {
            entries.put(Long.valueOf(decision.about()), decision);
            return;
        }
        Optional<RaisedQuery.Name> name = RaisedQuery.Name.parse(decision.about());
        if (name.isPresent()) {
            for (AskedEntries run : AskedEntries.of(connection, name.get())) {
                runs.put(run.first(), new Run(run.last(), decision));
            }
        }
    }

    /** Whether a decision states what kind entries are of. */
    public static boolean isOne(Decision decision) {
        return decision.action() == Decision.Action.STATE && decision.value().startsWith(FIELD);
    }

    long asOf() {
        return asOf;
    }

    /** Whether there is any. */
    public boolean isAny() {
        return !isNone();
    }

    boolean isNone() {
        return entries.isEmpty() && runs.isEmpty();
    }

    /** The decision that says what an entry is; mostly there is none. */
    public Optional<Decision> of(long number) {
        if (isNone()) {
            return Optional.empty();
        }
        return Optional.ofNullable(entries.get(number))
                .or(
                        () ->
                                Optional.ofNullable(runs.floorEntry(number))
                                        .map(Map.Entry::getValue)
                                        .filter(run -> number <= run.last())
                                        .map(Run::decision));
    }

    /** A line of an entry as it is of the kind that was decided. */
    Line line(long number, Line entered) {
        return of(number).map(d -> entered.as(known(d))).orElse(entered);
    }

    /** The kind that a decision states, where it states one. */
    public static Optional<Kind> kind(Decision decision) {
        return isOne(decision)
                ? Coded.find(Kind.class, decision.value().substring(FIELD.length()))
                : Optional.empty();
    }

    private static Kind known(Decision decision) {
        return kind(decision)
                .orElseThrow(
                        () ->
                                new IllegalStateException(
                                        "the ledger holds the decision '%s', which this program does not know"
                                                .formatted(decision.value())));
    }

    /** Whether some entry is of the kind by a decision. */
    boolean any(Kind kind) {
        return Stream.concat(entries.values().stream(), runs.values().stream().map(Run::decision))
                .anyMatch(d -> known(d) == kind);
    }

    /**
     * A condition on entries {@code e}: those for which the one given holds as they were entered,
     * and those that a decision says the kind of. What is found is to be looked at again.
     */
    String or(String condition) {
        if (isNone()) {
            return condition;
        }
        if (entries.size() + runs.size() > FEW) {
            return "1";
        }
        return Stream.concat(
                        entries.keySet().stream().map("e.number = %d"::formatted),
                        runs.entrySet().stream()
                                .map(
                                        run ->
                                                "e.number between %d and %d"
                                                        .formatted(
                                                                run.getKey(),
                                                                run.getValue().last())))
                .collect(Collectors.joining(" or ", "(" + condition + " or ", ")"));
    }
}
