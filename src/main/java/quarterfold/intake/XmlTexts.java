package quarterfold.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The texts of a few elements of an XML file by their paths of local names, such as {@code
 * RmtInf/Ustrd}; of an amount's currency, {@code Amt@Ccy}.
 */
final class XmlTexts {
    /** Far beyond one entry or one transaction; what is larger is no longer one. */
    private static final int MOST = 2_000_000;

    static final XmlTexts NONE = new XmlTexts();

    private final Map<String, List<String>> texts = new LinkedHashMap<>();
    private int characters;

    /** What is in the element the file stands at, under paths within it; moves to its end. */
    static XmlTexts within(XmlPull xml) throws BadFile {
        XmlTexts texts = new XmlTexts();
        texts.add(xml, xml.name().length() + 1);
        return texts;
    }

    /**
     * Adds what is in the element the file stands at, under paths from its own name; moves to its
     * end.
     */
    void add(XmlPull xml) throws BadFile {
        add(xml, 0);
    }

    private void add(XmlPull xml, int from) throws BadFile {
        xml.texts(
                (whole, text) -> {
                    String path = whole.substring(Math.min(from, whole.length()));
                    characters += path.length() + text.length();
                    if (characters > MOST) {
                        throw xml.bad(
                                "found an element with more than %,d characters in it; expected fewer"
                                        .formatted(MOST));
                    }
                    texts.computeIfAbsent(path, p -> new ArrayList<>(1)).add(text);
                });
    }

    /** All texts at a path, in the file's order. */
    List<String> all(String path) {
        return texts.getOrDefault(path, List.of());
    }

    /** The first text at the first of the paths that has one; empty where none has. */
    String first(String... paths) {
        for (String path : paths) {
            List<String> found = all(path);
            if (!found.isEmpty()) {
                return found.get(0);
            }
        }
        return "";
    }
}
