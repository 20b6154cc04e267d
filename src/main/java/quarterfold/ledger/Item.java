package quarterfold.ledger;

/** What a line is for: the seller's own product code and a description; either may be empty. */
public record Item(String product, String description) {
    public static final Item NONE = new Item("", "");
}
