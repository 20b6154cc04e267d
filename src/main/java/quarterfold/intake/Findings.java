package quarterfold.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What learning a report has found so far: what is proved, what does not tie, what is open. */
final class Findings {
    private final Map<String, String> answers;
    private final List<String> proofs = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private final List<String> faults = new ArrayList<>();
    private final Map<String, Question> open = new LinkedHashMap<>();
    private boolean unsound;

    Findings(Map<String, String> answers) {
        this.answers = answers;
    }

    void prove(String proof) {
        proofs.add(proof);
    }

    /** Something a person should know that is neither a proof nor a fault. */
    void note(String note) {
        notes.add(note);
    }

    /** Something that does not tie; the layout itself may be right. */
    void fault(String fault) {
        faults.add(fault);
    }

    /** Something because of which there is no layout to be had. */
    void unsound(String fault) {
        faults.add(fault);
        unsound = true;
    }

    /** The person's answer, or nothing, in which case the question is open. */
    Optional<String> ask(Question question) {
        Optional<String> answer = Optional.ofNullable(answers.get(question.id()));
        boolean fits =
                answer.filter(a -> question.answers().isEmpty() || question.answers().contains(a))
                        .isPresent();
        if (fits) {
            return answer;
        }
        open.put(question.id(), question);
        return Optional.empty();
    }

    /** An answer given without its having been asked, such as a column's role. */
    Optional<String> answer(String id) {
        return Optional.ofNullable(answers.get(id));
    }

    List<String> proofs() {
        return List.copyOf(proofs);
    }

    List<String> notes() {
        return List.copyOf(notes);
    }

    List<String> faults() {
        return List.copyOf(faults);
    }

    List<Question> open() {
        return List.copyOf(open.values());
    }

    /** Whether nothing stands in the way of a layout, even if something is open. */
    boolean canBeWritten() {
        return !unsound && open.values().stream().noneMatch(Question::blocking);
    }
}
