package quarterfold.papers;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.poi.util.DefaultTempFileCreationStrategy;
import org.apache.poi.util.TempFile;
import quarterfold.period.Pack;

/** The audit workbook: the return, every entry of the period, and what they rest on. */
final class WorkbookFile {

    private static final String ASIDE = ".rows";

    private WorkbookFile() {}

    /** How many entries a sheet of so many rows takes. */
    static long entriesInSheet(int rowLimit) {
        return rowLimit - (long) ListSheet.HEAD_ROWS;
    }

    /**
     * Writes the workbook as a new file. While it is written its rows lie in a folder beside it.
     *
     * @param tally of the same pack, counted for sheets of {@link #entriesInSheet}
     * @param rowLimit the most rows a sheet holds; longer lists go on to another sheet
     */
    static void write(Pack pack, Tally tally, Path file, int rowLimit) throws IOException {
        Path aside = Files.createDirectory(file.resolveSibling(ASIDE));
        // POI's own place is one folder for all users of the machine: the first of them owns it.
        TempFile.setThreadLocalTempFileCreationStrategy(
                new DefaultTempFileCreationStrategy(aside.toFile()));
        try {
            make(pack, tally, file, rowLimit);
        } catch (IllegalStateException e) {
            if (e.getCause() instanceof IOException told) { // as POI wraps them
                throw told;
            }
            throw e;
        } finally {
            TempFile.setThreadLocalTempFileCreationStrategy(null);
            Files.deleteIfExists(aside);
        }
    }

    private static void make(Pack pack, Tally tally, Path file, int rowLimit) throws IOException {
        String business = pack.settings().name();
        String span = Words.span(pack.vatReturn().period());
        String title = Words.title(pack.vatReturn());
        try (SteadyWorkbook workbook =
                new SteadyWorkbook(title + ", " + span, pack.vatReturn().period().end())) {
            Sheets sheets =
                    new Sheets(
                            workbook,
                            new Look(workbook.getXSSFWorkbook()),
                            business + ", " + span,
                            business,
                            rowLimit);
            ReturnSheet first = new ReturnSheet(sheets, pack);
            EntrySheets entries = new EntrySheets(sheets, pack, tally);
            pack.forEachTreated(entries::add);
            AdjustmentSheet adjustments = new AdjustmentSheet(sheets, pack);
            AccountSheet.write(sheets, tally.account());
            CorrectionRows.write(sheets, pack);
            OtherLists.queries(sheets, pack);
            OtherLists.sources(sheets, pack);
            OtherLists.setAside(sheets, pack);
            ExchangeSheet.write(sheets, pack, tally);
            LawSheet.write(sheets, pack, tally);
            first.write(entries, adjustments);
            try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
                workbook.write(out);
            }
        }
    }
}
