package quarterfold.treatment;

import java.util.List;
import java.util.Optional;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Line;
import quarterfold.ledger.StatedFacts;

/**
 * An entry with what people decided of it.
 *
 * @param entry with the facts that were stated or seen since in their places
 * @param decided a word of {@link quarterfold.law.Fact#DECIDED}
 * @param treatment the treatment decided on, or empty where the table decides
 * @param seen the decision that says the document was seen
 * @param setAside the decision that leaves its questions as they are
 */
record Answered(
        Entry entry,
        String decided,
        String treatment,
        Optional<Decision> seen,
        Optional<Decision> setAside) {

    /** The same about the entry on another tax point. */
    Answered with(Entry other) {
        return new Answered(other, decided, treatment, seen, setAside);
    }

    static Answered of(Entry entry, Answers answers) {
        List<Decision> about = answers.about(entry);
        if (about.isEmpty()) {
            return new Answered(entry, "none", "", Optional.empty(), Optional.empty());
        }
        Line line = entry.line();
        String decided = "none";
        String treatment = "";
        Optional<Decision> seen = Optional.empty();
        Optional<Decision> setAside = Optional.empty();
        for (Decision decision : about) {
            switch (decision.action()) {
                case TREAT_AS -> treatment = decision.value();
                case STATE -> line = StatedFacts.state(line, decision.value());
                case EVIDENCE_SEEN -> {
                    line = StatedFacts.seen(line, decision.value(), decision.day());
                    seen = Optional.of(decision);
                }
                case DISALLOW -> decided = "disallowed";
                case DUPLICATE_OF -> decided = "duplicate";
                case SET_ASIDE -> setAside = Optional.of(decision);
                case UNDO -> {}
            }
        }
        return new Answered(
                new Entry(entry.number(), entry.source(), line),
                decided,
                treatment,
                seen,
                setAside);
    }
}
