package quarterfold.intake;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.model.SharedStrings;
import org.jspecify.annotations.Nullable;

/**
 * The rows of a sheet, pulled from its XML one at a time. Numbers come as stored, not as shown;
 * dates as ISO text; a formula as the value last worked out.
 */
final class SheetRows implements Rows {
    private final String sheet;
    private final InputStream in;
    private final XMLStreamReader xml;
    private final SharedStrings shared;
    private final SheetFormats formats;
    private final List<String> cells = new ArrayList<>();
    private final BitSet numbers = new BitSet();
    private final SheetLook look = new SheetLook();
    private final BitSet errors = new BitSet();
    private long row;
    private long characters;

    /** {@code sheet}: file and sheet, such as {@code sales.xlsx:Sheet}. Closes {@code in}. */
    SheetRows(String sheet, InputStream in, SharedStrings shared, SheetFormats formats)
            throws XMLStreamException {
        this.sheet = sheet;
        this.in = in;
        this.shared = shared;
        this.formats = formats;
        xml = SafeXml.reader(in);
    }

    @Override
    public boolean next() throws BadFile {
        try {
            while (xml.hasNext()) {
                if (xml.next() == XMLStreamConstants.START_ELEMENT && isFilledRow()) {
                    return true;
                }
            }
            return false;
        } catch (XMLStreamException | RuntimeException e) {
            PackedSize.refuseTooMuch(place(), e);
            throw new BadFile(
                    place(),
                    "found a sheet that cannot be read on from here; expected a sound XLSX workbook, such as the sheet saved again");
        }
    }

    private boolean isFilledRow() throws XMLStreamException, BadFile {
        switch (xml.getLocalName()) {
            case "col" -> {
                if (isSet("hidden")) {
                    look.hiddenColumns(
                            Integer.parseInt(xml.getAttributeValue(null, "min")),
                            Integer.parseInt(xml.getAttributeValue(null, "max")));
                }
            }
            case "mergeCell" ->
                    look.merged(CellRangeAddress.valueOf(xml.getAttributeValue(null, "ref")));
            case "row" -> {
                boolean hidden = isSet("hidden");
                readRow();
                if (!cells.stream().allMatch(String::isBlank)) {
                    look.row(row, hidden, cells.size());
                    return true;
                }
            }
            default -> {}
        }
        return false;
    }

    private boolean isSet(String attribute) {
        String value = xml.getAttributeValue(null, attribute);
        return "1".equals(value) || "true".equals(value);
    }

    @Override
    public SheetLook look() {
        return look;
    }

    private void readRow() throws XMLStreamException, BadFile {
        String number = xml.getAttributeValue(null, "r");
        long at = number == null ? row + 1 : Long.parseLong(number);
        if (at <= row) {
            throw new BadFile(
                    place(),
                    "found row %d after row %d; expected rows in order, such as the sheet saved again"
                            .formatted(at, row));
        }
        row = at;
        cells.clear();
        numbers.clear();
        errors.clear();
        characters = 0;
        int column = 0;
        while (xml.hasNext()) {
            int event = xml.next();
            if (event == XMLStreamConstants.START_ELEMENT && xml.getLocalName().equals("c")) {
                String reference = xml.getAttributeValue(null, "r");
                int named = reference == null ? column : column(reference);
                if (named < column) {
                    throw new BadFile(
                            place(named),
                            "found the cell after one that stands right of it, or twice; expected cells in order, such as the sheet saved again");
                }
                column = named;
                readCell(column);
                column++;
            } else if (event == XMLStreamConstants.END_ELEMENT
                    && xml.getLocalName().equals("row")) {
                return;
            }
        }
    }

    private int column(String reference) throws BadFile {
        CellReference cell = new CellReference(reference);
        if (cell.getRow() >= 0 && cell.getRow() + 1 != row) {
            throw new BadFile(
                    place(),
                    "found the cell %s in it; expected cells of the row alone, such as the sheet saved again"
                            .formatted(Problem.quoted(reference)));
        }
        return cell.getCol();
    }

