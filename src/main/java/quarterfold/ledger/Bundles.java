package quarterfold.ledger;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVRecord;
import quarterfold.money.Amount;

/**
 * Several products sold at one price: {@code bundles.csv}, with the columns {@code bundle}, {@code
 * product}, {@code shelf_price}, {@code from} and {@code to}, a row for each product. The shelf
 * price is what the product costs alone, VAT included; an empty {@code from} or {@code to} is open.
 */
public final class Bundles {
    private static final List<String> COLUMNS =
            List.of("bundle", "product", "shelf_price", "from", "to");

    /** The name of the file, in a book and among the tables of a close. */
    public static final String FILE = "bundles.csv";

    private static final Bundles NONE = new Bundles(Map.of(), Optional.empty());

    private final Map<String, List<Dated>> byBundle;
    private final Optional<TableText> table;

    /** A product of a bundle and its price alone, above nothing. */
    public record Part(String product, Amount shelfPrice) {}

    private record Dated(Part part, LocalDate from, LocalDate to) {
        boolean covers(LocalDate day) {
            return !day.isBefore(from) && !day.isAfter(to);
        }
    }

    private Bundles(Map<String, List<Dated>> byBundle, Optional<TableText> table) {
        this.byBundle = byBundle;
        this.table = table;
    }

    /** A list of no bundles. */
    public static Bundles none() {
        return NONE;
    }

    /**
     * Reads a list of bundles.
     *
     * @throws LedgerException listing every problem, one a line, if any row is bad
     */
    static Bundles read(Path file) throws LedgerException {
        return parse(GoodsList.text(file));
    }

    /**
     * The list of bundles of a text.
     *
     * @throws LedgerException listing every problem, one a line, if any row is bad
     */
    public static Bundles parse(String text) throws LedgerException {
        GoodsList list = new GoodsList(FILE, text, COLUMNS, "HAMPER,TEA-1,6.00,2024-01-01,");
        Map<String, List<Dated>> bundles = new HashMap<>();
        list.read((record, line) -> row(list, record, line, bundles));
        return new Bundles(bundles, Optional.of(TableText.of(FILE, text)));
    }

    /** The file itself, where there is one. */
    public Optional<TableText> table() {
        return table;
    }

    private static void row(
            GoodsList list, CSVRecord record, long line, Map<String, List<Dated>> bundles) {
        String bundle = record.get(0);
        String product = record.get(1);
        int before = list.problems();
        if (bundle.isEmpty()) {
            list.problem(
                    line, "bundle", bundle, "the product code it is sold under, such as HAMPER");
        }
        if (product.isEmpty() || product.equals(bundle)) {
            list.problem(line, "product", product, "the code of a product in it, such as TEA-1");
        }
        Optional<Amount> price = price(record.get(2));
        if (price.isEmpty()) {
            list.problem(
                    line, "shelf_price", record.get(2), "an amount above nothing, such as 6.00");
        }
        Optional<LocalDate> from = list.day(line, "from", record.get(3), LocalDate.MIN);
        Optional<LocalDate> to = list.day(line, "to", record.get(4), LocalDate.MAX);
        if (list.problems() > before) {
            return;
        }
        Dated dated =
                new Dated(
                        new Part(product, price.orElseThrow()),
                        from.orElseThrow(),
                        to.orElseThrow());
        if (dated.to().isBefore(dated.from())) {
            list.problem(line, "to", dated.to().toString(), "a day not before " + dated.from());
            return;
        }
        List<Dated> known = bundles.computeIfAbsent(bundle, b -> new ArrayList<>());
        if (known.stream()
                .anyMatch(
                        k ->
                                k.part().product().equals(product)
                                        && (k.covers(dated.from()) || dated.covers(k.from())))) {
            list.problem(
                    line,
                    "product",
                    product,
                    "days no other row of the product in this bundle covers; give several of one product as one row with their price together");
        }
        known.add(dated);
    }

    private static Optional<Amount> price(String text) {
        try {
            return Optional.of(Amount.of(text)).filter(a -> a.signum() > 0);
        } catch (ArithmeticException | NumberFormatException e) {
            return Optional.empty();
        }
    }

    /** The products of a bundle on a day, in the order of the list; none where it is no bundle. */
    public List<Part> parts(String bundle, LocalDate day) {
        return byBundle.getOrDefault(bundle, List.of()).stream()
                .filter(d -> d.covers(day))
                .map(Dated::part)
                .toList();
    }

    public boolean isEmpty() {
        return byBundle.isEmpty();
    }
}
