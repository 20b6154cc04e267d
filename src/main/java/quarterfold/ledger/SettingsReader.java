package quarterfold.ledger;

import java.time.LocalDate;
import java.time.Month;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/** Reads one settings file: every setting, every problem, each with its line. */
final class SettingsReader {
    private static final List<String> NAMES =
            List.of(
                    "name",
                    "country",
                    "vat_number",
                    "registered_from",
                    "period_ends",
                    "scheme",
                    "zone",
                    "currency",
                    "rounding",
                    "northern_ireland",
                    "stock",
                    "choices");
    private static final String COUNTRY = "two capital letters, ISO 3166";

    private final YamlFile yaml;
    private final Map<String, Node> settings = new LinkedHashMap<>();

    SettingsReader(String place, String text) {
        yaml = new YamlFile(place, text);
    }

    Settings read() {
        yaml.root().ifPresent(this::collect);
        Optional<String> name =
                text("name", "the name of the business", "Fernmoor Crafts", SettingsReader::filled);
        Optional<String> country = text("country", COUNTRY, "GB", SettingsReader::country);
        Optional<String> vatNumber =
                text("vat_number", "the VAT number as written", "GB101747696", Optional::of);
        Optional<LocalDate> from =
                text(
                        "registered_from",
                        "year-month-day",
                        "2024-01-01",
                        t -> of(LocalDate::parse, t));
        Optional<List<Month>> ends = periodEnds();
        Optional<String> scheme =
                required(
                        "scheme",
                        "'standard': the flat rate, cash and annual schemes are not worked out yet",
                        t -> Optional.of(t).filter("standard"::equals));
        Optional<ZoneId> zone =
                text("zone", "a time zone", "Europe/London", t -> of(ZoneId::of, t));
        Optional<String> currency =
                text(
                        "currency",
                        "three capital letters, ISO 4217",
                        "GBP",
                        t -> of(c -> Currency.getInstance(c).getCurrencyCode(), t));
        Optional<Boolean> perLine = choice("rounding", "per-line", "per-box");
        Optional<Boolean> northern = choice("northern_ireland", "yes", "no");
        Optional<String> stock =
                text(
                        "stock",
                        COUNTRY + ", or XI for Northern Ireland",
                        "GB",
                        t -> t.equals("XI") ? Optional.of(t) : country(t));
        Map<String, String> choices = choices();
        yaml.refuse();
        return new Settings(
                name.orElseThrow(),
                country.orElseThrow(),
                vatNumber.orElseThrow(),
                from.orElseThrow(),
                ends.orElseThrow(),
                scheme.orElseThrow(),
                zone.orElseThrow(),
                currency.orElseThrow(),
                perLine.orElseThrow(),
                northern.orElseThrow(),
                stock.orElseThrow(),
                choices);
    }

    private void collect(MappingNode root) {
        for (NodeTuple pair : root.getValue()) {
            String key = YamlFile.text(pair.getKeyNode()).orElse("?");
            if (!NAMES.contains(key)) {
                yaml.problem(
                        pair.getKeyNode(),
                        key,
                        "found a setting this program does not know; expected one of "
                                + String.join(", ", NAMES));
            } else if (settings.putIfAbsent(key, pair.getValueNode()) != null) {
                yaml.problem(pair.getKeyNode(), key, "found a second time; remove one of the two");
            }
        }
    }

    private <T> Optional<T> text(
            String key, String expected, String example, Function<String, Optional<T>> parse) {
        return required(key, expected + ", such as " + example, parse);
    }

    private <T> Optional<T> required(
            String key, String expected, Function<String, Optional<T>> parse) {
        Node node = settings.get(key);
        Optional<T> value = YamlFile.text(node).flatMap(parse);
        if (value.isEmpty()) {
            yaml.unexpected(node, key, expected);
        }
        return value;
    }

    private Optional<Boolean> choice(String key, String yes, String no) {
        return required(
                key,
                yes + " or " + no,
                t -> Optional.of(t).filter(List.of(yes, no)::contains).map(yes::equals));
    }

    private Optional<List<Month>> periodEnds() {
        Node node = settings.get("period_ends");
        List<Month> months = new ArrayList<>();
        if (node instanceof SequenceNode list) {
            for (Node month : list.getValue()) {
                YamlFile.text(month)
                        .flatMap(t -> of(n -> Month.of(Integer.parseInt(n)), t))
                        .filter(m -> months.isEmpty() || m.compareTo(last(months)) > 0)
                        .ifPresent(months::add);
            }
            if (!months.isEmpty() && months.size() == list.getValue().size()) {
                return Optional.of(months);
            }
        }
        yaml.unexpected(node, "period_ends", "months from 1 to 12, rising, such as [3, 6, 9, 12]");
        return Optional.empty();
    }

    private static Month last(List<Month> months) {
        return months.get(months.size() - 1);
    }

    private Map<String, String> choices() {
        String expected = "'name: choice' lines, such as deemed-supply-in-box-6: yes, or {}";
        Map<String, String> choices = new LinkedHashMap<>();
        if (!(settings.get("choices") instanceof MappingNode map)) {
            yaml.unexpected(settings.get("choices"), "choices", expected);
            return choices;
        }
        for (NodeTuple pair : map.getValue()) {
            Optional<String> name = YamlFile.text(pair.getKeyNode());
            Optional<String> choice = YamlFile.text(pair.getValueNode());
            if (name.isEmpty() || choice.isEmpty()) {
                yaml.unexpected(pair.getValueNode(), "choices", expected);
            } else if (choices.putIfAbsent(name.get(), choice.get()) != null) {
                yaml.problem(
                        pair.getKeyNode(),
                        "choices",
                        "found '%s' a second time; remove one of the two".formatted(name.get()));
            }
        }
        return choices;
    }

    private static Optional<String> filled(String text) {
        return Optional.of(text).filter(t -> !t.isBlank());
    }

    private static Optional<String> country(String text) {
        return Optional.of(text)
                .filter(Locale.getISOCountries(Locale.IsoCountryCode.PART1_ALPHA2)::contains);
    }

    /** What {@code parse} makes of the text; nothing where it refuses. */
    private static <T> Optional<T> of(Function<String, T> parse, String text) {
        try {
            return Optional.of(parse.apply(text));
        } catch (IllegalArgumentException | java.time.DateTimeException refused) {
            return Optional.empty();
        }
    }
}
