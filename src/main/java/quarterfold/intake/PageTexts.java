package quarterfold.intake;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import org.apache.pdfbox.contentstream.PDContentStream;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDType3CharProc;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.graphics.form.PDTransparencyGroup;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.util.Matrix;

/**
 * The text of the pages of one PDF, which gives up where it asks for more work than text needs: a
 * small file can ask for any number of operators, of letters, and of bytes to unpack.
 */
final class PageTexts extends PDFTextStripper {

    /** Of one page, and of what is drawn into it each time it is. */
    private static final long OPERATORS_LIMIT = 500_000;

    /** Of all pages together, and of what is drawn into them each time it is. */
    private static final long BYTES_LIMIT = 256L << 20;

    /** Of one page, or one thing drawn into it: its longest text is held in memory. */
    private static final long STREAM_LIMIT = 16L << 20;

    /** Of one page; each is held with its place. */
    private static final long LETTERS_LIMIT = 200_000;

    private long operators;
    private long bytes;
    private long letters;

    /** A PDF asks for more than it may; unchecked, since the engine goes on after checked ones. */
    static final class TooMuch extends RuntimeException {
        private static final long serialVersionUID = 1;

        private final int page;

        TooMuch(int page, String found) {
            super(found);
            this.page = page;
        }

        /** The page at which it does, from 1. */
        int page() {
            return page;
        }
    }

    PageTexts() {
        setSortByPosition(true);
    }

    /** The library asks for every page each time, and only then looks which ones are wanted. */
    @Override
    public void processPage(PDPage page) throws IOException {
        if (getCurrentPageNo() < getStartPage() || getCurrentPageNo() > getEndPage()) {
            return;
        }
        letters = 0;
        operators = 0;
        spend(page);
        super.processPage(page);
    }

    @Override
    public void showForm(PDFormXObject form) throws IOException {
        spend(form);
        super.showForm(form);
    }

    @Override
    protected void processTransparencyGroup(PDTransparencyGroup group) throws IOException {
        spend(group);
        super.processTransparencyGroup(group);
    }

    @Override
    protected void processType3Stream(PDType3CharProc letter, Matrix at) throws IOException {
        spend(letter);
        super.processType3Stream(letter, at);
    }

    @Override
    protected void showText(byte[] text) throws IOException {
        letters += text.length;
        if (letters > LETTERS_LIMIT) {
            throw tooMuch("more than %,d letters on one page".formatted(LETTERS_LIMIT));
        }
        super.showText(text);
    }

    @Override
    protected void processOperator(Operator operator, List<COSBase> operands) throws IOException {
        if (++operators > OPERATORS_LIMIT) {
            throw tooMuch("more than %,d drawing steps on one page".formatted(OPERATORS_LIMIT));
        }
        super.processOperator(operator, operands);
    }

    private void spend(PDContentStream stream) throws IOException {
        byte[] buffer = new byte[1 << 16];
        long unpacked = 0;
        try (InputStream in = stream.getContents()) {
            for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
                unpacked += read;
                bytes += read;
                if (unpacked > STREAM_LIMIT) {
                    throw tooMuch(
                            "more than %,d bytes of drawing in one piece".formatted(STREAM_LIMIT));
                }
                if (bytes > BYTES_LIMIT) {
                    throw tooMuch(
                            "more than %,d bytes of drawing up to this page"
                                    .formatted(BYTES_LIMIT));
                }
            }
        }
    }

    private TooMuch tooMuch(String found) {
        return new TooMuch(getCurrentPageNo(), found);
    }
}
