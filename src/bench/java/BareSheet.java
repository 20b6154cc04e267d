import java.io.File;
import java.io.InputStream;
import org.apache.poi.openxml4j.opc.OPCPackage;
import org.apache.poi.openxml4j.opc.PackageAccess;
import org.apache.poi.util.XMLHelper;
import org.apache.poi.xssf.eventusermodel.ReadOnlySharedStringsTable;
import org.apache.poi.xssf.eventusermodel.XSSFReader;
import org.apache.poi.xssf.eventusermodel.XSSFSheetXMLHandler;
import org.apache.poi.xssf.eventusermodel.XSSFSheetXMLHandler.SheetContentsHandler;
import org.apache.poi.xssf.usermodel.XSSFComment;
import org.xml.sax.InputSource;
import org.xml.sax.XMLReader;

/** The least that reading a workbook can be: POI's own streaming read, its cells counted. */
public final class BareSheet {

    public static void main(String[] args) throws Exception {
        long[] counts = new long[2];
        try (OPCPackage file = OPCPackage.open(new File(args[0]), PackageAccess.READ)) {
            XSSFReader reader = new XSSFReader(file);
            XMLReader parser = XMLHelper.newXMLReader();
            parser.setContentHandler(
                    new XSSFSheetXMLHandler(
                            reader.getStylesTable(),
                            new ReadOnlySharedStringsTable(file),
                            new Counter(counts),
                            false));
            try (InputStream sheet = reader.getSheetsData().next()) {
                parser.parse(new InputSource(sheet));
            }
            file.revert();
        }
        System.out.println(counts[0] + " rows, " + counts[1] + " cells");
    }

    private record Counter(long[] counts) implements SheetContentsHandler {
        @Override
        public void startRow(int row) {
            counts[0]++;
        }

        @Override
        public void endRow(int row) {}

        @Override
        public void cell(String reference, String text, XSSFComment comment) {
            counts[1]++;
        }
    }
}
