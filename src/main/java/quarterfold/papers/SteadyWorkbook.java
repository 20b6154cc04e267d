package quarterfold.papers;

import java.io.IOException;
import java.io.OutputStream;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Date;
import java.util.Optional;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.poi.ooxml.POIXMLProperties;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * A streaming workbook that comes out the same, byte for byte, whenever and wherever it is written:
 * its properties carry the period's last day and its archive one fixed time.
 */
final class SteadyWorkbook extends SXSSFWorkbook {

    private static final int ROWS_IN_MEMORY = 50;
    private static final LocalDateTime ARCHIVE_TIME = LocalDateTime.of(2000, 1, 1, 12, 0);

    SteadyWorkbook(String title, LocalDate dated) {
        super(new XSSFWorkbook(), ROWS_IN_MEMORY);
        POIXMLProperties properties = getXSSFWorkbook().getProperties();
        POIXMLProperties.CoreProperties core = properties.getCoreProperties();
        core.setTitle(title);
        core.setCreator("Quarterfold");
        Optional<Date> day = Optional.of(Date.from(dated.atStartOfDay(ZoneOffset.UTC).toInstant()));
        core.setCreated(day);
        core.setModified(day);
        properties.getExtendedProperties().setApplication("Quarterfold");
        setForceFormulaRecalculation(true);
    }

    @Override
    protected ZipArchiveOutputStream createArchiveOutputStream(OutputStream out) {
        return new ZipArchiveOutputStream(out) {
            @Override
            public void putArchiveEntry(ZipArchiveEntry entry) throws IOException {
                // The format stores a local time: the zone in and the zone out cancel.
                entry.setTime(
                        ARCHIVE_TIME.atZone(ZoneId.systemDefault()).toInstant().toEpochMilli());
                super.putArchiveEntry(entry);
            }
        };
    }
}
