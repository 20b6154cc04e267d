package quarterfold.ledger;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;

/** The settings of one level of a settings file, each by its name. */
final class YamlSettings {

    static final String DAY = "year-month-day, such as 2024-01-01";

    private final YamlFile yaml;
    private final String within;
    private final MappingNode map;
    private final Map<String, Node> settings = new LinkedHashMap<>();

    /**
     * @param within what the names stand under in problems: nothing, or such as {@code
     *     annual_accounting.}
     * @param names every name that may stand there
     */
    YamlSettings(YamlFile yaml, String within, MappingNode map, List<String> names) {
        this.yaml = yaml;
        this.within = within;
        this.map = map;
        for (NodeTuple pair : map.getValue()) {
            String key = YamlFile.text(pair.getKeyNode()).orElse("?");
            if (!names.contains(key)) {
                yaml.problem(
                        pair.getKeyNode(),
                        within + key,
                        "found a setting this program does not know; expected one of "
                                + String.join(", ", names));
            } else if (settings.putIfAbsent(key, pair.getValueNode()) != null) {
                yaml.problem(
                        pair.getKeyNode(),
                        within + key,
                        "found a second time; remove one of the two");
            }
        }
    }

    Optional<Node> node(String key) {
        return Optional.ofNullable(settings.get(key));
    }

    /** What a setting says; nothing, and a problem, where it is missing or says something else. */
    <T> Optional<T> required(String key, String expected, Function<String, Optional<T>> parse) {
        return parsed(settings.get(key), key, expected, parse);
    }

    /** What a setting says; nothing where it is missing, and a problem where it is refused. */
    <T> Optional<T> optional(String key, String expected, Function<String, Optional<T>> parse) {
        return node(key).flatMap(node -> parsed(node, key, expected, parse));
    }

    Optional<LocalDate> day(String key) {
        return required(key, DAY, YamlSettings::parsedDay);
    }

    Optional<LocalDate> optionalDay(String key) {
        return optional(key, DAY, YamlSettings::parsedDay);
    }

    private <T> Optional<T> parsed(
            @Nullable Node node, String key, String expected, Function<String, Optional<T>> parse) {
        Optional<T> value = YamlFile.text(node).flatMap(parse);
        if (value.isEmpty()) {
            yaml.unexpected(node, within + key, expected);
        }
        return value;
    }

    /** Notes what is wrong with a setting that is well written in itself. */
    void problem(String key, String problem) {
        yaml.problem(settings.getOrDefault(key, map), within + key, problem);
    }

    private static Optional<LocalDate> parsedDay(String text) {
        return of(LocalDate::parse, text);
    }

    /** What {@code parse} makes of the text; nothing where it refuses. */
    static <T> Optional<T> of(Function<String, T> parse, String text) {
        try {
            return Optional.of(parse.apply(text));
        } catch (IllegalArgumentException | ArithmeticException | DateTimeException refused) {
            return Optional.empty();
        }
    }
}
