package quarterfold.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import quarterfold.ledger.YamlNodes;

/**
 * A small list in YAML, a plain sheet by other means: each item is a row, each key a column. {@code
 * amount} and {@code supplier} are {@code gross} and {@code party}; an item without a kind is an
 * expense.
 */
final class YamlTables implements Tables {
    private static final long LARGEST = 2L << 20;
    private static final int LOOKED_AT = 1 << 16;

    /**
     * Each key is a column of every item, so that many of them make a vast table of a small file.
     */
    private static final int MOST_KEYS = 200;

    private static final String EXPECTED =
            "; expected a list of receipts, such as - {file: r1.jpg, date: 2026-08-05, supplier: Inkwell Nook Ltd, amount: 27.89}";
    private static final Map<String, String> ALSO =
            Map.of("amount", Field.GROSS.code(), "supplier", Field.PARTY.code());

    /** An item: the line it begins on, and its texts by key. */
    record Item(int line, Map<String, String> texts) {}

    private final String name;
    private final List<String> columns;
    private final List<Item> items;

    private YamlTables(String name, List<String> columns, List<Item> items) {
        this.name = name;
        this.columns = columns;
        this.items = items;
    }

    /** Whether a file's name says that it is YAML. */
    static boolean isNamed(String name) {
        return name.toLowerCase(Locale.ROOT).matches(".*\\.ya?ml");
    }

    /** Whether it is YAML and begins as a list does. */
    static boolean isList(Path file, String name) throws IOException {
        return isNamed(name)
                && new String(head(file), StandardCharsets.UTF_8)
                        .lines()
                        .map(line -> line.replaceAll("[\0\ufeff\ufffd]", "").strip())
                        .filter(line -> !line.isEmpty() && !line.matches("#.*|---"))
                        .findFirst()
                        .filter(line -> line.startsWith("-") || line.startsWith("["))
                        .isPresent();
    }

    private static byte[] head(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return in.readNBytes(LOOKED_AT);
        }
    }

    static YamlTables open(Path file, String name) throws BadFile, IOException {
        if (Files.size(file) > LARGEST) {
            throw new BadFile(
                    name,
                    "found YAML of more than %,d bytes; expected less, such as the list as .csv"
                            .formatted(LARGEST));
        }
        Set<String> columns = new LinkedHashSet<>();
        List<Item> items = new ArrayList<>();
        int last = 0;
        for (Node node : list(file, name)) {
            if (!(node instanceof MappingNode map)) {
                throw new BadFile(place(name, node), "found an item without keys" + EXPECTED);
            }
            Item item = item(name, map);
            if (item.line() <= last) {
                throw new BadFile(
                        place(name, node),
                        "found two items that begin on this line, or one that is named again by an alias"
                                + "; expected each on a line of its own, such as - {date: 2026-08-05, amount: 27.89}");
            }
            last = item.line();
            items.add(item);
            columns.addAll(item.texts().keySet());
            if (columns.size() > MOST_KEYS) {
                throw new BadFile(
                        place(name, node),
                        "found more than %d keys in all; expected at most that, such as the columns of the plain sheet"
                                .formatted(MOST_KEYS));
            }
        }
        return new YamlTables(name, List.copyOf(columns), items);
    }

    private static List<Node> list(Path file, String name) throws BadFile, IOException {
        try {
            Node root = YamlNodes.of(name, Files.readString(file)).orElse(null);
            if (root instanceof SequenceNode sequence) {
                return sequence.getValue();
            }
            throw new BadFile(name, "found YAML that is no list" + EXPECTED);
        } catch (CharacterCodingException e) {
            throw new BadFile(
                    name,
                    "found bytes that are not UTF-8; expected text in UTF-8, such as the list saved again in that encoding");
        } catch (YamlEngineException e) {
            YamlNodes.NotYaml why = YamlNodes.notYaml(e);
            throw new BadFile(
                    name + why.at(),
                    "found text that is not YAML (%s)%s".formatted(why.problem(), EXPECTED));
        }
    }

    private static Item item(String name, MappingNode map) throws BadFile {
        Map<String, String> texts = new LinkedHashMap<>();
        for (NodeTuple tuple : map.getValue()) {
            if (!(tuple.getKeyNode() instanceof ScalarNode key)
                    || !(tuple.getValueNode() instanceof ScalarNode value)) {
                throw new BadFile(
                        place(name, tuple.getKeyNode()),
                        "found a list or keys within an item" + EXPECTED);
            }
            if (value.getValue().length() > Rows.CELL_LIMIT) {
                throw new BadFile(
                        place(name, key),
                        "found a text of more than %,d characters; expected at most that"
                                .formatted(Rows.CELL_LIMIT));
            }
            String column = ALSO.getOrDefault(key.getValue(), key.getValue());
            if (texts.put(column, value.getValue()) != null) {
                throw new BadFile(
                        place(name, key),
                        "found %s twice in an item; expected it once, such as %s: text"
                                .formatted(Problem.quoted(key.getValue()), column));
            }
        }
        texts.putIfAbsent(Field.KIND.code(), "expense");
        return new Item(line(map), texts);
    }

    private static int line(Node node) {
        return node.getStartMark().map(mark -> mark.getLine() + 1).orElse(1);
    }

    private static String place(String name, Node node) {
        return name + ":" + line(node);
    }

    @Override
    public List<String> names() {
        return List.of("");
    }

    @Override
    public Rows rows(String table, Layout.Shape shape) {
        return new YamlRows(name, columns, items);
    }

    @Override
    public boolean hasNativeDates() {
        return false;
    }

    @Override
    public void close() {}
}
