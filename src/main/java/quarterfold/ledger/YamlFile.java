package quarterfold.ledger;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/**
 * A small YAML file of settings and what is wrong with it. Values are taken as the texts that are
 * written, so {@code no} is a country or an answer as its setting has it; no object is ever made.
 */
final class YamlFile {
    private static final String SHAPE = "expected 'setting: value' lines, such as country: GB";

    private final String place;
    private final String text;
    private final List<String> problems = new ArrayList<>();

    /** {@code place} is what problems call the file; nothing for settings that have none yet. */
    YamlFile(String place, String text) {
        this.place = place;
        this.text = text;
    }

    /** The file's settings. Refuses a file that has none. */
    MappingNode root() {
        try {
            Optional<Node> root = YamlNodes.of(place, text);
            if (root.isPresent() && root.get() instanceof MappingNode map) {
                return map;
            }
            throw bad(place + ": found no settings; " + SHAPE);
        } catch (YamlEngineException e) {
            YamlNodes.NotYaml why = YamlNodes.notYaml(e);
            throw bad(
                    "%s%s: found text that is not YAML (%s); %s"
                            .formatted(place, why.at(), why.problem(), SHAPE));
        }
    }

    /** The text of a plain or quoted value; nothing for a list, a map or a missing value. */
    static Optional<String> text(@Nullable Node node) {
        return node instanceof ScalarNode scalar
                ? Optional.of(scalar.getValue())
                : Optional.empty();
    }

    /** Notes a value, or the lack of one, that is not what was expected. */
    void unexpected(@Nullable Node node, String key, String expected) {
        if (node == null) {
            problems.add(at(Optional.empty(), key) + "found nothing; expected " + expected);
        } else {
            problem(node, key, "found %s; expected %s".formatted(found(node), expected));
        }
    }

    void problem(Node node, String key, String problem) {
        problems.add(at(node.getStartMark(), key) + problem);
    }

    private String found(Node node) {
        return text(node).map(t -> "'" + t + "'").orElseGet(() -> "'" + source(node) + "'");
    }

    /** The characters of the file that make a list or a map. */
    private String source(Node node) {
        int from = node.getStartMark().map(Mark::getIndex).orElse(0);
        int to = node.getEndMark().map(Mark::getIndex).orElse(from);
        int[] points = text.codePoints().toArray();
        return new String(points, from, Math.min(to, points.length) - from)
                .strip()
                .replaceAll("\\s+", " ");
    }

    private String at(Optional<Mark> mark, String key) {
        return (place.isEmpty() ? "" : place + line(mark) + " ") + "[" + key + "]: ";
    }

    private static String line(Optional<Mark> mark) {
        return mark.map(m -> ":" + (m.getLine() + 1)).orElse("");
    }

    /** Refuses the file with every problem found in it, one a line. */
    void refuse() {
        if (!problems.isEmpty()) {
            throw bad(String.join("\n", problems));
        }
    }

    private static LedgerException bad(String message) {
        return new LedgerException(LedgerException.Fault.BAD_INPUT, message);
    }
}
