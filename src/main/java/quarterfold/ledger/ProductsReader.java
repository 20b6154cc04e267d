package quarterfold.ledger;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVRecord;

/** Reads one product list. */
final class ProductsReader {
    private static final List<String> COLUMNS = List.of("product", "liability", "from", "to");

    private final GoodsList list;
    private final Map<String, List<Products.Dated>> products = new HashMap<>();

    ProductsReader(String text) {
        list = new GoodsList(Products.FILE, text, COLUMNS, "KETTLE-1,standard,2024-01-01,");
    }

    Map<String, List<Products.Dated>> read() {
        list.read(this::row);
        return products;
    }

    private void row(CSVRecord record, long line) {
        String product = record.get(0);
        String liability = record.get(1);
        int before = list.problems();
        if (product.isEmpty()) {
            list.problem(line, "product", product, "the product's own code, such as KETTLE-1");
        }
        if (!Products.LIABILITIES.contains(liability)) {
            list.problem(
                    line,
                    "liability",
                    liability,
                    "one of " + String.join(", ", Products.LIABILITIES) + ", such as zero");
        }
        Optional<LocalDate> from = list.day(line, "from", record.get(2), LocalDate.MIN);
        Optional<LocalDate> to = list.day(line, "to", record.get(3), LocalDate.MAX);
        if (list.problems() == before) {
            add(line, product, new Products.Dated(liability, from.orElseThrow(), to.orElseThrow()));
        }
    }

    private void add(long line, String product, Products.Dated dated) {
        if (dated.to().isBefore(dated.from())) {
            list.problem(line, "to", dated.to().toString(), "a day not before " + dated.from());
            return;
        }
        List<Products.Dated> known = products.computeIfAbsent(product, p -> new ArrayList<>());
        if (known.stream().anyMatch(k -> k.covers(dated.from()) || dated.covers(k.from()))) {
            list.problem(
                    line,
                    "product",
                    product,
                    "days no other row of the product covers; end the earlier row first");
        }
        known.add(dated);
    }
}
