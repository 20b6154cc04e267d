package quarterfold.intake;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The characters of a text file, decoded strictly: bytes that are not of the encoding, NUL
 * characters and rows without an end are refused, after everything before them has been given out.
 * A byte-order mark is passed over.
 */
final class StrictReader extends Reader {

    /** Why the text cannot be read on. */
    static final class BadText extends IOException {
        private static final long serialVersionUID = 1;

        BadText(String fault) {
            super(fault);
        }
    }

    private final InputStream in;
    private final Charset charset;
    private final CharsetDecoder decoder;
    private final ByteBuffer bytes = ByteBuffer.allocate(1 << 16).limit(0);
    private boolean atEnd;
    private boolean flushed;
    private String fault = "";
    private long given;
    private long rowStart;

    /** The characters of a file of this shape. */
    static StrictReader of(Path file, Layout.Shape shape) throws IOException {
        InputStream bytes = Files.newInputStream(file);
        return new StrictReader(shape.twice() ? new TwiceEncoded(bytes) : bytes, shape.encoding());
    }

    /** {@code in}: bytes of the encoding; closed with this. */
    StrictReader(InputStream in, Charset charset) {
        this.charset = charset;
        this.in = in;
        decoder =
                charset.newDecoder()
                        .onMalformedInput(CodingErrorAction.REPORT)
                        .onUnmappableCharacter(CodingErrorAction.REPORT);
    }

    /** Says that a row has been read to its end, so that the next may be as long again. */
    void rowEnded() {
        rowStart = given;
    }

    /** How many characters have been given out. */
    long given() {
        return given;
    }

    @Override
    public int read(char[] target, int offset, int length) throws IOException {
        if (length == 0) {
            return 0;
        }
        if (!fault.isEmpty()) {
            throw new BadText(fault);
        }
        if (given - rowStart > Rows.ROW_LIMIT) {
            throw new BadText(
                    "found a row of more than %,d characters; expected shorter rows, with every opening quote closed, such as \"blue, 12 cm\""
                            .formatted(Rows.ROW_LIMIT));
        }
        int count = decode(target, offset, length);
        for (int i = offset; i < offset + count; i++) {
            if (target[i] == 0) {
                fault = "found a NUL character; expected text, such as a table saved as .csv";
                count = i - offset;
            }
        }
        if (count == 0 && !fault.isEmpty()) {
            throw new BadText(fault);
        }
        if (given == 0 && count > 0 && target[offset] == '\uFEFF') {
            given = count;
            System.arraycopy(target, offset + 1, target, offset, count - 1);
            return count == 1 ? read(target, offset, length) : count - 1;
        }
        given += Math.max(count, 0);
        return count;
    }

    private int decode(char[] target, int offset, int length) throws IOException {
        CharBuffer chars = CharBuffer.wrap(target, offset, length);
        while (chars.position() == offset) {
            if (flushed) {
                return -1;
            }
            CoderResult result = decoder.decode(bytes, chars, atEnd);
            if (result.isError()) {
                fault = notOfTheEncoding(result.length());
                break;
            }
            if (result.isUnderflow() && atEnd) {
                decoder.flush(chars);
                flushed = true;
            } else if (result.isUnderflow() && chars.position() == offset) {
                fill();
            }
        }
        return chars.position() - offset;
    }

    private void fill() throws IOException {
        bytes.compact();
        int count =
                in.read(bytes.array(), bytes.arrayOffset() + bytes.position(), bytes.remaining());
        if (count < 0) {
            atEnd = true;
        } else {
            bytes.position(bytes.position() + count);
        }
        bytes.flip();
    }

    private String notOfTheEncoding(int length) {
        StringBuilder found = new StringBuilder();
        for (int i = 0; i < length; i++) {
            found.append(" %02X".formatted(bytes.get(bytes.position() + i)));
        }
        return "found the bytes%s, which are not %s; expected text in %s, such as the table saved again in that encoding, or a layout that names the file's own"
                .formatted(found, charset, charset);
    }

    /** The line, from 1, in which the character after the first {@code count} stands. */
    static long line(Path file, Layout.Shape shape, long count) throws IOException {
        long line = 1;
        try (StrictReader reader = of(file, shape)) {
            char[] chars = new char[1 << 13];
            char before = 0;
            while (reader.given < count) {
                reader.rowEnded();
                int want = (int) Math.min(chars.length, count - reader.given);
                int got = reader.read(chars, 0, want);
                for (int i = 0; i < got; i++) {
                    char c = chars[i];
                    if (c == '\r' || (c == '\n' && before != '\r')) {
                        line++;
                    }
                    before = c;
                }
            }
        }
        return line;
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
