package quarterfold.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import quarterfold.ledger.Archived;
import quarterfold.ledger.Bytes;
import quarterfold.ledger.SourceArchive;

/**
 * A file to bring in: named by a person, or found in a folder or a ZIP that was.
 *
 * @param name for messages and the ledger: with the folders below what was named, such as {@code
 *     july/statement.csv} or {@code quarter.zip/statement.csv}
 * @param key what tells it from every other file
 * @param size in bytes, as far as its folder or ZIP knows
 * @param path where it is, unless it is in a ZIP
 * @param beside the files it may name
 * @param isNamed whether a person named it by itself, and so means it to be read
 */
record Piece(
        String name,
        String key,
        long size,
        Optional<Path> path,
        Bytes bytes,
        Beside beside,
        boolean isNamed) {

    /** A file a person named; it need not be there. */
    static Piece named(Path file) {
        Path folder = file.toAbsolutePath().normalize().getParent();
        return at(
                file,
                String.valueOf(file.getFileName()),
                folder == null ? Beside.NOTHING : new FolderBeside(folder, "", ""),
                true);
    }

    /** A file of the disk. */
    static Piece at(Path file, String name, Beside beside, boolean isNamed) {
        return new Piece(
                name,
                file.toAbsolutePath().normalize().toString(),
                size(file),
                Optional.of(file),
                () -> Files.newInputStream(file),
                beside,
                isNamed);
    }

    private static long size(Path file) {
        try {
            return Files.size(file);
        } catch (IOException e) {
            return 0; // it is told when it is read
        }
    }

    /** Copies it into the archive. */
    Archived archive(SourceArchive archive) {
        if (path.isEmpty()) {
            return archive.archive(name, bytes);
        }
        Archived copy = archive.archive(path.get());
        return new Archived(copy.path(), copy.sha256(), name, copy.made());
    }
}
