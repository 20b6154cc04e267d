package quarterfold.intake;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;
import quarterfold.ledger.Book;
import quarterfold.ledger.IoText;
import quarterfold.ledger.LedgerException;

/** The files of a book's own layouts. */
final class OwnLayouts {
    private OwnLayouts() {}

    static Path file(Book book, String name) {
        return book.folder().resolve("layouts").resolve(name + ".yaml");
    }

    /**
     * The text of the layout of that name, where there is one.
     *
     * @throws LedgerException if it cannot be read
     */
    static Optional<String> text(Book book, String name) throws LedgerException {
        Path file = file(book, name);
        try {
            return Files.exists(file) ? Optional.of(Files.readString(file)) : Optional.empty();
        } catch (CharacterCodingException e) {
            throw new LedgerException(
                    LedgerException.Fault.BAD_INPUT, "%s: %s".formatted(file, Layouts.NOT_UTF_8));
        } catch (IOException e) {
            throw new LedgerException(
                    LedgerException.Fault.UNREADABLE,
                    "%s: could not be read: %s".formatted(file, IoText.withFile(e)));
        }
    }

    /**
     * Writes a layout, whole or not at all, in place of one of that name, for those who may read
     * it.
     *
     * @throws LedgerException if it cannot be written
     */
    static Path write(Book book, String name, String yaml) throws LedgerException {
        Path file = file(book, name);
        try {
            Path folder = Files.createDirectories(book.folder().resolve("layouts"));
            Path part = Files.createTempFile(folder, name, ".part");
            Files.writeString(part, yaml);
            if (Files.exists(file) && Files.getFileStore(file).supportsFileAttributeView("posix")) {
                Files.setPosixFilePermissions(part, Files.getPosixFilePermissions(file));
            }
            Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
            return file;
        } catch (IOException e) {
            throw new LedgerException(
                    LedgerException.Fault.UNREADABLE,
                    "%s: could not be written: %s".formatted(file, IoText.withFile(e)));
        }
    }
}
