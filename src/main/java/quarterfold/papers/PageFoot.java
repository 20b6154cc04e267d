package quarterfold.papers;

import com.lowagie.text.Document;
import com.lowagie.text.Font;
import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfPageEventHelper;
import com.lowagie.text.pdf.PdfTemplate;
import com.lowagie.text.pdf.PdfWriter;

/** The foot of every page: whose papers, which period, and page x of y. */
final class PageFoot extends PdfPageEventHelper {

    private static final float HEIGHT = 30;

    private final Font font;
    private final String about;
    private final PdfTemplate pages;

    /** The number of pages is filled in when the document closes. */
    PageFoot(PdfWriter writer, Font font, String about) {
        this.font = font;
        this.about = about;
        this.pages = writer.getDirectContent().createTemplate(40, 20);
    }

    @Override
    public void onEndPage(PdfWriter writer, Document document) {
        BaseFont letters = font.getBaseFont();
        float size = font.getSize();
        String page = "Page " + writer.getPageNumber() + " of ";
        float right = document.right() - letters.getWidthPoint("000", size);
        float pageWidth = letters.getWidthPoint(page, size);
        PdfContentByte canvas = writer.getDirectContent();
        float room = right - pageWidth - document.left() - 12;
        show(canvas, document.left(), fitting(about, letters, size, room));
        show(canvas, right - pageWidth, page);
        canvas.addTemplate(pages, right, HEIGHT);
    }

    private void show(PdfContentByte canvas, float x, String text) {
        canvas.beginText();
        canvas.setFontAndSize(font.getBaseFont(), font.getSize());
        canvas.setColorFill(font.getColor());
        canvas.setTextMatrix(x, HEIGHT);
        canvas.showText(text);
        canvas.endText();
    }

    private static String fitting(String text, BaseFont letters, float size, float room) {
        if (letters.getWidthPoint(text, size) <= room) {
            return text;
        }
        int end = text.length();
        while (end > 0 && letters.getWidthPoint(text.substring(0, end) + "…", size) > room) {
            end = text.offsetByCodePoints(end, -1);
        }
        return text.substring(0, end) + "…";
    }

    @Override
    public void onCloseDocument(PdfWriter writer, Document document) {
        pages.beginText();
        pages.setFontAndSize(font.getBaseFont(), font.getSize());
        pages.setColorFill(font.getColor());
        pages.setTextMatrix(0, 0);
        pages.showText(Integer.toString(writer.getPageNumber() - 1));
        pages.endText();
    }
}
