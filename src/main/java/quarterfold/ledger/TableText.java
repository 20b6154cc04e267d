package quarterfold.ledger;

import java.nio.charset.StandardCharsets;

/**
 * A table as it stood at a close: one of the law's, or the book's own list of products.
 *
 * @param name such as {@code rates.csv}
 * @param sha256 of the text, 64 lower-case hexadecimal digits
 * @param text the whole file
 */
public record TableText(String name, String sha256, String text) {

    /** A table with its digest. */
    static TableText of(String name, String text) {
        return new TableText(name, Digest.of(text.getBytes(StandardCharsets.UTF_8)), text);
    }
}
