package quarterfold.intake;

import java.util.List;

/**
 * Something about a report that only a person can say.
 *
 * @param id names it among those of the file, such as {@code kind/Type: Adjustment}; an answer
 *     gives it back
 * @param text what was found, and what is asked
 * @param answers what may be answered; empty where any text may
 * @param blocking whether there is no layout without it; else the layout can ask it at each import
 */
public record Question(String id, String text, List<String> answers, boolean blocking) {
    public Question {
        answers = List.copyOf(answers);
    }
}
