package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** PDFs of many pages: each is unpacked once, and what a page may ask for is its own. */
class PageTextsTest {
    @TempDir Path folder;

    /** Pages that all draw the same one line of text, and whatever else. */
    private Path pages(int pages, String besides) throws IOException {
        Path file = folder.resolve("long.pdf");
        try (PDDocument document = new PDDocument()) {
            PDStream stream = new PDStream(document);
            try (OutputStream out = stream.createOutputStream(COSName.FLATE_DECODE)) {
                String text = "BT /F 9 Tf 40 700 Td (One line of text) Tj ET ";
                out.write((text + besides).getBytes(StandardCharsets.US_ASCII));
            }
            PDResources resources = new PDResources();
            resources.put(
                    COSName.getPDFName("F"), new PDType1Font(Standard14Fonts.FontName.HELVETICA));
            for (int i = 0; i < pages; i++) {
                PDPage page = new PDPage();
                page.setResources(resources);
                page.setContents(stream);
                document.addPage(page);
            }
            document.save(file.toFile());
        }
        return file;
    }

    /** 400 pages of 20 KB are 8 MB; each unpacked for each of the others they would be 3 GB. */
    @Test
    void eachPageIsUnpackedOnce() throws BadFile, IOException {
        try (PdfFile pdf = PdfFile.open(pages(400, " ".repeat(20_000)), "long.pdf")) {
            assertThat(PdfLines.of(pdf))
                    .hasSize(400)
                    .contains(
                            new PrintedLine(1, 1, "One line of text"),
                            new PrintedLine(400, 1, "One line of text"));
        }
    }

    /** Two million in all, and on each fewer than the 500,000 that one may have. */
    @Test
    void operatorsAreCountedByThePage() throws BadFile, IOException {
        try (PdfFile pdf = PdfFile.open(pages(5, "q Q ".repeat(210_000)), "long.pdf")) {
            assertThat(PdfLines.of(pdf)).hasSize(5);
        }
    }
}
