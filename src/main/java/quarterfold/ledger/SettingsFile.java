package quarterfold.ledger;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Month;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Settings as {@code book.yaml}: written by filling a commented template, read strictly. */
final class SettingsFile {
    private static final String TEMPLATE = "/quarterfold/templates/book/book.yaml";
    private static final Pattern PLACE = Pattern.compile("\\$\\{(\\w+)}");

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
        Map<String, String> values =
                Map.ofEntries(
                        Map.entry("name", quoted(settings.name())),
                        Map.entry("country", quoted(settings.country())),
                        Map.entry("vat_number", quoted(settings.vatNumber())),
                        Map.entry("registered_from", settings.registeredFrom().toString()),
                        Map.entry("period_ends", months(settings)),
                        Map.entry("scheme", quoted(settings.scheme())),
                        Map.entry("zone", quoted(settings.zone().getId())),
                        Map.entry("currency", quoted(settings.currency())),
                        Map.entry("rounding", settings.roundingPerLine() ? "per-line" : "per-box"),
                        Map.entry("northern_ireland", settings.northernIreland() ? "yes" : "no"),
                        Map.entry("stock", quoted(settings.stock())),
                        Map.entry("choices", choices(settings)));
        String text =
                PLACE.matcher(template())
                        .replaceAll(
                                place ->
                                        Matcher.quoteReplacement(
                                                values.getOrDefault(place.group(1), "")));
        read("", text);
        return text;
    }

    private static String months(Settings settings) {
        return settings.periodEnds().stream()
                .map(Month::getValue)
                .map(String::valueOf)
                .collect(Collectors.joining(", ", "[", "]"));
    }

    private static String choices(Settings settings) {
        return settings.choices().isEmpty()
                ? "{}"
                : new TreeMap<>(settings.choices())
                        .entrySet().stream()
                                .map(c -> quoted(c.getKey()) + ": " + quoted(c.getValue()))
                                .collect(Collectors.joining("\n  ", "\n  ", ""));
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
