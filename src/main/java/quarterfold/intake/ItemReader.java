package quarterfold.intake;

import java.util.HashMap;
import java.util.Map;
import quarterfold.ledger.Item;

/**
 * Makes items, one object for each that is met again soon: they are looked for by product, since
 * one product rarely has two descriptions. For one thread.
 */
final class ItemReader {
    private static final int KEPT = 20_000;

    private final Map<String, Item> known = new HashMap<>();
    private Item last = Item.NONE;

    Item read(LineCells cells, Row row) {
        String product = cells.product().text(row);
        String description = cells.description().text(row);
        if (product.equals(last.product()) && description.equals(last.description())) {
            return last;
        }
        last = find(product, description);
        return last;
    }

    private Item find(String product, String description) {
        String key = product.isEmpty() ? description : product;
        Item same = known.get(key);
        if (same != null
                && same.product().equals(product)
                && same.description().equals(description)) {
            return same;
        }
        if (known.size() >= KEPT) {
            known.clear();
        }
        Item item = new Item(product, description);
        known.put(key, item);
        return item;
    }
}
