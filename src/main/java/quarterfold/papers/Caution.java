package quarterfold.papers;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** What every paper and result says of itself: {@code templates/caution.txt}. */
public final class Caution {

    private static final String PLACE = "/quarterfold/templates/caution.txt";

    private Caution() {}

    /** The words, without a line end after the last. */
    public static String text() {
        try (InputStream in = Caution.class.getResourceAsStream(PLACE)) {
            if (in == null) {
                throw new IllegalStateException("the program is not whole: it lacks " + PLACE);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).strip().replace("\r", "");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
