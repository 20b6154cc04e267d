package quarterfold.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;

/** How an item is told as the texts of table {@code item}. */
final class ItemTable {
    static final Interned.Texts<Item> TEXTS =
            new Interned.Texts<>(
                    List.of("product", "description"), i -> List.of(i.product(), i.description()));

    private ItemTable() {}

    /** The item in the two columns from the second. */
    static Item read(ResultSet row) throws SQLException {
        return new Item(row.getString(2), row.getString(3));
    }
}
