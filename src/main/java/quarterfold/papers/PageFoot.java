package quarterfold.papers;

import com.lowagie.text.Document;
import com.lowagie.text.Font;
import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfPageEventHelper;
import com.lowagie.text.pdf.PdfTemplate;
import com.lowagie.text.pdf.PdfWriter;
import java.util.ArrayList;
import java.util.List;

/** The foot of every page: whose papers, which period, and page x of y. */
final class PageFoot extends PdfPageEventHelper {

    private static final float HEIGHT = 30;
    private static final float ROOM = 90;

    private final Font font;
    private final String about;
    private final List<PdfTemplate> pages = new ArrayList<>();

    /** How many pages there are is known, and written, when the document closes. */
    PageFoot(Font font, String about) {
        this.font = font;
        this.about = about;
    }

    @Override
    public void onEndPage(PdfWriter writer, Document document) {
        PdfContentByte canvas = writer.getDirectContent();
        float room = document.right() - document.left() - ROOM;
        PdfTemplate left = canvas.createTemplate(room, 14);
        show(left, 0, fitting(about, room));
        canvas.addTemplate(left, document.left(), HEIGHT);
        PdfTemplate right = canvas.createTemplate(ROOM, 14);
        canvas.addTemplate(right, document.right() - ROOM, HEIGHT);
        pages.add(right);
    }

    @Override
    public void onCloseDocument(PdfWriter writer, Document document) {
        for (int i = 0; i < pages.size(); i++) {
            String text = "Page " + (i + 1) + " of " + pages.size();
            show(pages.get(i), ROOM - width(text), text);
        }
    }

    private void show(PdfContentByte canvas, float x, String text) {
        canvas.beginText();
        canvas.setFontAndSize(font.getBaseFont(), font.getSize());
        canvas.setColorFill(font.getColor());
        canvas.setTextMatrix(x, 4);
        canvas.showText(text);
        canvas.endText();
    }

    private float width(String text) {
        BaseFont letters = font.getBaseFont();
        return letters.getWidthPoint(text, font.getSize());
    }

    private String fitting(String text, float room) {
        if (width(text) <= room) {
            return text;
        }
        int end = text.length();
        while (end > 0 && width(text.substring(0, end) + "…") > room) {
            end = text.offsetByCodePoints(end, -1);
        }
        return text.substring(0, end) + "…";
    }
}
