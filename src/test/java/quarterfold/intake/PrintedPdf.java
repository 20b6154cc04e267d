package quarterfold.intake;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;

/**
 * Makes a PDF of lines, each {@code |} in a line the start of a column. What is lower on a page is
 * drawn first, as some makers of PDFs do, so that the order of reading has to be found.
 */
public final class PrintedPdf {
    private static final PDType1Font FONT = new PDType1Font(Standard14Fonts.FontName.HELVETICA);
    private static final float SIZE = 9;
    private static final float COLUMN = 130;
    private static final float LEFT = 40;
    private static final float TOP = 800;
    private static final float LINE = 14;

    private PrintedPdf() {}

    /** A page for each text. */
    public static Path write(Path file, String... pages) {
        try (PDDocument document = new PDDocument()) {
            for (String page : pages) {
                add(document, page.lines().toList());
            }
            document.save(file.toFile());
            return file;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A small PDF that asks for more work than any machine can do. */
    static Path bomb(Path file) {
        try (PDDocument document = new PDDocument()) {
            PDFormXObject form = form(document, "q Q");
            for (int i = 0; i < 12; i++) {
                PDFormXObject outer = form(document, "/X Do ".repeat(8));
                PDResources resources = new PDResources();
                resources.put(COSName.getPDFName("X"), form);
                outer.setResources(resources);
                form = outer;
            }
            PDPage page = new PDPage();
            document.addPage(page);
            try (PDPageContentStream out = new PDPageContentStream(document, page)) {
                out.drawForm(form);
            }
            document.save(file.toFile());
            return file;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static PDFormXObject form(PDDocument document, String content) throws IOException {
        PDFormXObject form = new PDFormXObject(document);
        form.setBBox(new PDRectangle(100, 100));
        try (OutputStream out = form.getStream().createOutputStream(COSName.FLATE_DECODE)) {
            out.write(content.getBytes(StandardCharsets.US_ASCII));
        }
        return form;
    }

    private static void add(PDDocument document, List<String> lines) throws IOException {
        PDPage page = new PDPage();
        page.setMediaBox(new PDRectangle(595, 842));
        document.addPage(page);
        try (PDPageContentStream out = new PDPageContentStream(document, page)) {
            List<Integer> order = new ArrayList<>();
            for (int i = lines.size() - 1; i >= 0; i--) {
                order.add(i);
            }
            for (int i : order) {
                String[] cells = lines.get(i).split("\\|", -1);
                for (int c = cells.length - 1; c >= 0; c--) {
                    out.beginText();
                    out.setFont(FONT, SIZE);
                    out.newLineAtOffset(LEFT + c * COLUMN, TOP - i * LINE);
                    out.showText(cells[c]);
                    out.endText();
                }
            }
        }
    }
}
