package quarterfold.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import quarterfold.ledger.Decision;
import quarterfold.period.Deciding.Decided;
import quarterfold.period.Effect;
import quarterfold.period.KindTold;
import quarterfold.treatment.Query;

/** Decisions as people read them. */
final class DecisionText {

    private static final int WIDE = 1_000;
    private static final int MANY = 20;

    private DecisionText() {}

    /** What was recorded and what it changes. */
    static void print(Decided decided, PrintWriter out) {
        line(decided.decision(), Optional.empty(), out);
        decided.effects().forEach(effect -> effect(effect, out));
        if (decided.effects().isEmpty()) {
            out.printf("%nNo figure and no query of an open period changes.%n");
        }
        kind(decided.told(), out);
        decided.closed()
                .forEach(
                        (period, entries) ->
                                out.printf(
                                        "%n%s in %s, which is closed: that return does not change.%n",
                                        Texts.count(entries, "entry is", "entries are"), period));
        if (!decided.closed().isEmpty()) {
            out.printf(
                    "What would be different there is taken up as a correction in %s.%n",
                    decided.next()
                            .map(p -> "the next open period, " + p.name())
                            .orElse("no period: there is none after it"));
        }
    }

    private static void kind(KindTold told, PrintWriter out) {
        int own = told.own().size();
        if (own > 0) {
            out.printf(
                    "%n%s as decided on %s alone: %s.%n",
                    Texts.count(own, "entry stays", "entries stay"),
                    own == 1 ? "it" : "each",
                    numbers(told.own()));
        }
        int against = told.against().size();
        if (against > 0) {
            out.printf(
                    "%nThe money of %s goes the other way than that of such rows, so %s: %s. If that is not meant, the kind is another.%n",
                    Texts.count(against, "entry", "entries"),
                    against == 1 ? "it is a reversal" : "they are reversals",
                    numbers(told.against()));
        }
    }

    private static String numbers(List<Long> entries) {
        return entries.stream()
                .limit(MANY)
                .map(Object::toString)
                .collect(Collectors.joining(", ", "", entries.size() > MANY ? " …" : ""));
    }

    private static void effect(Effect effect, PrintWriter out) {
        out.printf("%nIn %s:%n", effect.period().name());
        effect.moves()
                .forEach(
                        m ->
                                out.printf(
                                        "  box %s  %s -> %s%n",
                                        m.after().box().id(),
                                        Texts.grouped(m.before().text()),
                                        Texts.grouped(m.after().text())));
        queries("answered", effect.answered(), out);
        queries("asked now", effect.asked(), out);
        out.printf(
                "  %s%n",
                effect.stillOpen() == 0
                        ? "No query is open."
                        : Texts.count(
                                effect.stillOpen(),
                                "query is still open.",
                                "queries are still open."));
    }

    private static void queries(String what, List<Query> queries, PrintWriter out) {
        queries.forEach(q -> out.printf("  %s: %s%n", what, Texts.plain(q.id())));
    }

    /** Every decision, those that no longer hold marked. */
    static void list(List<Decision> decisions, PrintWriter out) {
        Map<Long, Long> undone = Decision.undone(decisions);
        decisions.forEach(d -> line(d, Optional.ofNullable(undone.get(d.id())), out));
        out.println(
                decisions.isEmpty()
                        ? "No decision is recorded."
                        : "%s; %d hold."
                                .formatted(
                                        Texts.count(decisions.size(), "decision", "decisions"),
                                        Decision.inForce(decisions).size()));
    }

    private static void line(Decision decision, Optional<Long> undoneBy, PrintWriter out) {
        out.printf(
                "Decision %d of %s by %s: %s%s%n  %s%n",
                decision.id(),
                Texts.day(decision.day()),
                Texts.cell(decision.who(), WIDE),
                Texts.cell(what(decision), WIDE),
                undoneBy.map(id -> " [undone by decision " + id + "]").orElse(""),
                Texts.cell(decision.why(), WIDE));
    }

    private static String what(Decision decision) {
        String about =
                decision.about().isEmpty()
                        ? ""
                        : "%s %s, ".formatted(decision.target().code(), decision.about());
        return about + (decision.action().code() + " " + decision.value()).strip();
    }
}
