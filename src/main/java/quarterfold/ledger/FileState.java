package quarterfold.ledger;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;

/** How large a file is and when it was last written to: another state means other bytes. */
record FileState(long size, FileTime modified) {

    static FileState of(Path file) throws IOException {
        BasicFileAttributes now = Files.readAttributes(file, BasicFileAttributes.class);
        return new FileState(now.size(), now.lastModifiedTime());
    }

    /**
     * Refuses a file that is no longer in this state.
     *
     * @param read how many bytes were read of it
     */
    void refuseChanged(Path file, long read) throws IOException {
        if (read != size || !of(file).equals(this)) {
            throw new LedgerException(
                    LedgerException.Fault.UNREADABLE,
                    "%s: the file changed while it was read; nothing was entered, try again when nothing writes to it"
                            .formatted(file));
        }
    }
}
