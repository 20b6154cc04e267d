package quarterfold.fuzz;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * What a document's own figures say its money comes to, read by another library than the reader
 * under test: an input that is taken says what is entered, or it raises a question.
 */
interface Stated {
    /** For readers of which no other library tells the money. */
    Stated NOTHING = (input, layout) -> Optional.empty();

    /** The signed money of all entries; nothing where the other library cannot tell. */
    Optional<BigDecimal> money(byte[] input, String layout) throws IOException;

    /** The same bytes as a stream. */
    static ByteArrayInputStream in(byte[] input) {
        return new ByteArrayInputStream(input);
    }
}
