package quarterfold.ledger;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The liability of the owner's goods: {@code products.csv}, with the columns {@code product},
 * {@code liability}, {@code from} and {@code to}. A liability is {@code standard}, {@code reduced},
 * {@code zero}, {@code exempt}, {@code outside} or {@code margin}; an empty {@code from} or {@code
 * to} is open.
 */
public final class Products {
    static final List<String> LIABILITIES =
            List.of("standard", "reduced", "zero", "exempt", "outside", "margin");

    /** The name of the file, in a book and among the tables of a close. */
    public static final String FILE = "products.csv";

    private static final Products NONE = new Products(Map.of(), Optional.empty());

    private final Map<String, List<Dated>> byProduct;
    private final Optional<TableText> table;

    /** A liability from its first to its last day. */
    record Dated(String liability, LocalDate from, LocalDate to) {
        boolean covers(LocalDate day) {
            return !day.isBefore(from) && !day.isAfter(to);
        }
    }

    private Products(Map<String, List<Dated>> byProduct, Optional<TableText> table) {
        this.byProduct = byProduct;
        this.table = table;
    }

    /** A list of no products. */
    public static Products none() {
        return NONE;
    }

    /**
     * Reads a product list.
     *
     * @throws LedgerException listing every problem, one a line, if any row is bad
     */
    static Products read(Path file) throws LedgerException {
        return parse(GoodsList.text(file));
    }

    /**
     * The product list of a text.
     *
     * @throws LedgerException listing every problem, one a line, if any row is bad
     */
    public static Products parse(String text) throws LedgerException {
        return new Products(new ProductsReader(text).read(), Optional.of(TableText.of(FILE, text)));
    }

    /** The file itself, where there is one. */
    public Optional<TableText> table() {
        return table;
    }

    /** The liability of a product on a day, where the list has it. */
    public Optional<String> liability(String product, LocalDate day) {
        for (Dated dated : byProduct.getOrDefault(product, List.of())) {
            if (dated.covers(day)) {
                return Optional.of(dated.liability());
            }
        }
        return Optional.empty();
    }

    /** Whether some product has the liability on some day. */
    public boolean has(String liability) {
        return byProduct.values().stream()
                .flatMap(List::stream)
                .anyMatch(d -> d.liability().equals(liability));
    }

    public boolean isEmpty() {
        return byProduct.isEmpty();
    }
}
