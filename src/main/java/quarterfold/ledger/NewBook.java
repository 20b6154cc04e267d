package quarterfold.ledger;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;

/**
 * A book being made. Its settings come last, whole, since they are what makes a folder a book; what
 * was made before a failure is removed.
 */
final class NewBook {
    private static final List<String> FOLDERS = List.of("sources", "layouts", "papers");
    private static final String PART = ".part";

    private final Path folder;
    private final Deque<Path> made = new ArrayDeque<>();

    private NewBook(Path folder) {
        this.folder = folder;
    }

    static void make(Path folder, Settings settings) {
        for (String name : List.of(Book.SETTINGS, Book.LEDGER)) {
            if (Files.exists(folder.resolve(name))) {
                throw new LedgerException(
                        LedgerException.Fault.USAGE,
                        "%s: there is a book here already (%s); name another folder with --book"
                                .formatted(folder, name));
            }
        }
        NewBook book = new NewBook(folder);
        String text = SettingsFile.write(settings);
        try {
            book.make(text);
        } catch (IOException e) {
            book.undo();
            throw LedgerException.file(folder, "be made a book", e);
        } catch (RuntimeException e) {
            book.undo();
            throw e;
        }
    }

    private void make(String settings) throws IOException {
        folders(folder.toAbsolutePath());
        for (String name : FOLDERS) {
            folders(folder.toAbsolutePath().resolve(name));
        }
        Path ledger = part(Book.LEDGER);
        Transaction.run(
                ledger,
                () -> {
                    LedgerFile.open(ledger, Duration.ZERO, true).close();
                    return ledger;
                });
        finish(ledger, Book.LEDGER);
        Path book = part(Book.SETTINGS);
        try (FileChannel channel =
                FileChannel.open(book, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            ByteBuffer bytes = StandardCharsets.UTF_8.encode(settings);
            while (bytes.hasRemaining()) {
                channel.write(bytes);
            }
            channel.force(true);
        }
        finish(book, Book.SETTINGS);
    }

    private void folders(Path path) throws IOException {
        if (!Files.isDirectory(path)) {
            Path parent = path.getParent();
            if (parent != null) {
                folders(parent);
            }
            Files.createDirectory(path);
            made.push(path);
        }
    }

    /** A file under a name that makes nothing a book; what a killed program left is thrown away. */
    private Path part(String name) throws IOException {
        Path part = folder.toAbsolutePath().resolve(name + PART);
        for (String file : List.of("", "-wal", "-shm")) {
            Path left = part.resolveSibling(part.getFileName() + file);
            Files.deleteIfExists(left);
            made.push(left);
        }
        return part;
    }

    private void finish(Path part, String name) throws IOException {
        Path whole = part.resolveSibling(name);
        Files.move(part, whole, StandardCopyOption.ATOMIC_MOVE);
        made.push(whole);
    }

    /** Removes what was made; what cannot be removed stays, since the failure itself is told. */
    private void undo() {
        for (Path path : made) {
            path.toFile().delete();
        }
    }
}
