package quarterfold.ledger;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.channels.ReadableByteChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Iterator;
import java.util.Optional;

/**
 * The folder that keeps every file brought in, byte for byte and read-only, as {@code <first 12
 * digits of its SHA-256>-<name>}. A copy has that name only once it is whole and on the disk.
 */
public final class SourceArchive {
    static final int PREFIX = 12;
    static final String INCOMING = ".incoming-";
    static final String PART = ".part";

    /** In bytes of UTF-8, as file systems count. */
    private static final int LONGEST_NAME = 100;

    private static final int BUFFER = 1 << 18;

    private final Path folder;

    SourceArchive(Path folder) {
        this.folder = folder;
    }

    /**
     * Copies a file into the archive, reading it once. Where the archive has the same bytes
     * already, under whatever name, that copy is the answer.
     *
     * @throws LedgerException if the file cannot be read, the copy not written, or the file is
     *     written to meanwhile
     */
    public Archived archive(Path file) throws LedgerException {
        if (!Files.isRegularFile(file)) {
            throw new LedgerException(
                    LedgerException.Fault.UNREADABLE,
                    "%s: %s"
                            .formatted(
                                    file,
                                    Files.exists(file)
                                            ? "this is not a file"
                                            : "there is no such file"));
        }
        return archive(
                String.valueOf(file.getFileName()),
                file,
                part -> {
                    FileState before = FileState.of(file);
                    try (FileChannel in = FileChannel.open(file)) {
                        String sha256 = copy(in, part);
                        before.refuseChanged(file, Files.size(part));
                        return sha256;
                    }
                });
    }

    /** Says that an import is at work here, until it is closed. */
    public ArchiveUse use() throws LedgerException {
        try {
            Files.createDirectories(folder); // a copy of a book may have lost an empty one
            return ArchiveUse.begin(folder);
        } catch (IOException e) {
            throw LedgerException.file(folder, "be written to", e);
        }
    }

    /**
     * Removes what killed imports have left: unfinished copies, and copies of files that the ledger
     * does not have. While an import is at work, nothing is removed.
     */
    public void removeLeftOvers(Ledger ledger) throws LedgerException {
        try {
            new LeftOvers(folder, ledger).remove();
        } catch (IOException e) {
            throw LedgerException.file(folder, "be cleared", e);
        }
    }

    /**
     * Copies bytes that are no file of their own, such as those of a file in a ZIP, as {@link
     * #archive(Path)} does.
     *
     * @param name what messages call them
     * @throws LedgerException if they cannot be read, or the copy not written; the cause is what
     *     {@code bytes} threw
     */
    public Archived archive(String name, Bytes bytes) throws LedgerException {
        return archive(name, name, part -> copy(bytes, part));
    }

    /** Copies into an unfinished copy and gives the digest. */
    private interface Copying {
        String into(Path part) throws IOException;
    }

