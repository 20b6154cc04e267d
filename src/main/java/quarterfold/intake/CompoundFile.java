package quarterfold.intake;

import java.io.IOException;
import java.nio.file.Path;
import org.apache.poi.poifs.crypt.Decryptor;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;

/**
 * A file in the container of old office programs, which is no table here: a workbook locked with a
 * password, which is kept in one, or an old binary workbook.
 */
final class CompoundFile {
    private CompoundFile() {}

    /** Why it cannot be read. */
    static BadFile refused(Path file, String name) {
        return new BadFile(
                name,
                isLocked(file)
                        ? "found a workbook that is locked with a password; expected one that opens without, such as the same workbook saved without its password"
                        : "found an old binary workbook; expected a text table or an XLSX workbook, such as the same sheet saved as .xlsx or .csv");
    }

    private static boolean isLocked(Path file) {
        try (POIFSFileSystem container = new POIFSFileSystem(file.toFile(), true)) {
            return container.getRoot().hasEntryCaseInsensitive(Decryptor.DEFAULT_POIFS_ENTRY);
        } catch (IOException | RuntimeException broken) {
            return false;
        }
    }
}
