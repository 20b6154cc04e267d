package quarterfold.ledger;

import java.io.IOException;
import java.io.InputStream;

/** What can be read from its first byte to its last, such as a file in an archive. */
public interface Bytes {

    /** From the first byte; the caller closes it. */
    InputStream open() throws IOException;
}
