package quarterfold.intake;

import java.util.ArrayList;
import java.util.List;

/** The problems found so far: all are counted, the first 1,000 are kept. */
final class Problems {
    static final int KEPT = 1_000;

    private final List<Problem> kept = new ArrayList<>();
    private long count;

    void add(Problem problem) {
        count++;
        if (kept.size() < KEPT) {
            kept.add(problem);
        }
    }

    void addAll(Problems others) {
        others.kept.forEach(this::add);
        count += others.more();
    }

    boolean none() {
        return count == 0;
    }

    long count() {
        return count;
    }

    List<Problem> kept() {
        return List.copyOf(kept);
    }

    /** How many were found beyond those kept. */
    long more() {
        return count - kept.size();
    }
}
