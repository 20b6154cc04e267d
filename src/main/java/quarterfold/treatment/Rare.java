package quarterfold.treatment;

import java.util.Map;
import quarterfold.law.Fact;

/**
 * The facts that are the same for nearly every entry of a book, in the treatment table's words. One
 * object serves all ordinary entries.
 */
record Rare(
        Cause cause,
        String decided,
        String registration,
        String inTime,
        String onHand,
        String measured,
        String use,
        String addressed,
        String scheme) {

    /** The same, measured against something else than a consignment's limit. */
    Rare measuring(String word) {
        return new Rare(cause, decided, registration, inTime, onHand, word, use, addressed, scheme);
    }

    void state(Map<Fact, String> facts) {
        facts.put(Fact.CAUSE, cause.code());
        facts.put(Fact.DECIDED, decided);
        facts.put(Fact.REGISTRATION, registration);
        facts.put(Fact.IN_TIME, inTime);
        facts.put(Fact.ON_HAND, onHand);
        facts.put(Fact.MEASURED, measured);
        facts.put(Fact.USE, use);
        facts.put(Fact.ADDRESSED, addressed);
        facts.put(Fact.SCHEME, scheme);
    }
}
