package quarterfold.papers;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.HorizontalAlignment;
import org.apache.poi.ss.usermodel.VerticalAlignment;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFColor;
import org.apache.poi.xssf.usermodel.XSSFFont;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * How the workbook looks: plum ink for headings, a sand ground for header rows, hair lines, and
 * nothing said by colour alone. Every style is made once.
 */
final class Look {

    static final String PLUM = "5A3350";
    static final String INK = "2B2A33";
    static final String QUIET = "6A6570";
    static final String SAND = "F4F0E8";
    static final String LINE = "CFC7B8";
    private static final String LETTER = "Arial";
    private static final String AMOUNT = "#,##0.00??;-#,##0.00??";

    /** The parts of a sheet that look alike. */
    enum Part {
        TITLE,
        NOTE,
        LABEL,
        HEADING,
        HEADING_RIGHT,
        FACT,
        FACT_DAY,
        TEXT,
        TEXT_WRAPPED,
        TEXT_QUOTED,
        TEXT_QUOTED_WRAPPED,
        AMOUNT,
        WHOLE,
        COUNT,
        DAY,
        TOTAL,
        TOTAL_LABEL,
        BOX_NAME,
        BOX_PENCE,
        BOX_POUNDS,
        BOX_EXACT,
        BOX_FIGURE_PENCE,
        BOX_FIGURE_POUNDS,
        BOX_CHECK,
        SAYING
    }

    /** Left-aligned cells keep off the figures to their left. */
    private static final List<Part> INDENTED =
            List.of(
                    Part.TITLE,
                    Part.NOTE,
                    Part.LABEL,
                    Part.TOTAL_LABEL,
                    Part.SAYING,
                    Part.HEADING,
                    Part.FACT,
                    Part.FACT_DAY,
                    Part.TEXT,
                    Part.TEXT_WRAPPED,
                    Part.TEXT_QUOTED,
                    Part.TEXT_QUOTED_WRAPPED,
                    Part.DAY,
                    Part.BOX_NAME,
                    Part.BOX_CHECK);

    /** The cells of a list's rows stand on a hair line. */
    private static final List<Part> LISTED =
            List.of(
                    Part.TEXT,
                    Part.TEXT_WRAPPED,
                    Part.TEXT_QUOTED,
                    Part.TEXT_QUOTED_WRAPPED,
                    Part.AMOUNT,
                    Part.WHOLE,
                    Part.COUNT,
                    Part.DAY);

    private final XSSFWorkbook workbook;
    private final Map<Part, CellStyle> styles = new EnumMap<>(Part.class);

    Look(XSSFWorkbook workbook) {
        this.workbook = workbook;
        XSSFFont plain = workbook.getFontAt(0);
        plain.setFontName(LETTER);
        plain.setFontHeightInPoints((short) 10);
        plain.setColor(color(INK));
        XSSFFont bold = font(10, true, INK);
        for (Part part : Part.values()) {
            styles.put(part, base());
        }
        made(Part.TITLE).setFont(font(15, true, PLUM));
        made(Part.NOTE).setFont(font(10, false, QUIET));
        made(Part.NOTE).setWrapText(true);
        made(Part.LABEL).setFont(font(10, false, QUIET));
        heading(Part.HEADING, HorizontalAlignment.LEFT);
        heading(Part.HEADING_RIGHT, HorizontalAlignment.RIGHT);
        made(Part.TEXT_WRAPPED).setWrapText(true);
        made(Part.TEXT_QUOTED).setQuotePrefixed(true);
        made(Part.TEXT_QUOTED_WRAPPED).setQuotePrefixed(true);
        made(Part.TEXT_QUOTED_WRAPPED).setWrapText(true);
        format(Part.AMOUNT, AMOUNT);
        format(Part.WHOLE, "0");
        format(Part.COUNT, "#,##0");
        format(Part.DAY, "d mmm yyyy");
        format(Part.FACT_DAY, "d mmmm yyyy");
        for (Part part : INDENTED) {
            made(part).setAlignment(HorizontalAlignment.LEFT);
            made(part).setIndention((short) 1);
        }
        for (Part part : LISTED) {
            ruled(made(part));
        }
        format(Part.TOTAL, AMOUNT).setFont(bold);
        made(Part.TOTAL_LABEL).setFont(bold);
        made(Part.SAYING).setFont(font(12, true, INK));
        underlined(Part.BOX_NAME).setWrapText(true);
        underlined(format(Part.BOX_PENCE, "#,##0.00"));
        underlined(format(Part.BOX_POUNDS, "#,##0"));
        underlined(format(Part.BOX_EXACT, "#,##0.0000"));
        underlined(format(Part.BOX_FIGURE_PENCE, "#,##0.00")).setFont(bold);
        underlined(format(Part.BOX_FIGURE_POUNDS, "#,##0")).setFont(bold);
        underlined(Part.BOX_CHECK);
    }

    CellStyle style(Part part) {
        return made(part);
    }

    /** The style of a text cell, marked as text where it looks like a formula. */
    CellStyle text(String text, boolean wraps) {
        return CellText.looksLikeFormula(text)
                ? made(wraps ? Part.TEXT_QUOTED_WRAPPED : Part.TEXT_QUOTED)
                : made(wraps ? Part.TEXT_WRAPPED : Part.TEXT);
    }

    private XSSFCellStyle made(Part part) {
        return (XSSFCellStyle) styles.computeIfAbsent(part, p -> base());
    }

    private XSSFCellStyle base() {
        XSSFCellStyle style = workbook.createCellStyle();
        style.setVerticalAlignment(VerticalAlignment.TOP);
        return style;
    }

    private void heading(Part part, HorizontalAlignment side) {
        XSSFCellStyle style = made(part);
        style.setFont(font(10, true, PLUM));
        style.setAlignment(side);
        style.setVerticalAlignment(VerticalAlignment.BOTTOM);
        style.setWrapText(true);
        style.setFillForegroundColor(color(SAND));
        style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
        style.setBorderBottom(BorderStyle.THIN);
        style.setBottomBorderColor(color(PLUM));
    }

    private XSSFCellStyle underlined(Part part) {
        return underlined(made(part));
    }

    private static XSSFCellStyle underlined(XSSFCellStyle style) {
        style.setVerticalAlignment(VerticalAlignment.CENTER);
        return ruled(style);
    }

    private static XSSFCellStyle ruled(XSSFCellStyle style) {
        style.setBorderBottom(BorderStyle.HAIR);
        style.setBottomBorderColor(color(LINE));
        return style;
    }

    private XSSFCellStyle format(Part part, String pattern) {
        XSSFCellStyle style = made(part);
        style.setDataFormat(workbook.createDataFormat().getFormat(pattern));
        return style;
    }

    private XSSFFont font(int points, boolean bold, String color) {
        XSSFFont font = workbook.createFont();
        font.setFontName(LETTER);
        font.setFontHeightInPoints((short) points);
        font.setBold(bold);
        font.setColor(color(color));
        return font;
    }

    private static XSSFColor color(String rgb) {
        int value = Integer.parseInt(rgb, 16);
        return new XSSFColor(
                new byte[] {(byte) (value >> 16), (byte) (value >> 8), (byte) value}, null);
    }
}
