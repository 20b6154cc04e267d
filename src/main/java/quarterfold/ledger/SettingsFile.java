package quarterfold.ledger;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Settings as {@code book.yaml}: written by filling a commented template, read strictly. */
final class SettingsFile {
    private static final String TEMPLATE = "/quarterfold/templates/book/book.yaml";

    /** A line such as {@code name: ${}}, or {@code due: ${or an example}} where it may lack. */
    private static final Pattern PLACE = Pattern.compile("(?m)^(\\w+): \\$\\{(?:or (.+))?}$");

    private SettingsFile() {}

    /**
     * The settings in the text of a settings file.
     *
     * @param place what problems call the file
     * @throws LedgerException listing every problem, one a line
     */
    static Settings read(String place, String text) {
        return new SettingsReader(place, text).read();
    }

    /**
     * The text of a new settings file.
     *
     * @throws LedgerException if a setting would be refused when read
     */
    static String write(Settings settings) {
        Map<String, String> values = new SettingsText(settings).values();
        String text =
                PLACE.matcher(template())
                        .replaceAll(place -> Matcher.quoteReplacement(line(place, values)));
        read("", text);
        return text;
    }

    /** A setting's line; where it is not stated, its example as a comment. */
    private static String line(MatchResult place, Map<String, String> values) {
        String value = values.getOrDefault(place.group(1), "");
        String example = place.group(2);
        if (value.isEmpty() && example != null) {
            return "# %s: %s".formatted(place.group(1), example);
        }
        return "%s: %s".formatted(place.group(1), value);
    }

    /** A double-quoted YAML text: nothing in it can be taken for anything but text. */
    static String quoted(String text) {
        StringBuilder quoted = new StringBuilder("\"");
        text.codePoints()
                .forEach(
                        c -> {
                            if (c == '"' || c == '\\') {
                                quoted.append('\\').appendCodePoint(c);
                            } else if (Character.isLetterOrDigit(c)
                                    || c == ' '
                                    || (c > ' ' && c < 0x7f)) {
                                quoted.appendCodePoint(c);
                            } else {
                                quoted.append("\\U%08x".formatted(c));
                            }
                        });
        return quoted.append('"').toString();
    }

    private static String template() {
        try (InputStream in = SettingsFile.class.getResourceAsStream(TEMPLATE)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks " + TEMPLATE);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
