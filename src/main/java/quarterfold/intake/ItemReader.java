package quarterfold.intake;

import java.util.HashMap;
import java.util.Map;
import quarterfold.ledger.Item;

/** Makes items, one object for each that is met again soon. For one thread. */
final class ItemReader {
    private static final int KEPT = 20_000;

    private final Map<Item, Item> known = new HashMap<>();

    Item read(FieldCells cells, Row row) {
        String product = cells.text(Field.PRODUCT, row);
        String description = cells.text(Field.DESCRIPTION, row);
        if (product.isEmpty() && description.isEmpty()) {
            return Item.NONE;
        }
        Item item = new Item(product, description);
        Item same = known.get(item);
        if (same != null) {
            return same;
        }
        if (known.size() >= KEPT) {
            known.clear();
        }
        known.put(item, item);
        return item;
    }
}
