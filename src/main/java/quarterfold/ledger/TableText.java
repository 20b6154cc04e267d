package quarterfold.ledger;

/**
 * A table of the law as it stood at a close.
 *
 * @param name such as {@code rates.csv}
 * @param sha256 of the text, 64 lower-case hexadecimal digits
 * @param text the whole file
 */
public record TableText(String name, String sha256, String text) {}
