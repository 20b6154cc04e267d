package quarterfold.cli;

import java.util.List;
import java.util.Optional;
import quarterfold.intake.Learned;
import quarterfold.intake.Question;

/** Whether answers on the command line answer something: a slip would be passed over. */
final class AnswerCheck {
    /** So many letters may differ in an id that is misspelt. */
    private static final int SLIP = 2;

    private AnswerCheck() {}

    /**
     * What is wrong with the first answer that answers nothing. One to what was not asked so far,
     * because something else is open, may be right.
     *
     * @param given ids with their answers, as {@code dates=dd/MM/yyyy}
     */
    static Optional<String> wrong(List<String> given, Learned learned) {
        for (String text : given) {
            String id = id(text);
            if (learned.used().contains(id)) {
                continue;
            }
            for (Question question : learned.open()) {
                if (question.id().equals(id)) {
                    return Optional.of(
                            "--answer: found '%s'; expected one of %s, such as %s=%s"
                                    .formatted(
                                            text,
                                            String.join(", ", question.answers()),
                                            id,
                                            question.answers().get(0)));
                }
            }
            Optional<Question> near =
                    learned.open().stream().filter(q -> isSlip(id, q.id())).findFirst();
            if (near.isPresent()) {
                return Optional.of(
                        "--answer: found '%s'; expected the id of a question, such as %s"
                                .formatted(text, near.get().id()));
            }
            if (learned.yaml().isPresent()) {
                return Optional.of(
                        "--answer: found '%s', which answers no question about this file; expected %s"
                                .formatted(text, expected(learned.open())));
            }
        }
        return Optional.empty();
    }

    /** Answers that were of no use, because the question was not asked so far. */
    static List<String> unused(List<String> given, Learned learned) {
        return given.stream().filter(text -> !learned.used().contains(id(text))).toList();
    }

    private static String id(String text) {
        return text.substring(0, text.lastIndexOf('=')).strip();
    }

    private static String expected(List<Question> open) {
        return open.isEmpty()
                ? "none, since nothing is open"
                : "the id of one that is open, such as " + open.get(0).id();
    }

    /** Whether one text becomes the other by few letters put in, left out or changed. */
    private static boolean isSlip(String one, String other) {
        int[] row = new int[other.length() + 1];
        for (int j = 0; j < row.length; j++) {
            row[j] = j;
        }
        for (int i = 1; i <= one.length(); i++) {
            int corner = row[0];
            row[0] = i;
            for (int j = 1; j < row.length; j++) {
                boolean same = lower(one, i - 1) == lower(other, j - 1);
                int changed = corner + (same ? 0 : 1);
                corner = row[j];
                row[j] = Math.min(changed, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[other.length()] <= SLIP;
    }

    private static char lower(String text, int at) {
        return Character.toLowerCase(text.charAt(at));
    }
}
