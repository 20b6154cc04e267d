package quarterfold.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.apache.poi.openxml4j.exceptions.OpenXML4JException;
import org.apache.poi.openxml4j.opc.OPCPackage;
import org.apache.poi.openxml4j.opc.PackageAccess;
import org.apache.poi.openxml4j.opc.PackagePart;
import org.apache.poi.xssf.eventusermodel.ReadOnlySharedStringsTable;
import org.apache.poi.xssf.eventusermodel.XSSFReader;
import org.apache.poi.xssf.usermodel.XSSFRelation;
import org.xml.sax.SAXException;

/**
 * An XLSX workbook: a table in each sheet. Sheets are streamed; the workbook's shared texts and
 * styles are held, within a limit. XML entities and document types are refused.
 */
final class SheetTables implements Tables {
    private final String name;
    private final OPCPackage workbook;
    private final XSSFReader reader;
    private final ReadOnlySharedStringsTable shared;
    private final SheetFormats formats;
    private final Set<String> hidden;

    /** Sheet names and their positions. */
    private final Map<String, Integer> sheets = new LinkedHashMap<>();

    private SheetTables(String name, OPCPackage workbook)
            throws IOException, OpenXML4JException, SAXException, XMLStreamException, BadFile {
        this.name = name;
        this.workbook = workbook;
        refuseDisguised();
        reader = new XSSFReader(workbook);
        shared = shared();
        formats = new SheetFormats(reader.getStylesTable(), startsIn1904());
        hidden = hiddenSheets();
        XSSFReader.SheetIterator each = (XSSFReader.SheetIterator) reader.getSheetsData();
        for (int i = 0; each.hasNext(); i++) {
            each.next().close();
            sheets.put(each.getSheetName(), i);
        }
        if (sheets.isEmpty()) {
            throw unsound(name);
        }
    }

    static SheetTables open(Path file, String name) throws BadFile, IOException {
        PackedSize.check(file, name);
        OPCPackage workbook = null;
        SheetTables tables = null;
        try {
            workbook = OPCPackage.open(file.toFile(), PackageAccess.READ);
            tables = new SheetTables(name, workbook);
            return tables;
        } catch (OpenXML4JException
                | SAXException
                | XMLStreamException
                | IOException
                | RuntimeException e) { // every byte was read above: it is no failing disk
            PackedSize.refuseTooMuch(name, e);
            throw unsound(name);
        } finally {
            if (tables == null && workbook != null) {
                workbook.revert();
            }
        }
    }

    /** The names of the sheets that are hidden, deeply or not. */
    private Set<String> hiddenSheets() throws IOException, OpenXML4JException, XMLStreamException {
        Set<String> names = new HashSet<>();
        try (InputStream in = reader.getWorkbookData()) {
            XMLStreamReader xml = SafeXml.reader(in);
            while (xml.hasNext()) {
                if (xml.next() == XMLStreamReader.START_ELEMENT
                        && xml.getLocalName().equals("sheet")) {
                    String state = xml.getAttributeValue(null, "state");
                    if (state != null && !state.equals("visible")) {
                        names.add(String.valueOf(xml.getAttributeValue(null, "name")));
                    }
                }
            }
        }
        return names;
    }

    @Override
    public boolean isHidden(String table) {
        return hidden.contains(table);
    }

    static BadFile unsound(String name) {
        return new BadFile(
                name,
                "found a packed file that is not a sound XLSX workbook; expected a text table or an XLSX workbook, such as the sheet saved again as .xlsx or .csv");
    }

    /** What is held whole may not stand under a name that is taken for a sheet's. */
    private void refuseDisguised() throws OpenXML4JException, BadFile {
        for (PackagePart part : workbook.getParts()) {
            String type = part.getContentType();
            if (PackedSize.isStreamed(part.getPartName().getName().substring(1))
                    && !type.contains("worksheet")
                    && !type.contains("sharedStrings")) {
                throw unsound(name);
            }
        }
    }

    /** The texts that cells name by their numbers: held whole, and so within a limit. */
    private ReadOnlySharedStringsTable shared() throws IOException, SAXException {
        List<PackagePart> parts =
                workbook.getPartsByContentType(XSSFRelation.SHARED_STRINGS.getContentType());
        if (parts.isEmpty()) {
            return new ReadOnlySharedStringsTable(workbook);
        }
        try (InputStream in =
                PackedSize.limited(parts.get(0).getInputStream(), PackedSize.TEXTS_LIMIT)) {
            return new ReadOnlySharedStringsTable(in);
        }
    }

    private boolean startsIn1904() throws IOException, OpenXML4JException, XMLStreamException {
        try (InputStream in = reader.getWorkbookData()) {
            XMLStreamReader xml = SafeXml.reader(in);
            while (xml.hasNext()) {
                if (xml.next() == XMLStreamReader.START_ELEMENT
                        && xml.getLocalName().equals("workbookPr")) {
                    String flag = xml.getAttributeValue(null, "date1904");
                    return "1".equals(flag) || "true".equals(flag);
                }
            }
            return false;
        }
    }

    @Override
    public List<String> names() {
        return new ArrayList<>(sheets.keySet());
    }

    @Override
    public Rows rows(String table, Layout.Shape shape) throws BadFile, IOException {
        try {
            XSSFReader.SheetIterator each = (XSSFReader.SheetIterator) reader.getSheetsData();
            InputStream sheet = each.next();
            for (int i = sheets.getOrDefault(table, 0); i > 0; i--) {
                sheet.close();
                sheet = each.next();
            }
            return new SheetRows(
                    name + ":" + table,
                    PackedSize.limited(sheet, PackedSize.TOTAL_LIMIT),
                    shared,
                    formats);
        } catch (OpenXML4JException | XMLStreamException | RuntimeException e) {
            throw new BadFile(
                    name + ":" + table,
                    "found a sheet that cannot be read; expected a sound XLSX workbook, such as the sheet saved again");
        }
    }

    @Override
    public boolean hasNativeDates() {
        return true;
    }

    @Override
    public void close() {
        workbook.revert();
    }
}
