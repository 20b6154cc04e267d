package quarterfold.ledger;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * An import at work in the archive of a book. A file of its own is locked for as long, which the
 * system unlocks when the process dies, so that others can tell a copy in use from a left-over.
 */
public final class ArchiveUse implements AutoCloseable {
    static final String PREFIX = ".importing-";
    private static final String SUFFIX = ".lock";

    private final SourceArchive archive;
    private final Path file;
    private final FileChannel channel;

    private ArchiveUse(SourceArchive archive, Path file, FileChannel channel) {
        this.archive = archive;
        this.file = file;
        this.channel = channel;
    }

    static ArchiveUse begin(Path folder) throws IOException {
        Path file = Files.createTempFile(folder, PREFIX, SUFFIX);
        FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE);
        lock(channel); // where the file system has no locks, nothing is ever taken for a left-over
        return new ArchiveUse(new SourceArchive(folder), file, channel);
    }

    /** The archive it is at work in. */
    public SourceArchive archive() {
        return archive;
    }

    /** Whether the import that made this file is at work still, or may be. */
    static boolean isAtWork(Path file) {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            return !lock(channel);
        } catch (IOException e) {
            return Files.exists(file);
        }
    }

    private static boolean lock(FileChannel channel) {
        try {
            FileLock lock = channel.tryLock();
            return lock != null;
        } catch (IOException | OverlappingFileLockException another) {
            return false;
        }
    }

    @Override
    public void close() throws LedgerException {
        try (channel) {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            throw LedgerException.file(file, "be removed", e);
        }
    }
}
