package quarterfold.ledger;

import java.time.ZoneId;
import java.util.Arrays;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;

/** Reads one settings file: every setting, every problem, each with its line. */
final class SettingsReader {
    private static final List<String> NAMES =
            Stream.of(
                            List.of("name", "country", "vat_number"),
                            PeriodsReader.NAMES,
                            List.of(
                                    SchemesReader.NAME,
                                    SchemesReader.SECTOR,
                                    "zone",
                                    "currency",
                                    "rounding",
                                    "northern_ireland",
                                    "stock",
                                    "pays_by",
                                    "choices"))
                    .flatMap(List::stream)
                    .toList();
    private static final PaymentMethod[] METHODS = PaymentMethod.values();
    private static final String PAYMENT =
            Arrays.stream(METHODS).map(PaymentMethod::code).collect(Collectors.joining(", "));
    private static final String COUNTRY = "two capital letters, ISO 3166";

    private final YamlFile yaml;

    SettingsReader(String place, String text) {
        yaml = new YamlFile(place, text);
    }

    Settings read() {
        YamlSettings settings = new YamlSettings(yaml, "", yaml.root(), NAMES);
        Optional<String> name =
                settings.required(
                        "name",
                        "the name of the business, such as Fernmoor Crafts",
                        SettingsReader::filled);
        Optional<String> country =
                settings.required("country", COUNTRY + ", such as GB", SettingsReader::country);
        Optional<String> vatNumber =
                settings.required(
                        "vat_number",
                        "the VAT number as written, such as GB101747696",
                        Optional::of);
        Optional<Periods> periods = new PeriodsReader(yaml, settings).read();
        Optional<Schemes> schemes = new SchemesReader(yaml, settings).read();
        Optional<ZoneId> zone =
                settings.required(
                        "zone",
                        "a time zone, such as Europe/London",
                        t -> YamlSettings.of(ZoneId::of, t));
        Optional<String> currency =
                settings.required(
                        "currency",
                        "three capital letters, ISO 4217, such as GBP",
                        t -> YamlSettings.of(c -> Currency.getInstance(c).getCurrencyCode(), t));
        Optional<Boolean> perLine = choice(settings, "rounding", "per-line", "per-box");
        Optional<Boolean> northern = choice(settings, "northern_ireland", "yes", "no");
        Optional<String> stock =
                settings.required(
                        "stock",
                        COUNTRY + ", or XI for Northern Ireland, such as GB",
                        t -> t.equals("XI") ? Optional.of(t) : country(t));
        Optional<PaymentMethod> paysBy =
                settings.optional(
                        "pays_by",
                        PAYMENT,
                        t -> Arrays.stream(METHODS).filter(m -> m.code().equals(t)).findFirst());
        Map<String, String> choices = choices(settings);
        periods.ifPresent(p -> schemes.ifPresent(s -> checkStart(settings, p, s)));
        yaml.refuse();
        return new Settings(
                name.orElseThrow(),
                country.orElseThrow(),
                vatNumber.orElseThrow(),
                periods.orElseThrow(),
                schemes.orElseThrow(),
                zone.orElseThrow(),
                currency.orElseThrow(),
                perLine.orElseThrow(),
                northern.orElseThrow(),
                stock.orElseThrow(),
                paysBy.orElse(PaymentMethod.FASTER_PAYMENT),
                choices);
    }

    private static void checkStart(YamlSettings settings, Periods periods, Schemes schemes) {
        if (schemes.from().firstKey().isAfter(periods.registeredFrom())) {
            settings.problem(
                    SchemesReader.NAME,
                    "found no scheme before %s; expected one from the registration on %s or earlier"
                            .formatted(schemes.from().firstKey(), periods.registeredFrom()));
        }
    }

    private static Optional<Boolean> choice(
            YamlSettings settings, String key, String yes, String no) {
        return settings.required(
                key,
                yes + " or " + no,
                t -> Optional.of(t).filter(List.of(yes, no)::contains).map(yes::equals));
    }

    private Map<String, String> choices(YamlSettings settings) {
        String expected = "'name: choice' lines, such as deemed-supply-in-box-6: yes, or {}";
        Map<String, String> choices = new LinkedHashMap<>();
        Optional<Node> node = settings.node("choices");
        if (!(node.orElse(null) instanceof MappingNode map)) {
            yaml.unexpected(node.orElse(null), "choices", expected);
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
}
