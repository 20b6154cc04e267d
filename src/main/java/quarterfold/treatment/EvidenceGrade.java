package quarterfold.treatment;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import quarterfold.ledger.Coded;

/**
 * How good the document behind a purchase or an import is, and why. VAT is reclaimed only on one
 * that is full or enough, but for a postponed import, which may be estimated until its statement is
 * held.
 *
 * @param reasons what was weighed, in words, each a line; at least one
 */
public record EvidenceGrade(Grade grade, List<String> reasons) {

    /** The grade in a word. */
    public enum Grade implements Coded {
        /** All that can be entered of what the document must show is entered, and it holds. */
        FULL("full"),
        /** Nothing speaks against it; something it must show is not entered. */
        ENOUGH("enough"),
        /** Something speaks against it, and a person must look. */
        IN_QUESTION("in question"),
        /** No document that supports a reclaim. */
        NONE("none");

        private final String code;

        Grade(String code) {
            this.code = code;
        }

        @Override
        public String code() {
            return code;
        }

        /** Whether VAT may be reclaimed on it. */
        public boolean supports() {
            return this == FULL || this == ENOUGH;
        }
    }

    public EvidenceGrade {
        reasons = List.copyOf(reasons);
    }

    /** As a close keeps it: the grade's word, then a reason a line. */
    public static String text(Optional<EvidenceGrade> grade) {
        return grade.map(g -> g.grade.code() + "\n" + String.join("\n", g.reasons)).orElse("");
    }

    /** The grade of a text that {@link #text} wrote. */
    public static Optional<EvidenceGrade> parse(String text) {
        if (text.isEmpty()) {
            return Optional.empty();
        }
        List<String> lines = Arrays.asList(text.split("\n", -1));
        return Coded.find(Grade.class, lines.get(0))
                .map(grade -> new EvidenceGrade(grade, lines.subList(1, lines.size())));
    }
}
