package quarterfold.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** An element of an XML document, by its local name, with its place in the file. */
final class XmlNode {
    private final String path;
    private final String name;
    private final int line;
    private final Map<String, String> attributes = new LinkedHashMap<>(2);
    private final List<XmlNode> children = new ArrayList<>(2);
    private String text = "";

    /**
     * @param path the names of the elements it is in below the root, and its own; empty for the
     *     root
     * @param line of the file, from 1
     */
    XmlNode(String path, String name, int line) {
        this.path = path;
        this.name = name;
        this.line = line;
    }

    String name() {
        return name;
    }

    String path() {
        return path;
    }

    int line() {
        return line;
    }

    /** Its own text, each run of white space and control characters a single space. */
    String text() {
        return text;
    }

    void write(String whole) {
        text = whole;
    }

    void attribute(String key, String value) {
        attributes.put(key, value);
    }

    void add(XmlNode child) {
        children.add(child);
    }

    /** An attribute's text; empty where it has none of the name. */
    String attribute(String key) {
        return attributes.getOrDefault(key, "");
    }

    /** The elements a path leads to, such as {@code Party/PostalAddress}. */
    Stream<XmlNode> all(String relative) {
        Stream<XmlNode> found = Stream.of(this);
        for (String step : relative.split("/", -1)) {
            found = found.flatMap(node -> node.children.stream()).filter(c -> c.name.equals(step));
        }
        return found;
    }

    /** The first element a path leads to. */
    Optional<XmlNode> first(String relative) {
        return all(relative).findFirst();
    }

    /** The text of the first element a path leads to; empty where there is none. */
    String text(String relative) {
        return first(relative).map(XmlNode::text).orElse("");
    }
}
