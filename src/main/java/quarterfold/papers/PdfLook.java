package quarterfold.papers;

import com.lowagie.text.Chunk;
import com.lowagie.text.Element;
import com.lowagie.text.Font;
import com.lowagie.text.Phrase;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import java.awt.Color;
import java.io.IOException;
import org.librepdf.openpdf.fonts.Liberation;

/** How the summary looks: the workbook's inks and grounds in Liberation Sans, embedded. */
final class PdfLook {

    private static final Color PLUM = color(Look.PLUM);
    private static final Color INK = color(Look.INK);
    private static final Color QUIET = color(Look.QUIET);
    private static final Color SAND = color(Look.SAND);
    private static final Color LINE = color(Look.LINE);
    private static final float SIZE = 9;

    final Font plain;
    final Font bold;
    final Font quiet;
    final Font small;
    final Font title;
    final Font section;
    final Font heading;
    final Font saying;
    private final BaseFont letters;

    PdfLook() throws IOException {
        letters = Liberation.SANS.create().getBaseFont();
        BaseFont heavy = Liberation.SANS_BOLD.create().getBaseFont();
        plain = new Font(letters, SIZE, Font.NORMAL, INK);
        bold = new Font(heavy, SIZE, Font.NORMAL, INK);
        quiet = new Font(letters, SIZE, Font.NORMAL, QUIET);
        small = new Font(letters, 7.5f, Font.NORMAL, QUIET);
        title = new Font(heavy, 19, Font.NORMAL, PLUM);
        section = new Font(heavy, 11.5f, Font.NORMAL, PLUM);
        heading = new Font(heavy, 8, Font.NORMAL, QUIET);
        saying = new Font(heavy, 13, Font.NORMAL, INK);
    }

    /**
     * A text as the letters can show it: Liberation Sans has Latin, Greek, Cyrillic and Hebrew; any
     * other letter shows as a question mark, and stands in full in the workbook.
     */
    String shown(String text) {
        String clean = CellText.xml(text);
        if (clean.codePoints().allMatch(this::canShow)) {
            return clean;
        }
        StringBuilder shown = new StringBuilder();
        clean.codePoints().forEach(c -> shown.appendCodePoint(canShow(c) ? c : '?'));
        return shown.toString();
    }

    private boolean canShow(int c) {
        return c == '\n' || letters.charExists(c);
    }

    /** A text of its own. A table, since a paragraph's spacing would put a stray blank in it. */
    PdfPTable line(String text, Font font, float before) {
        PdfPTable table = table(1);
        table.setSpacingBefore(before);
        PdfPCell cell = wide(text, font, 1);
        cell.setLeading(0, 1.4f);
        cell.setPadding(0);
        cell.setPaddingBottom(3);
        table.addCell(cell);
        return table;
    }

    PdfPCell left(String text, Font font) {
        PdfPCell cell = new PdfPCell(new Phrase(shown(text), font));
        cell.setLeading(0, 1.3f);
        cell.setBorder(Rectangle.BOTTOM);
        cell.setBorderColor(LINE);
        cell.setBorderWidth(0.4f);
        cell.setPaddingTop(3.5f);
        cell.setPaddingBottom(4.5f);
        cell.setPaddingLeft(0);
        cell.setPaddingRight(8);
        cell.setVerticalAlignment(Element.ALIGN_TOP);
        return cell;
    }

    /** A text, and under it one of less weight. */
    PdfPCell twoLines(String first, String second) {
        PdfPCell cell = left(first, plain);
        cell.getPhrase().add(new Chunk("\n" + shown(second), small));
        return cell;
    }

    PdfPCell right(String text, Font font) {
        PdfPCell cell = left(text, font);
        cell.setHorizontalAlignment(Element.ALIGN_RIGHT);
        cell.setPaddingLeft(8);
        cell.setPaddingRight(0);
        cell.setNoWrap(true);
        return cell;
    }

    /** A cell without a line, over several columns. */
    PdfPCell wide(String text, Font font, int columns) {
        PdfPCell cell = left(text, font);
        cell.setColspan(columns);
        cell.setBorder(Rectangle.NO_BORDER);
        return cell;
    }

    PdfPTable table(float... widths) {
        PdfPTable table = new PdfPTable(widths);
        table.setWidthPercentage(100);
        table.setSpacingBefore(16);
        return table;
    }

    /**
     * A section: its name, what to know, and column headings, all said again on every page it goes
     * on to. A heading that starts with {@code >} stands to the right, over figures.
     */
    PdfPTable section(String name, String note, float[] widths, String... headings) {
        PdfPTable table = table(widths);
        table.addCell(wide(name, section, widths.length));
        int rows = 2;
        if (!note.isEmpty()) {
            table.addCell(wide(note, quiet, widths.length));
            rows++;
        }
        for (String text : headings) {
            boolean right = text.startsWith(">");
            PdfPCell cell = right ? right(text.substring(1), heading) : left(text, heading);
            cell.setBorderColor(PLUM);
            cell.setBorderWidth(0.8f);
            cell.setVerticalAlignment(Element.ALIGN_BOTTOM);
            cell.setNoWrap(false);
            table.addCell(cell);
        }
        table.setHeaderRows(rows);
        return table;
    }

    /** A text on the sand ground. */
    PdfPTable panel(String text, Font font) {
        PdfPTable table = table(1);
        PdfPCell cell = wide(text, font, 1);
        cell.setBackgroundColor(SAND);
        cell.setPadding(9);
        cell.setPaddingTop(7);
        table.addCell(cell);
        table.setKeepTogether(true);
        return table;
    }

    private static Color color(String rgb) {
        return new Color(Integer.parseInt(rgb, 16));
    }
}
