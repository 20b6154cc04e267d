package quarterfold.intake;

import java.util.Optional;
import java.util.Set;

/**
 * What becomes of rows that an earlier file of the same layout has too.
 *
 * @param ignored columns that number an export's own rows and say nothing of the row: not compared
 * @param looks whether rows that make the same entries in other words are looked for too
 */
record RepeatRule(Meeting meeting, Set<String> ignored, boolean looks) {

    /** Files of which each row is its own. */
    static final RepeatRule EACH = new RepeatRule(Meeting.EACH, Set.of(), false);

    /** As a learned layout says it, where it says any. */
    Optional<String> line() {
        return ignored.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        "repeats: {ignore: %s}"
                                .formatted(LayoutWriter.list(ignored.stream().sorted().toList())));
    }

    /** How rows that say the same meet. */
    enum Meeting {
        /** As multisets: as often as the file that has them most often. */
        ONCE,
        /** They are all entered, and a person is asked. */
        ASK,
        /** They are all entered. */
        EACH
    }
}
