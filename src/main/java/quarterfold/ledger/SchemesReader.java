package quarterfold.ledger;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;

/**
 * Reads the accounting schemes: one word, or first days with a word each.
 *
 * <p>A retail scheme is refused: it is for a retailer who cannot account in the normal way (VAT
 * Regulations 1995 reg 67; VAT Notice 727), and one whose channels report each order can.
 */
final class SchemesReader {

    static final String NAME = "scheme";
    static final String SECTOR = "flat_rate_sector";

    private static final List<String> RETAIL =
            List.of(
                    "point-of-sale",
                    "apportionment-1",
                    "apportionment-2",
                    "direct-calculation-1",
                    "direct-calculation-2");
    private static final String EXPECTED =
            "standard, cash or flat-rate, or first days with one of them each, such as"
                    + " {2024-01-01: standard, 2026-07-01: cash}";

    private final YamlFile yaml;
    private final YamlSettings settings;

    SchemesReader(YamlFile yaml, YamlSettings settings) {
        this.yaml = yaml;
        this.settings = settings;
    }

    /** Nothing, and its problems, where the schemes cannot be told. */
    Optional<Schemes> read() {
        Optional<String> sector =
                settings.optional(
                        SECTOR,
                        "a sector's id of three digits in flat-rates.csv, such as \"044\"",
                        t -> Optional.of(t).filter(id -> id.matches("[0-9]{3}")));
        TreeMap<LocalDate, String> from = new TreeMap<>();
        Optional<Node> node = settings.node(NAME);
        if (node.isEmpty()) {
            settings.required(NAME, EXPECTED, Optional::of);
            return Optional.empty();
        }
        if (!(node.get() instanceof MappingNode map)) {
            return word(node.get()).flatMap(word -> withSector(Schemes.of(word, sector)));
        }
        if (map.getValue().isEmpty()) {
            yaml.unexpected(map, NAME, EXPECTED);
        }
        for (NodeTuple pair : map.getValue()) {
            Optional<LocalDate> day =
                    YamlFile.text(pair.getKeyNode())
                            .flatMap(t -> YamlSettings.of(LocalDate::parse, t));
            if (day.isEmpty()) {
                yaml.unexpected(pair.getKeyNode(), NAME, YamlSettings.DAY);
            }
            word(pair.getValueNode())
                    .ifPresent(
                            word ->
                                    day.filter(d -> from.putIfAbsent(d, word) != null)
                                            .ifPresent(d -> twice(pair.getKeyNode(), d)));
        }
        return from.isEmpty() ? Optional.empty() : withSector(new Schemes(from, sector));
    }

    private void twice(Node node, LocalDate day) {
        yaml.problem(node, NAME, "found %s a second time; remove one of the two".formatted(day));
    }

    private Optional<String> word(Node node) {
        Optional<String> word = YamlFile.text(node);
        if (word.filter(RETAIL::contains).isPresent()) {
            yaml.problem(
                    node,
                    NAME,
                    "found '%s', a retail scheme; a retail scheme is for a retailer who cannot account for each sale (VAT Regulations 1995 reg 67; VAT Notice 727), and channels that report each order with its rate let a seller do so; expected standard, cash or flat-rate"
                            .formatted(word.get()));
            return Optional.empty();
        }
        if (word.filter(Schemes.WORDS::contains).isEmpty()) {
            yaml.unexpected(node, NAME, EXPECTED);
            return Optional.empty();
        }
        return word;
    }

    private Optional<Schemes> withSector(Schemes schemes) {
        if (schemes.from().containsValue(Schemes.FLAT_RATE) && settings.node(SECTOR).isEmpty()) {
            settings.required(
                    SECTOR,
                    "the trade sector of the flat rate by its id in flat-rates.csv, such as \"044\"",
                    t -> Optional.empty());
        }
        return Optional.of(schemes);
    }
}
