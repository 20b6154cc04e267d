package quarterfold.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.poi.EncryptedDocumentException;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.crypt.Decryptor;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;

/**
 * An old binary workbook (.xls): a table in each sheet. It is held in memory whole, within a limit;
 * its sheets have at most 65,536 rows.
 */
final class OldSheetTables implements Tables {

    /** In bytes; in memory it is several times that. */
    private static final long LARGEST = 32L << 20;

    private static final String LOCKED =
            "found a workbook that is locked with a password; expected one that opens without, such as the same workbook saved without its password";

    private final String name;
    private final HSSFWorkbook workbook;

    private OldSheetTables(String name, HSSFWorkbook workbook) {
        this.name = name;
        this.workbook = workbook;
    }

    /** A file in the container of old office programs, which may be no workbook at all. */
    static OldSheetTables open(Path file, String name) throws BadFile, IOException {
        if (Files.size(file) > LARGEST) {
            throw new BadFile(
                    name,
                    "found an old binary workbook of %,d bytes; expected at most %,d, such as the same sheet saved as .xlsx or .csv"
                            .formatted(Files.size(file), LARGEST));
        }
        try (POIFSFileSystem container = new POIFSFileSystem(file.toFile(), true)) {
            if (container.getRoot().hasEntryCaseInsensitive(Decryptor.DEFAULT_POIFS_ENTRY)) {
                throw new BadFile(name, LOCKED);
            }
            return new OldSheetTables(name, new HSSFWorkbook(container, false));
        } catch (EncryptedDocumentException e) {
            throw new BadFile(name, LOCKED);
        } catch (IOException | RuntimeException e) { // its parser throws both on broken ones
            throw new BadFile(
                    name,
                    "found an old office file that is not a sound workbook; expected a text table or a workbook, such as the same sheet saved as .xlsx or .csv");
        }
    }

    @Override
    public List<String> names() {
        List<String> names = new ArrayList<>();
        for (int i = 0; i < workbook.getNumberOfSheets(); i++) {
            names.add(workbook.getSheetName(i));
        }
        return names;
    }

    @Override
    public Rows rows(String table, Layout.Shape shape) throws BadFile {
        try {
            return new OldSheetRows(name + ":" + table, workbook, workbook.getSheet(table));
        } catch (RuntimeException e) {
            throw new BadFile(
                    name + ":" + table,
                    "found a sheet that cannot be read; expected a sound workbook, such as the sheet saved again");
        }
    }

    @Override
    public boolean hasNativeDates() {
        return true;
    }

    @Override
    public boolean isHidden(String table) {
        int sheet = workbook.getSheetIndex(table);
        return workbook.isSheetHidden(sheet) || workbook.isSheetVeryHidden(sheet);
    }

    @Override
    public void close() throws IOException {
        workbook.close();
    }
}
