package quarterfold.intake;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.Collections;
import javax.xml.stream.XMLStreamException;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.poi.openxml4j.util.ZipSecureFile;
import org.jspecify.annotations.Nullable;

/**
 * What a packed workbook may unpack to. Stated sizes can lie, so what will be held whole is
 * unpacked and counted before anything reads it; sheets and texts are counted while they are read.
 */
final class PackedSize {
    /** The most bytes of all parts together, and of one sheet. */
    static final long TOTAL_LIMIT = 4L << 30;

    /** The most bytes of the texts that cells name by their numbers. */
    static final long TEXTS_LIMIT = 128L << 20;

    /** The most bytes of any other part. */
    static final long PART_LIMIT = 64L << 20;

    private static final int BUFFER = 1 << 16;

    /** More was unpacked than may be. */
    private static final class TooMuch extends IOException {
        private static final long serialVersionUID = 1;

        TooMuch(long limit) {
            super(
                    "found a packed file of which one part unpacks to more than %,d bytes; expected less, such as the sheet saved again as .csv"
                            .formatted(limit));
        }
    }

    private PackedSize() {}

    /** Refuses a file that is not packed soundly, or unpacks to too much. */
    static void check(Path file, String name) throws BadFile, IOException {
        try (ZipSecureFile zip = new ZipSecureFile(file.toFile())) {
            long stated = 0;
            for (ZipArchiveEntry part : Collections.list(zip.getEntries())) {
                stated += Math.max(0, part.getSize());
                if (stated > TOTAL_LIMIT || stated < 0) {
                    throw new BadFile(
                            name,
                            "found a packed file that says it unpacks to more than %,d bytes; expected less, such as the sheet saved again as .csv"
                                    .formatted(TOTAL_LIMIT));
                }
                if (!isStreamed(part.getName())) {
                    unpack(zip, part);
                }
            }
        } catch (IOException | RuntimeException e) {
            refuseTooMuch(name, e);
            throw SheetTables.unsound(name);
        }
    }

    private static void unpack(ZipSecureFile zip, ZipArchiveEntry part) throws IOException {
        byte[] buffer = new byte[BUFFER];
        try (InputStream in = limited(zip.getInputStream(part), PART_LIMIT)) {
            int read = 0;
            while (read >= 0) {
                read = in.read(buffer);
            }
        }
    }

    /** Whether the part is one that is counted while it is read. */
    static boolean isStreamed(String part) {
        return part.matches("xl/worksheets/[^/]+\\.xml|xl/sharedStrings\\.xml");
    }

    /** The same bytes, of which there may be {@code limit}. */
    static InputStream limited(InputStream in, long limit) {
        return new FilterInputStream(in) {
            private long count;

            @Override
            public int read() throws IOException {
                int read = super.read();
                count(read < 0 ? 0 : 1);
                return read;
            }

            @Override
            public int read(byte[] bytes, int offset, int length) throws IOException {
                int read = super.read(bytes, offset, length);
                count(read);
                return read;
            }

            private void count(int read) throws TooMuch {
                count += Math.max(0, read);
                if (count > limit) {
                    throw new TooMuch(limit);
                }
            }
        };
    }

    /** Says so where a failure comes of too much having been unpacked. */
    static void refuseTooMuch(String place, Exception failure) throws BadFile {
        for (@Nullable Throwable t = failure; t != null; t = cause(t)) {
            String message = String.valueOf(t.getMessage());
            if (t instanceof TooMuch) {
                throw new BadFile(place, message);
            }
            if (t instanceof IOException && message.startsWith("Zip bomb")) { // the library's words
                throw new BadFile(
                        place,
                        "found a packed file of which one part unpacks to more than 100 times its size; expected less, such as the sheet saved again as .csv");
            }
        }
    }

    private static @Nullable Throwable cause(Throwable t) {
        return t instanceof XMLStreamException xml && xml.getNestedException() != null
                ? xml.getNestedException()
                : t.getCause();
    }
}
