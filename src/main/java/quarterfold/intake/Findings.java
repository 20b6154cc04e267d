package quarterfold.intake;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicBoolean;

/** What learning a report has found so far: what is proved, what does not tie, what is open. */
final class Findings {
    /** What is asked once for a file, however many shapes its rows have. */
    private static final Set<String> SHARED =
            Set.of("dates", "decimal-mark", "unit", "currency", "channel");

    private final Map<String, String> answers;
    private final Map<String, String> earlier;
    private final String scope;
    private final String label;
    private final List<String> proofs;
    private final List<String> notes;
    private final List<String> faults;
    private final Map<String, Question> open;
    private final AtomicBoolean unsound;
    private final Set<String> used;
    private final Set<String> settled;

    Findings(Map<String, String> answers) {
        this(answers, Map.of());
    }

    /** {@code earlier}: answers of the layout as it was, to questions that are not answered. */
    Findings(Map<String, String> answers, Map<String, String> earlier) {
        this(answers, earlier, new HashSet<>());
    }

    private Findings(Map<String, String> answers, Map<String, String> earlier, Set<String> used) {
        this.answers = answers;
        this.earlier = earlier;
        this.used = used;
        scope = "";
        label = "";
        proofs = new ArrayList<>();
        notes = new ArrayList<>();
        faults = new ArrayList<>();
        open = new LinkedHashMap<>();
        unsound = new AtomicBoolean();
        settled = new LinkedHashSet<>();
    }

    /** Those of {@code whole}, under words of their own. */
    private Findings(Findings whole, String scope, String label) {
        answers = whole.answers;
        earlier = whole.earlier;
        this.scope = scope.isEmpty() ? "" : scope + "/";
        this.label = label.isEmpty() ? "" : label + ": ";
        proofs = whole.proofs;
        notes = whole.notes;
        faults = whole.faults;
        open = whole.open;
        unsound = whole.unsound;
        used = whole.used;
        settled = whole.settled;
    }

    /**
     * The same findings, for the rows of one shape.
     *
     * @param scope stands before the ids of its own questions
     * @param label stands before what it says
     */
    Findings of(String scope, String label) {
        return new Findings(this, scope, label);
    }

    /** With the same answers, and nothing found. */
    Findings afresh() {
        return new Findings(answers, earlier, used);
    }

    void prove(String proof) {
        proofs.add(label + proof);
    }

    /** Something a person should know that is neither a proof nor a fault. */
    void note(String note) {
        notes.add(label + note);
    }

    /** Something that does not tie; the layout itself may be right. */
    void fault(String fault) {
        faults.add(label + fault);
    }

    /** Something because of which there is no layout to be had. */
    void unsound(String fault) {
        faults.add(label + fault);
        unsound.set(true);
    }

    /** The person's answer, or nothing, in which case the question is open. */
    Optional<String> ask(Question question) {
        String id = id(question.id());
        Optional<String> answer = Optional.ofNullable(answers.get(id));
        boolean fits =
                answer.filter(a -> question.answers().isEmpty() || question.answers().contains(a))
                        .isPresent();
        if (fits) {
            used.add(id);
            return answer;
        }
        used.remove(id);
        Optional<String> before =
                Optional.ofNullable(earlier.get(id)).filter(question.answers()::contains);
        if (answer.isEmpty() && before.isPresent()) {
            String note = "answered by the layout as it was: %s=%s".formatted(id, before.get());
            settled.add(note);
            return before;
        }
        String text = SHARED.contains(id) ? question.text() : label + question.text();
        open.put(id, new Question(id, text, question.answers(), question.blocking()));
        return Optional.empty();
    }

    /** A question is answered after all, by the layout as it was. */
    void close(String id) {
        open.remove(id(id));
    }

    /** An answer given without its having been asked, such as a column's role. */
    Optional<String> answer(String id) {
        Optional<String> answer = Optional.ofNullable(answers.get(id(id)));
        answer.ifPresent(a -> used.add(id(id)));
        return answer;
    }

    /** An answer of those that may be given, without its having been asked; another is as none. */
    Optional<String> answer(String id, Collection<String> answers) {
        Optional<String> answer = answer(id).filter(answers::contains);
        if (answer.isEmpty()) {
            used.remove(id(id));
        }
        return answer;
    }

    /** The ids of the answers that were of use. */
    Set<String> used() {
        return Set.copyOf(used);
    }

    /** Kinds go by the words of rows, and answers to an import's questions know no shapes. */
    String id(String id) {
        return SHARED.contains(id) || id.startsWith("kind/") ? id : scope + id;
    }

    List<String> proofs() {
        return List.copyOf(proofs);
    }

    List<String> notes() {
        return List.copyOf(notes);
    }

    /** Questions that the layout as it was answers. */
    List<String> settled() {
        return List.copyOf(settled);
    }

    List<String> faults() {
        return List.copyOf(faults);
    }

    List<Question> open() {
        return List.copyOf(open.values());
    }

    /** Whether nothing stands in the way of a layout, even if something is open. */
    boolean canBeWritten() {
        return !unsound.get() && open.values().stream().noneMatch(Question::blocking);
    }
}
