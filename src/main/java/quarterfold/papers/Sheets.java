package quarterfold.papers;

import java.util.Locale;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.PageMargin;
import org.apache.poi.ss.usermodel.PrintSetup;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.streaming.SXSSFSheet;

/**
 * The workbook being written: makes its sheets, all printed alike.
 *
 * @param about whose papers and which period, as it stands under every title
 * @param business the business alone, for the foot of a printed page
 * @param rowLimit the most rows a sheet holds, headings included
 */
record Sheets(SteadyWorkbook workbook, Look look, String about, String business, int rowLimit) {

    /** The rows of a sheet in Office Open XML spreadsheets: ECMA-376 names 1,048,576. */
    static final int ROW_LIMIT = 1_048_576;

    private static final double INCH_TO_EDGE = 0.4;

    /** A new sheet after the ones there are: A4, landscape, as wide as the page. */
    SXSSFSheet create(String name) {
        SXSSFSheet sheet = workbook.createSheet(name);
        sheet.setFitToPage(true);
        sheet.setAutobreaks(true);
        sheet.setDisplayGridlines(false);
        PrintSetup print = sheet.getPrintSetup();
        print.setPaperSize(PrintSetup.A4_PAPERSIZE);
        print.setLandscape(true);
        print.setFitWidth((short) 1);
        print.setFitHeight((short) 0);
        for (short side = 0; side < 4; side++) {
            sheet.setMargin(PageMargin.getByShortValue(side), INCH_TO_EDGE);
        }
        sheet.setMargin(PageMargin.BOTTOM, 0.7);
        sheet.getFooter().setLeft("&8&A, " + CellText.of(business).replace("&", "&&"));
        sheet.getFooter().setRight("&8Page &P of &N");
        return sheet;
    }

    void put(Row row, int column, Look.Part part, String text) {
        Cell cell = row.createCell(column);
        cell.setCellValue(CellText.of(text));
        cell.setCellStyle(look.style(part));
    }

    /** A sheet's title row. */
    void title(SXSSFSheet sheet, String title) {
        Row row = sheet.createRow(0);
        row.setHeightInPoints(24);
        put(row, 0, Look.Part.TITLE, title);
    }

    /** A column width in the file's own unit. */
    static int characters(double width) {
        return (int) Math.round(width * 256);
    }

    /** The second and later sheets of a list are named by their place: {@code Sales 2}. */
    static String name(String name, int page) {
        return page == 0 ? name : String.format(Locale.ROOT, "%s %d", name, page + 1);
    }
}
