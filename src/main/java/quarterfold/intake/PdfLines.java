package quarterfold.intake;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * The lines of text on the pages of a PDF, as a person reads them: down the page, left to right.
 */
final class PdfLines {
    private static final int PAGES_LIMIT = 2_000;
    private static final int LENGTH_LIMIT = 2_000;

    private PdfLines() {}

    /**
     * The lines of a PDF that are not blank.
     *
     * @throws BadFile if a page has no text, or the PDF is not sound or too large
     */
    static List<PrintedLine> of(PdfFile pdf) throws BadFile {
        PDDocument document = pdf.document();
        int pages = document.getNumberOfPages();
        if (pages > PAGES_LIMIT) {
            throw new BadFile(
                    pdf.name(),
                    "found %,d pages; expected at most %,d, such as one month's statement"
                            .formatted(pages, PAGES_LIMIT));
        }
        List<PrintedLine> lines = new ArrayList<>();
        int without = 0;
        try {
            PageTexts stripper = new PageTexts();
            for (int page = 1; page <= pages; page++) {
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                int before = lines.size();
                add(pdf.name(), page, stripper.getText(document), lines);
                if (lines.size() == before && without == 0) {
                    without = page;
                }
            }
        } catch (PageTexts.TooMuch e) {
            throw new BadFile(
                    pdf.name() + ":page " + e.page(),
                    "found %s, far more than text needs; expected at most that, such as a statement as it was downloaded; or enter its rows in the plain sheet"
                            .formatted(e.getMessage()));
        } catch (OutOfMemoryError | StackOverflowError e) {
            throw new BadFile(
                    pdf.name(),
                    "found pages that unpack to far more than text needs; expected a statement as it was downloaded; or enter its rows in the plain sheet");
        } catch (IOException | RuntimeException e) { // its parser throws both on broken objects
            throw new BadFile(
                    pdf.name(),
                    "found a PDF whose pages cannot be read; expected sound ones, such as the same report downloaded again");
        }
        if (without > 0 || pages == 0) {
            throw new BadFile(
                    pdf.name(),
                    "found no text on page %d, as in a picture of a page; expected a PDF with a text layer, such as the one that was downloaded; or enter its rows in the plain sheet"
                            .formatted(Math.max(1, without)));
        }
        return lines;
    }

    private static void add(String name, int page, String text, List<PrintedLine> lines)
            throws BadFile {
        int number = 0;
        for (String each : text.split("\\R", -1)) {
            String line = plain(each);
            if (line.isEmpty()) {
                continue;
            }
            PrintedLine printed = new PrintedLine(page, ++number, line);
            if (number > PrintedLine.LINES_LIMIT || line.length() > LENGTH_LIMIT) {
                throw new BadFile(
                        printed.place(name),
                        "found more text than a page holds; expected at most %d lines of %,d characters, such as a statement as it was downloaded"
                                .formatted(PrintedLine.LINES_LIMIT, LENGTH_LIMIT));
            }
            lines.add(printed);
        }
    }

    /** One space for each run of spaces, of whatever width. */
    private static String plain(String text) {
        StringBuilder plain = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean space = Character.isSpaceChar(c) || Character.isWhitespace(c);
            if (!space) {
                plain.append(c);
            } else if (plain.length() > 0 && plain.charAt(plain.length() - 1) != ' ') {
                plain.append(' ');
            }
        }
        return plain.toString().strip();
    }
}
