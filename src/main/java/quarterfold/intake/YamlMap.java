package quarterfold.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import quarterfold.ledger.YamlNodes;

/**
 * A mapping of a YAML file, read as texts with their lines. What is not as it should be becomes a
 * problem with its line and key, and reading goes on with the empty text, list or mapping.
 */
final class YamlMap {
    private final String file;
    private final Problems problems;
    private final String path;
    private final int line;
    private final Map<String, Node> values = new LinkedHashMap<>();
    private final Map<String, Integer> lines = new LinkedHashMap<>();

    private YamlMap(String file, Problems problems, String path, int line) {
        this.file = file;
        this.problems = problems;
        this.path = path;
        this.line = line;
    }

    /** The one mapping a file is; empty, with a problem, where the text is not that. */
    static YamlMap of(String file, String text, Problems problems) {
        YamlMap map = new YamlMap(file, problems, "", 1);
        try {
            Node node = YamlNodes.of(file, text).orElse(null);
            if (node instanceof MappingNode mapping) {
                map.fill(mapping);
            } else {
                problems.add(
                        new Problem(
                                file + ":1",
                                "",
                                "found no keys; expected keys and values, such as layout: my-report"));
            }
        } catch (YamlEngineException e) {
            YamlNodes.NotYaml why = YamlNodes.notYaml(e);
            problems.add(
                    new Problem(
                            file + why.at(),
                            "",
                            "found text that is not YAML (%s); expected keys and values, such as layout: my-report"
                                    .formatted(why.problem())));
        }
        return map;
    }

    private void fill(MappingNode mapping) {
        for (NodeTuple tuple : mapping.getValue()) {
            int at = line(tuple.getKeyNode());
            if (!(tuple.getKeyNode() instanceof ScalarNode key)) {
                problem(at, "", "found a key that is not a text; expected a text, such as layout");
            } else if (values.containsKey(key.getValue())) {
                problem(
                        at,
                        key.getValue(),
                        "found the key again, first on line %d; expected it once"
                                .formatted(lines.get(key.getValue())));
            } else {
                values.put(key.getValue(), tuple.getValueNode());
                lines.put(key.getValue(), at);
            }
        }
    }

    private static int line(Node node) {
        return node.getStartMark().map(mark -> mark.getLine() + 1).orElse(1);
    }

    /** The line the mapping starts on, from 1. */
    int line() {
        return line;
    }

    boolean has(String key) {
        return values.containsKey(key);
    }

    Set<String> keys() {
        return values.keySet();
    }

    /** Reports every key that is not one of these. */
    void known(String... keys) {
        List<String> known = List.of(keys);
        for (String key : values.keySet()) {
            if (!known.contains(key)) {
                problem(
                        key,
                        "found a key that means nothing here; expected one of %s, such as %s"
                                .formatted(String.join(", ", known), known.get(0)));
            }
        }
    }

    boolean isMap(String key) {
        return values.get(key) instanceof MappingNode;
    }

    Optional<String> text(String key) {
        if (!values.containsKey(key)) {
            return Optional.empty();
        }
        if (values.get(key) instanceof ScalarNode scalar) {
            return Optional.of(scalar.getValue());
        }
        problem(key, "found a list or a mapping; expected a text, such as " + key + ": text");
        return Optional.empty();
    }

    /** The text, which must be there and not empty; {@code example} stands in for it. */
    String required(String key, String example) {
        Optional<String> text = text(key);
        if ((text.isEmpty() && !has(key)) || text.filter(String::isBlank).isPresent()) {
            problem(key, "found nothing; expected a text, such as %s: %s".formatted(key, example));
        }
        return text.filter(t -> !t.isBlank()).orElse(example);
    }

    /** A text or a list of texts. */
    List<String> texts(String key) {
        Node node = values.get(key);
        if (node instanceof ScalarNode scalar) {
            return List.of(scalar.getValue());
        }
        List<String> texts = new ArrayList<>();
        if (node instanceof SequenceNode sequence) {
            for (Node each : sequence.getValue()) {
                if (each instanceof ScalarNode scalar) {
                    texts.add(scalar.getValue());
                } else {
                    problem(key, "found a list of lists; expected texts, such as [a, b]");
                }
            }
        } else if (node != null) {
            problem(key, "found a mapping; expected a text or a list of texts, such as [a, b]");
        }
        return texts;
    }

    YamlMap map(String key) {
        Node node = values.get(key);
        YamlMap map = new YamlMap(file, problems, under(key), lines.getOrDefault(key, line));
        if (node instanceof MappingNode mapping) {
            map.fill(mapping);
        } else if (node != null) {
            problem(key, "found a text or a list; expected a mapping, such as {key: value}");
        }
        return map;
    }

    /** A list of mappings. */
    List<YamlMap> maps(String key) {
        Node node = values.get(key);
        List<YamlMap> maps = new ArrayList<>();
        if (node instanceof SequenceNode sequence) {
            for (Node each : sequence.getValue()) {
                YamlMap map = new YamlMap(file, problems, under(key), line(each));
                if (each instanceof MappingNode mapping) {
                    map.fill(mapping);
                    maps.add(map);
                } else {
                    map.problem(
                            map.line,
                            "",
                            "found a text or a list; expected a mapping, such as {key: value}");
                }
            }
        } else if (node != null) {
            problem(key, "found a text or a mapping; expected a list, such as - {key: value}");
        }
        return maps;
    }

    /** A list of mappings, of which a text is one with this key alone. */
    List<YamlMap> maps(String key, String plain) {
        if (!(values.get(key) instanceof SequenceNode sequence)) {
            return maps(key);
        }
        List<YamlMap> maps = new ArrayList<>();
        for (Node each : sequence.getValue()) {
            YamlMap map = new YamlMap(file, problems, under(key), line(each));
            if (each instanceof MappingNode mapping) {
                map.fill(mapping);
            } else {
                map.values.put(plain, each);
                map.lines.put(plain, line(each));
            }
            maps.add(map);
        }
        return maps;
    }

    void wrong(String key, String found, String expected) {
        problem(key, "found " + Problem.quoted(found) + "; expected " + expected);
    }

    void problem(String key, String fault) {
        problem(lines.getOrDefault(key, line), key, fault);
    }

    private void problem(int at, String key, String fault) {
        problems.add(new Problem(file + ":" + at, key.isEmpty() ? path : under(key), fault));
    }

    private String under(String key) {
        return path.isEmpty() ? key : path + "." + key;
    }
}
