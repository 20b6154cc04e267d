package quarterfold.intake;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** Gathers what else an invoice says, as {@code name: text}. */
final class InvoiceNotes {
    private InvoiceNotes() {}

    /** Adds the texts that are there, each after the other; none, where there is none. */
    static void add(List<String> notes, String name, String... texts) {
        String all =
                Arrays.stream(texts).filter(t -> !t.isEmpty()).collect(Collectors.joining(" "));
        if (!all.isEmpty()) {
            notes.add(name + ": " + all);
        }
    }
}