    /** {@code from}: what messages call that which is copied. */
    private Archived archive(String name, Object from, Copying copying) throws LedgerException {
        try {
            Path part = unfinished();
            try {
                String sha256 = copying.into(part);
                Optional<Path> known = find(sha256);
                return known.isPresent()
                        ? new Archived(known.get(), sha256, name, false)
                        : new Archived(keep(part, sha256, name), sha256, name, true);
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (IOException e) {
            throw LedgerException.file(from, "be copied into " + folder, e);
        }
    }

    private Path unfinished() throws IOException {
        Files.createDirectories(folder); // a copy of a book may have lost an empty one
        return Files.createTempFile(folder, INCOMING, PART);
    }

    /**
     * Copies bytes to where no one else looks, until they are given back.
     *
     * @param name what messages call them
     * @throws LedgerException as {@link #archive(String, Bytes)}
     */
    public Borrowed borrow(String name, Bytes bytes) throws LedgerException {
        try {
            Path part = unfinished();
            boolean whole = false;
            try {
                copy(bytes, part);
                whole = true;
                return new Borrowed(part);
            } finally {
                if (!whole) {
                    Files.deleteIfExists(part);
                }
            }
        } catch (IOException e) {
            throw LedgerException.file(name, "be copied into " + folder, e);
        }
    }

    /**
     * Removes a copy whose import was refused, unless the ledger has it or another import made it,
     * which may be at work on it still.
     */
    public void discard(Archived archived, Ledger ledger) throws LedgerException {
        if (archived.made()
                && ledger.source(archived.sha256()).isEmpty()
                && ledger.attachments().first(archived.sha256()).isEmpty()) {
            try {
                archived.path().toFile().setWritable(true); // or Windows would not remove it
                Files.deleteIfExists(archived.path());
            } catch (IOException e) {
                throw LedgerException.file(archived.path(), "be removed", e);
            }
        }
    }

    /**
     * The copy of a source whose bytes are still those of its digest, if there is one.
     *
     * @throws LedgerException if a copy cannot be read
     */
    public Optional<Path> whole(String sha256) throws LedgerException {
        try {
            return Files.isDirectory(folder) ? find(sha256) : Optional.empty();
        } catch (IOException e) {
            throw LedgerException.file(folder, "be read", e);
        }
    }

    /** The copy of a source by its name alone, whatever its bytes are now. */
    public Optional<Path> named(String sha256) throws LedgerException {
        if (!Files.isDirectory(folder)) {
            return Optional.empty();
        }
        try (DirectoryStream<Path> same =
                Files.newDirectoryStream(folder, sha256.substring(0, PREFIX) + "-*")) {
            Iterator<Path> first = same.iterator();
            return first.hasNext() ? Optional.of(first.next()) : Optional.empty();
        } catch (IOException e) {
            throw LedgerException.file(folder, "be read", e);
        }
    }

    private Path keep(Path part, String sha256, String name) throws IOException {
        Path path = folder.resolve(sha256.substring(0, PREFIX) + "-" + plain(name));
        if (!part.toFile().setWritable(false, false)) {
            throw new IOException("the copy cannot be made read-only");
        }
        Files.move(part, path, StandardCopyOption.ATOMIC_MOVE);
        syncFolder();
        return path;
    }

    /** Any copy with these bytes, whatever its name; its bytes are read again to be sure. */
    private Optional<Path> find(String sha256) throws IOException {
        try (DirectoryStream<Path> same =
                Files.newDirectoryStream(folder, sha256.substring(0, PREFIX) + "-*")) {
            for (Path path : same) {
                if (Digest.of(path).equals(sha256)) {
                    return Optional.of(path);
                }
            }
        }
        return Optional.empty();
    }

    private static String copy(Bytes from, Path to) throws IOException {
        try (ReadableByteChannel in = Channels.newChannel(from.open())) {
            return copy(in, to);
        }
    }

    private static String copy(ReadableByteChannel in, Path to) throws IOException {
        MessageDigest digest = Digest.sha256();
        ByteBuffer buffer = ByteBuffer.allocateDirect(BUFFER);
        try (FileChannel out = FileChannel.open(to, StandardOpenOption.WRITE)) {
            while (in.read(buffer.clear()) >= 0) {
                digest.update(buffer.flip().duplicate());
                while (buffer.hasRemaining()) {
                    out.write(buffer);
                }
            }
            out.force(true);
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    /** The name with what some file system refuses replaced, short enough for all of them. */
    private static String plain(String name) {
        String plain = name.replaceAll("[^\\p{L}\\p{N}._ -]", "_");
        int from = 0;
        while (bytes(plain.substring(from)) > LONGEST_NAME) {
            from = plain.offsetByCodePoints(from, 1);
        }
        return plain.substring(from);
    }

    private static int bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8).length;
    }

    private void syncFolder() throws IOException {
        if (!System.getProperty("os.name", "").startsWith("Windows")) { // cannot open a folder
            try (FileChannel channel = FileChannel.open(folder)) {
                channel.force(true);
            }
        }
    }
}