    private void readCell(int column) throws XMLStreamException, BadFile {
        if (column < 0 || column >= COLUMN_LIMIT) {
            throw new BadFile(
                    place(),
                    "found a cell beyond column XFD; expected at most 16,384 columns, such as A to Z");
        }
        String type = xml.getAttributeValue(null, "t");
        String style = xml.getAttributeValue(null, "s");
        StringBuilder stored = new StringBuilder();
        StringBuilder inline = new StringBuilder();
        boolean formula = false;
        int phonetic = 0;
        StringBuilder target = null;
        while (xml.hasNext()) {
            int event = xml.next();
            if (event == XMLStreamConstants.START_ELEMENT) {
                String element = xml.getLocalName();
                formula |= element.equals("f");
                phonetic += element.equals("rPh") ? 1 : 0;
                target =
                        element.equals("v")
                                ? stored
                                : element.equals("t") && phonetic == 0 ? inline : null;
            } else if (event == XMLStreamConstants.END_ELEMENT) {
                String element = xml.getLocalName();
                target = null;
                phonetic -= element.equals("rPh") ? 1 : 0;
                if (element.equals("c")) {
                    break;
                }
            } else if (target != null && xml.isCharacters()) {
                target.append(xml.getText());
                refuseLong(column, target.length());
            }
        }
        if (formula && stored.isEmpty() && !"str".equals(type)) {
            throw new BadFile(
                    place(column),
                    "found a formula that was never worked out; expected its value, such as the workbook opened in a spreadsheet program and saved again");
        }
        errors.set(column, "e".equals(type));
        put(column, text(column, type, style, stored.toString(), inline.toString()));
    }

    /** One row is all that is held of a sheet, so that it must end. */
    private void refuseLong(int column, int length) throws BadFile {
        if (length > CELL_LIMIT) {
            throw new BadFile(
                    place(column),
                    "found a cell of more than %,d characters; expected at most that"
                            .formatted(CELL_LIMIT));
        }
        if (characters + length > ROW_LIMIT) {
            throw new BadFile(
                    place(),
                    "found a row of more than %,d characters; expected at most that"
                            .formatted(ROW_LIMIT));
        }
    }

    private String text(
            int column,
            @Nullable String type,
            @Nullable String style,
            String stored,
            String inline) {
        return switch (type == null ? "n" : type) {
            case "s" -> shared.getItemAt(Integer.parseInt(stored.strip())).getString();
            case "inlineStr" -> inline;
            case "b" -> stored.equals("1") ? "true" : "false";
            case "n" -> number(column, style, stored.strip());
            default -> stored;
        };
    }

    private String number(int column, @Nullable String style, String stored) {
        SheetFormats.Form form =
                style == null ? SheetFormats.Form.NUMBER : formats.form(Integer.parseInt(style));
        numbers.set(column, form == SheetFormats.Form.NUMBER);
        return stored.isEmpty() ? "" : formats.text(stored, form);
    }

    private void put(int column, String text) throws BadFile {
        refuseLong(column, text.length());
        characters += text.length();
        while (cells.size() <= column) {
            cells.add("");
        }
        cells.set(column, text);
    }

    @Override
    public long number() {
        return row;
    }

    @Override
    public int width() {
        return cells.size();
    }

    @Override
    public String cell(int column) {
        return column < cells.size() ? cells.get(column) : "";
    }

    @Override
    public boolean isNumber(int column) {
        return numbers.get(column);
    }

    @Override
    public boolean isError(int column) {
        return errors.get(column);
    }

    @Override
    public boolean isEven() {
        return false;
    }

    @Override
    public String place(int column) {
        return sheet + "!" + CellReference.convertNumToColString(column) + row;
    }

    @Override
    public String place() {
        return row == 0 ? sheet : sheet + "!" + row;
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
