package quarterfold.ledger;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A copy that is there only as long as it is worked on. */
public record Borrowed(Path path) implements AutoCloseable {

    @Override
    public void close() throws LedgerException {
        try {
            Files.deleteIfExists(path);
        } catch (IOException e) {
            throw LedgerException.file(path, "be removed", e);
        }
    }
}
