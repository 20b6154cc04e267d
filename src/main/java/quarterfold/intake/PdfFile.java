package quarterfold.intake;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.io.MemoryUsageSetting;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;

/** A PDF, opened for what is in it; nothing in it is run. */
final class PdfFile implements Closeable {
    /** What a PDF's streams may hold in memory, in bytes; the rest goes to temporary files. */
    private static final long IN_MEMORY = 32L << 20;

    private final String name;
    private final PDDocument document;

    private PdfFile(String name, PDDocument document) {
        this.name = name;
        this.document = document;
    }

    /**
     * Opens a PDF.
     *
     * @param name the file's own name, for messages
     * @throws BadFile if it is locked with a password, or is not sound
     */
    static PdfFile open(Path file, String name) throws BadFile, IOException {
        try {
            return new PdfFile(
                    name,
                    Loader.loadPDF(
                            file.toFile(), MemoryUsageSetting.setupMixed(IN_MEMORY).streamCache));
        } catch (InvalidPasswordException e) {
            throw new BadFile(
                    name,
                    "found a PDF that is locked with a password; expected one that opens without, such as the same report printed to a new PDF");
        } catch (OutOfMemoryError
                | StackOverflowError e) { // it unpacks parts whole, and without end
            throw new BadFile(
                    name,
                    "found a PDF of which a part unpacks to more than the memory there is; expected less, such as the same report printed to a new PDF");
        } catch (IOException | RuntimeException e) { // its parser throws both on broken objects
            throw new BadFile(
                    name,
                    "found a PDF that is not sound; expected one that opens, such as the same report downloaded again");
        }
    }

    /** The file's own name, for messages. */
    String name() {
        return name;
    }

    PDDocument document() {
        return document;
    }

    @Override
    public void close() throws IOException {
        document.close();
    }
}
