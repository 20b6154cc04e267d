package quarterfold.intake;

import static java.util.stream.Collectors.joining;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * What a person wrote into a layout that learning does not find by itself: it is kept when the
 * report is learned again.
 */
final class HandWritten {
    private static final List<String> KEYS =
            List.of("currency", "constants", "optional", "payout", "repeats", "tables_below");

    /** Whether the report reads no worse by a layout that is sound. */
    interface Fit {
        boolean fits(Layout layout) throws BadFile, IOException;
    }

    /**
     * The learned layout and what stays of the one before.
     *
     * @param yaml all of it
     * @param added what stays alone, behind what was learned
     * @param notes what stays and what does not, for a person
     */
    record Kept(String yaml, String added, List<String> notes) {}

    private HandWritten() {}

    /**
     * The learned layout with what the one before says besides. What no longer fits is left as a
     * comment.
     *
     * @param file the layout file's name
     */
    static Kept keep(String file, String before, String learned, Fit fit)
            throws BadFile, IOException {
        String kept = learned;
        List<String> notes = new ArrayList<>();
        for (String key : KEYS) {
            List<String> block = block(before, key);
            if (block.isEmpty() || !block(learned, key).isEmpty()) {
                continue;
            }
            String with = kept + "\n# Kept from the layout as it was.\n" + text(block, "");
            boolean fits = isSound(file, with, fit);
            kept =
                    fits
                            ? with
                            : kept
                                    + "\n# Not kept: it does not fit what was learned.\n"
                                    + text(block, "# ");
            notes.add(
                    (fits
                                    ? "kept from the layout as it was: %s"
                                    : "not kept from the layout as it was, for it does not fit this report: %s")
                            .formatted(
                                    block.stream()
                                            .map(String::strip)
                                            .filter(line -> !line.isEmpty())
                                            .collect(joining(" "))));
        }
        return new Kept(kept, kept.substring(learned.length()), List.copyOf(notes));
    }

    private static String text(List<String> block, String before) {
        StringBuilder text = new StringBuilder();
        block.forEach(line -> text.append((before + line).stripTrailing()).append('\n'));
        return text.toString();
    }

    static boolean isSound(String file, String yaml, Fit fit) throws BadFile, IOException {
        Problems problems = new Problems();
        Layout layout = LayoutReader.read(file, yaml, problems);
        return problems.none() && fit.fits(layout);
    }

    /** The lines of a key and of what is under it; none where there is no such key. */
    static List<String> block(String yaml, String key) {
        List<String> block = new ArrayList<>();
        Pattern starts = Pattern.compile("[\"']?" + key + "[\"']?\\s*:.*");
        for (String line : yaml.lines().toList()) {
            boolean top = !line.isBlank() && !line.startsWith(" ") && !line.startsWith("#");
            boolean item = line.startsWith("- ");
            if (top && !item && !block.isEmpty()) {
                break;
            }
            if (!block.isEmpty() || starts.matcher(line).matches()) {
                block.add(line);
            }
        }
        while (!block.isEmpty()) {
            String last = block.get(block.size() - 1);
            if (!last.isBlank() && !last.startsWith("#")) {
                break;
            }
            block.remove(block.size() - 1);
        }
        return block;
    }
}
