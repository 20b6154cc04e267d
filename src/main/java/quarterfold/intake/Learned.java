package quarterfold.intake;

import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What learning a report came to.
 *
 * @param name of the layout
 * @param yaml the layout, where one can be offered
 * @param found how the file is written, and what each column is for, in words
 * @param proofs what holds on every row and for the whole file
 * @param notes what a person should know
 * @param faults what does not tie, row by row
 * @param open what a person must say
 * @param used ids of the answers that were of use
 * @param rows read in the trial
 * @param entries an import would make
 */
public record Learned(
        String name,
        Optional<String> yaml,
        List<String> found,
        List<String> proofs,
        List<String> notes,
        List<String> faults,
        List<Question> open,
        Set<String> used,
        long rows,
        long entries) {

    public Learned {
        found = List.copyOf(found);
        proofs = List.copyOf(proofs);
        notes = List.copyOf(notes);
        faults = List.copyOf(faults);
        open = List.copyOf(open);
        used = Set.copyOf(used);
    }

    /** Whether there is a layout, nothing is open, and everything ties. */
    public boolean isProved() {
        return yaml.isPresent() && open.isEmpty() && faults.isEmpty();
    }
}
