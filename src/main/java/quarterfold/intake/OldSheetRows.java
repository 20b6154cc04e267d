package quarterfold.intake;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.apache.poi.hssf.usermodel.HSSFSheet;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellReference;
import org.jspecify.annotations.Nullable;

/** The rows of a sheet of an old binary workbook, with the same texts as {@link SheetRows}. */
final class OldSheetRows implements Rows {
    /** What a cell is beside its text. */
    private enum Is {
        TEXT,
        NUMBER,
        ERROR
    }

    private final List<String> texts = new ArrayList<>();
    private final List<Is> kinds = new ArrayList<>();
    private final String name;
    private final SheetFormats formats;
    private final SheetLook look = new SheetLook();
    private final Iterator<Row> rows;
    private @Nullable Row row;

    OldSheetRows(String name, HSSFWorkbook workbook, HSSFSheet sheet) {
        this.name = name;
        formats = SheetFormats.of(workbook.getInternalWorkbook().isUsing1904DateWindowing());
        rows = sheet.rowIterator();
        sheet.getMergedRegions().forEach(look::merged);
        for (int i = 0; i < 256; i++) {
            if (sheet.isColumnHidden(i)) {
                look.hiddenColumns(i + 1, i + 1);
            }
        }
    }

    @Override
    public boolean next() throws BadFile {
        while (rows.hasNext()) {
            row = rows.next();
            if (read()) {
                look.row(number(), row.getZeroHeight(), width());
                return true;
            }
        }
        return false;
    }

    /** Takes the row's cells, of which any may be broken; whether one has a text. */
    private boolean read() throws BadFile {
        texts.clear();
        kinds.clear();
        boolean any = false;
        for (int i = 0; i < width(); i++) {
            try {
                Cell cell = at(i);
                texts.add(cell == null ? "" : text(cell));
                kinds.add(cell == null ? Is.TEXT : kind(cell));
            } catch (RuntimeException e) { // the library finds out only here
                throw new BadFile(
                        place(i),
                        "found a cell that cannot be read; expected a sound workbook, such as the same sheet saved as .xlsx or .csv");
            }
            any |= !texts.get(i).isBlank();
        }
        return any;
    }

    @Override
    public SheetLook look() {
        return look;
    }

    @Override
    public long number() {
        return row == null ? 0 : row.getRowNum() + 1;
    }

    @Override
    public int width() {
        return row == null ? 0 : Math.max(0, row.getLastCellNum());
    }

    private @Nullable Cell at(int column) {
        return row == null ? null : row.getCell(column);
    }

    private static CellType type(Cell cell) {
        return cell.getCellType() == CellType.FORMULA
                ? cell.getCachedFormulaResultType()
                : cell.getCellType();
    }

    @Override
    public String cell(int column) {
        return column < texts.size() ? texts.get(column) : "";
    }

    private String text(Cell cell) {
        return switch (type(cell)) {
            case NUMERIC ->
                    formats.text(
                            new BigDecimal(Double.toString(cell.getNumericCellValue())).toString(),
                            form(cell));
            case STRING -> cell.getRichStringCellValue().getString();
            case BOOLEAN -> cell.getBooleanCellValue() ? "true" : "false";
            case ERROR -> FormulaError.forInt(cell.getErrorCellValue()).getString();
            default -> "";
        };
    }

    private static Is kind(Cell cell) {
        return switch (type(cell)) {
            case NUMERIC -> form(cell) == SheetFormats.Form.NUMBER ? Is.NUMBER : Is.TEXT;
            case ERROR -> Is.ERROR;
            default -> Is.TEXT;
        };
    }

    private static SheetFormats.Form form(Cell cell) {
        return SheetFormats.form(
                cell.getCellStyle().getDataFormat(),
                String.valueOf(cell.getCellStyle().getDataFormatString()));
    }

    @Override
    public boolean isNumber(int column) {
        return is(column, Is.NUMBER);
    }

    @Override
    public boolean isError(int column) {
        return is(column, Is.ERROR);
    }

    private boolean is(int column, Is kind) {
        return column < kinds.size() && kinds.get(column) == kind;
    }

    @Override
    public boolean isEven() {
        return false;
    }

    @Override
    public String place(int column) {
        return name + "!" + CellReference.convertNumToColString(column) + number();
    }

    @Override
    public String place() {
        return name + "!" + number();
    }

    @Override
    public void close() {}
}
