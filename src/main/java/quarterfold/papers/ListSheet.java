package quarterfold.papers;

import java.util.ArrayList;
import java.util.List;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.IgnoredErrorType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import quarterfold.money.Amount;

/**
 * A list that takes as many sheets as it needs: a title, whose it is, the totals of the rows shown,
 * a heading that stays in view and can be filtered, then a row for each thing listed.
 */
final class ListSheet<T> {

    /** The rows above the list on every sheet. */
    static final int HEAD_ROWS = 4;

    /**
     * What a sheet's column adds up to, for programs that show a workbook without recalculating.
     */
    interface Totals {
        Amount of(int page, int column);
    }

    /**
     * What a list is.
     *
     * @param name of its sheet, and its title
     * @param note what to know about it
     * @param ifEmpty what to say where it has no rows
     * @param mostLines the most lines a row shows; the cell holds the rest
     */
    record Heading(String name, String note, String ifEmpty, int mostLines) {}

    private final Sheets sheets;
    private final List<Column<T>> columns;
    private final List<SXSSFSheet> pages = new ArrayList<>();
    private final long rows;
    private final long rowsInSheet;
    private final int mostLines;
    private long added;

    /** Makes the sheets for so many rows; {@link #add} then fills them. */
    ListSheet(Sheets sheets, Heading heading, List<Column<T>> columns, long rows, Totals totals) {
        this.sheets = sheets;
        this.columns = List.copyOf(columns);
        this.rows = rows;
        this.mostLines = heading.mostLines();
        this.rowsInSheet = sheets.rowLimit() - (long) HEAD_ROWS;
        int count = (int) Math.max(1, (rows + rowsInSheet - 1) / rowsInSheet);
        for (int page = 0; page < count; page++) {
            SXSSFSheet sheet = sheets.create(Sheets.name(heading.name(), page));
            pages.add(sheet);
            head(sheet, heading, page, count, totals);
        }
        if (rows == 0) {
            Row row = pages.get(0).createRow(HEAD_ROWS);
            sheets.put(row, 0, Look.Part.LABEL, heading.ifEmpty());
        }
    }

    private void head(SXSSFSheet sheet, Heading heading, int page, int count, Totals totals) {
        String part = count == 1 ? "" : ", sheet " + (page + 1) + " of " + count;
        sheets.title(sheet, heading.name() + part);
        sheets.put(sheet.createRow(1), 0, Look.Part.LABEL, sheets.about() + ". " + heading.note());
        Row totalRow = sheet.createRow(2);
        Row headingRow = sheet.createRow(HEAD_ROWS - 1);
        headingRow.setHeightInPoints(29);
        for (int i = 0; i < columns.size(); i++) {
            Column<T> column = columns.get(i);
            sheet.setColumnWidth(i, Sheets.characters(column.width()));
            sheets.put(
                    headingRow,
                    i,
                    column.rightAligned() ? Look.Part.HEADING_RIGHT : Look.Part.HEADING,
                    column.heading());
            if (column.totalled()) {
                Cell total = totalRow.createCell(i);
                total.setCellFormula("SUBTOTAL(109," + cells(page, i) + ")");
                Value.number(total, totals.of(page, i));
                total.setCellStyle(sheets.look().style(Look.Part.TOTAL));
            }
        }
        if (columns.stream().anyMatch(Column::totalled)) {
            sheets.put(totalRow, 0, Look.Part.TOTAL_LABEL, "Total of the rows shown");
        }
        finish(sheet, page);
    }

    private void finish(SXSSFSheet sheet, int page) {
        int last = (int) lastRow(page) - 1;
        sheet.createFreezePane(1, HEAD_ROWS);
        sheet.setRepeatingRows(CellRangeAddress.valueOf(HEAD_ROWS + ":" + HEAD_ROWS));
        CellRangeAddress all = new CellRangeAddress(HEAD_ROWS - 1, last, 0, columns.size() - 1);
        sheet.setAutoFilter(all);
        sheets.workbook()
                .getXSSFWorkbook()
                .getSheet(sheet.getSheetName())
                .addIgnoredErrors(all, IgnoredErrorType.NUMBER_STORED_AS_TEXT);
    }

    /** Adds the next row; the one after a full sheet goes on to the next sheet. */
    void add(T thing) {
        if (added == rows) {
            throw new IllegalStateException(
                    "the list "
                            + pages.get(0).getSheetName()
                            + " was made for "
                            + rows
                            + " rows and was given more");
        }
        SXSSFSheet sheet = pages.get((int) (added / rowsInSheet));
        Row row = sheet.createRow((int) (added % rowsInSheet) + HEAD_ROWS);
        added++;
        int lines = 1;
        for (int i = 0; i < columns.size(); i++) {
            Column<T> column = columns.get(i);
            Value value = column.value().apply(thing);
            value.put(row.createCell(i), sheets.look(), column.width());
            lines = Math.max(lines, value.lines(column.width()));
        }
        row.setHeightInPoints(Wrapping.height(Math.min(lines, mostLines)));
    }

    /** The cells of a column on every sheet of the list, such as {@code 'Sales 2'!R5:R1048576}. */
    List<String> ranges(int column) {
        List<String> ranges = new ArrayList<>();
        for (int page = 0; page < pages.size(); page++) {
            String name = pages.get(page).getSheetName();
            String plain = name.contains(" ") ? "'" + name + "'" : name;
            ranges.add(plain + "!" + cells(page, column));
        }
        return ranges;
    }

    private String cells(int page, int column) {
        String letters = CellReference.convertNumToColString(column);
        return letters + (HEAD_ROWS + 1) + ":" + letters + lastRow(page);
    }

    /** The number of the last row, as a person counts; there is always one below the heading. */
    private long lastRow(int page) {
        long here = Math.min(rowsInSheet, rows - page * rowsInSheet);
        return HEAD_ROWS + Math.max(1, here);
    }
}
