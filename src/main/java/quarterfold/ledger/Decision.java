package quarterfold.ledger;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * A person's recorded answer to a question. Appended, never edited; undone by appending another.
 *
 * @param id 1, 2, 3 … in the order they were made
 * @param about the entry's number, the party's name, the product's code or the query's id
 * @param value what the action takes: a treatment, a kind of evidence, {@code field=value}, the
 *     number of an entry or of a decision; empty where it takes nothing
 * @param why in the person's words, never empty
 * @param who decided, never empty
 * @param day when, in the book's zone
 */
public record Decision(
        long id,
        Target target,
        String about,
        Action action,
        String value,
        String why,
        String who,
        LocalDate day) {

    Decision numbered(long number) {
        return new Decision(number, target, about, action, value, why, who, day);
    }

    /** The decisions that no longer hold, each with the one that undoes it. */
    public static Map<Long, Long> undone(List<Decision> decisions) {
        Map<Long, Long> undone = new HashMap<>();
        List<Decision> newestFirst =
                decisions.stream().sorted(Comparator.comparing(Decision::id).reversed()).toList();
        for (Decision decision : newestFirst) {
            if (decision.action() == Action.UNDO && !undone.containsKey(decision.id())) {
                undone.put(Long.parseLong(decision.value()), decision.id());
            }
        }
        return undone;
    }

    /** The decisions that hold: an undone one does not, and undoing an undoing brings it back. */
    public static List<Decision> inForce(List<Decision> decisions) {
        Map<Long, Long> undone = undone(decisions);
        return decisions.stream()
                .filter(d -> d.action() != Action.UNDO && !undone.containsKey(d.id()))
                .sorted(Comparator.comparing(Decision::id))
                .collect(Collectors.toList());
    }

    /** What a decision is about. */
    public enum Target implements Coded {
        ENTRY("entry"),
        /** Every entry of a supplier, customer or channel. */
        PARTY("party"),
        /** Every sale of a product. */
        PRODUCT("product"),
        /** A question that is about no single entry. */
        QUERY("query");

        private final String code;

        Target(String code) {
            this.code = code;
        }

        @Override
        public String code() {
            return code;
        }
    }

    /** What was decided. */
    public enum Action implements Coded {
        /** The entry has this treatment of the tables. */
        TREAT_AS("treat-as"),
        /** A fact the file did not state, or stated wrongly, as {@code field=value}. */
        STATE("state"),
        /** The document was seen, and is of this kind of evidence. */
        EVIDENCE_SEEN("evidence-seen"),
        /** Its VAT is not reclaimed. */
        DISALLOW("disallow"),
        /** It is the same as another entry, which alone counts. */
        DUPLICATE_OF("duplicate-of"),
        /** The question is known and left as it is: what the tables did meanwhile stands. */
        SET_ASIDE("set-aside"),
        /** An earlier decision no longer holds. */
        UNDO("undo");

        private final String code;

        Action(String code) {
            this.code = code;
        }

        @Override
        public String code() {
            return code;
        }
    }
}
