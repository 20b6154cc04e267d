package quarterfold.intake;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** Gathers what else an invoice says, as {@code name: text}. */
final class InvoiceNotes {
    private static final int LONGEST = 300;

    private InvoiceNotes() {}

    /** A text as far as it is short enough to read. */
    static String cut(String text) {
        return text.codePointCount(0, text.length()) <= LONGEST
                ? text
                : text.substring(0, text.offsetByCodePoints(0, LONGEST)) + "…";
    }

    /** Adds the texts that are there, each after the other; none, where there is none. */
    static void add(List<String> notes, String name, String... texts) {
        String all =
                Arrays.stream(texts).filter(t -> !t.isEmpty()).collect(Collectors.joining(" "));
        if (!all.isEmpty()) {
            notes.add(name + ": " + cut(all));
        }
    }
}
