package quarterfold.intake;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** A file that holds tables: a text holds one, a workbook one in each of its sheets. */
interface Tables extends Closeable {

    /** The tables by name, in the file's order; the one table of a text has the empty name. */
    List<String> names();

    /** The rows of one table from its first; the caller closes them. */
    Rows rows(String table, Layout.Shape shape) throws BadFile, IOException;

    /** Whether a person would not see the table. */
    default boolean isHidden(String table) {
        return false;
    }

    /** What of the file's encoding is not sure, read by a layout of this shape, as a question. */
    default Optional<String> encoding(Layout.Shape shape) throws IOException {
        return Optional.empty();
    }

    /** Why the file could not be read as a layout has it, where its bytes are at fault. */
    default Optional<BadFile> fault() {
        return Optional.empty();
    }

    /** Whether dates may come as ISO text whatever a layout's own pattern is. */
    boolean hasNativeDates();

    /**
     * Looks at the file's first bytes, not at its name.
     *
     * @param name the file's own name, for messages
     */
    static Tables open(Path file, String name) throws BadFile, IOException {
        byte[] head = new byte[4];
        int length;
        try (var in = Files.newInputStream(file)) {
            length = in.readNBytes(head, 0, head.length);
        }
        if (length == 0) {
            throw new BadFile(
                    name,
                    name.matches("(?i).*\\.(pdf|xml|zip|png|jpe?g|gif|tiff?|heic|webp|bmp)")
                            ? "found an empty file; expected the document, such as the same file downloaded again"
                            : "found an empty file; expected a header row and rows below it");
        }
        if (starts(head, 'P', 'K', 3, 4)) {
            return SheetTables.open(file, name);
        }
        if (starts(head, 0xD0, 0xCF, 0x11, 0xE0)) {
            return OldSheetTables.open(file, name);
        }
        if (YamlTables.isNamed(name)) {
            return YamlTables.open(file, name);
        }
        if (starts(head, '%', 'P', 'D', 'F')) {
            throw new BadFile(
                    name,
                    "found a PDF; expected a text table or an XLSX workbook, such as the same"
                            + " report downloaded as .csv");
        }
        return new TextTables(file, name);
    }

    /** The row that is to be the header, trimmed, or nothing where the table is too short. */
    static Optional<List<String>> header(Rows rows, int headerRow) throws BadFile {
        if (headerRow == 0) {
            return Optional.empty();
        }
        while (rows.next()) {
            if (rows.number() == headerRow) {
                return Optional.of(Header.texts(rows));
            }
            if (rows.number() > headerRow) {
                return Optional.empty();
            }
        }
        return Optional.empty();
    }

    private static boolean starts(byte[] head, int... bytes) {
        for (int i = 0; i < bytes.length; i++) {
            if (head[i] != (byte) bytes[i]) {
                return false;
            }
        }
        return true;
    }
}
