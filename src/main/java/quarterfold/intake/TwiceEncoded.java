package quarterfold.intake;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/**
 * The UTF-8 inside a text that was encoded in UTF-8 twice: a program took its bytes for
 * windows-1252 and saved them as UTF-8 again. Characters that cannot come of that are refused.
 */
final class TwiceEncoded extends InputStream {
    static final Charset BETWEEN = Charset.forName("windows-1252");

    private final Reader outer;
    private ByteBuffer bytes = ByteBuffer.allocate(0);

    TwiceEncoded(InputStream in) {
        outer =
                new InputStreamReader(
                        in,
                        StandardCharsets.UTF_8
                                .newDecoder()
                                .onMalformedInput(CodingErrorAction.REPORT)
                                .onUnmappableCharacter(CodingErrorAction.REPORT));
    }

    /** The bytes whose characters these were taken for. */
    static byte[] undo(CharSequence text) throws CharacterCodingException {
        ByteArrayOutputStream undone = new ByteArrayOutputStream(text.length());
        var encoder = BETWEEN.newEncoder();
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            // Five bytes are no characters in windows-1252; programs pass them on as they are.
            if (c < 0x80 || (c <= 0x9f && !encoder.canEncode(c))) {
                undone.write(c);
            } else {
                undone.write(encoder.encode(CharBuffer.wrap(new char[] {c})).get());
            }
        }
        return undone.toByteArray();
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] target, int offset, int length) throws IOException {
        if (length == 0) {
            return 0;
        }
        while (!bytes.hasRemaining()) {
            char[] chars = new char[1 << 13];
            int count = outer.read(chars);
            if (count < 0) {
                return -1;
            }
            int from = chars[0] == '\uFEFF' ? 1 : 0;
            try {
                bytes = ByteBuffer.wrap(undo(CharBuffer.wrap(chars, from, count - from)));
            } catch (CharacterCodingException e) {
                throw new StrictReader.BadText(
                        "found a character that was not encoded twice; expected text encoded in UTF-8 twice, such as the table saved again, or a layout without encoded: twice");
            }
        }
        int count = Math.min(length, bytes.remaining());
        bytes.get(target, offset, count);
        return count;
    }

    @Override
    public void close() throws IOException {
        outer.close();
    }
}
