package quarterfold.intake;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UnsupportedEncodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The text of an XML file, decoded by its byte-order mark, its declaration, or as UTF-8 (XML 1.0,
 * appendix F). The parser's own decoder prints what is wrong with bytes to the terminal.
 */
final class XmlText {
    private static final int DECLARED_WITHIN = 256;
    private static final Pattern ENCODING =
            Pattern.compile("^<\\?xml[^>]*?encoding\\s*=\\s*[\"']([A-Za-z][A-Za-z0-9._-]*)[\"']");

    private XmlText() {}

    /**
     * @param faulty what becomes of bytes that are not of the encoding, and of an encoding that is
     *     not known: a fault of reading, or a sign in their place
     */
    static Reader of(InputStream from, CodingErrorAction faulty) throws IOException {
        InputStream in = from.markSupported() ? from : new BufferedInputStream(from);
        in.mark(DECLARED_WITHIN);
        byte[] first = in.readNBytes(DECLARED_WITHIN);
        in.reset();
        int mark = markLength(first);
        in.skipNBytes(mark);
        return new InputStreamReader(
                in,
                charset(first, faulty)
                        .newDecoder()
                        .onMalformedInput(faulty)
                        .onUnmappableCharacter(faulty));
    }

    private static int markLength(byte[] first) {
        if (starts(first, 0xEF, 0xBB, 0xBF)) {
            return 3;
        }
        return starts(first, 0xFE, 0xFF) || starts(first, 0xFF, 0xFE) ? 2 : 0;
    }

    private static Charset charset(byte[] first, CodingErrorAction faulty) throws IOException {
        if (starts(first, 0xFE, 0xFF) || starts(first, 0x00, '<')) {
            return StandardCharsets.UTF_16BE;
        }
        if (starts(first, 0xFF, 0xFE) || starts(first, '<', 0x00)) {
            return StandardCharsets.UTF_16LE;
        }
        Matcher declared = ENCODING.matcher(new String(first, StandardCharsets.ISO_8859_1));
        if (markLength(first) > 0 || !declared.find()) {
            return StandardCharsets.UTF_8;
        }
        try {
            return Charset.forName(declared.group(1));
        } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
            if (faulty.equals(CodingErrorAction.REPLACE)) {
                return StandardCharsets.ISO_8859_1;
            }
            throw new UnsupportedEncodingException(declared.group(1));
        }
    }

    private static boolean starts(byte[] first, int... bytes) {
        for (int i = 0; i < bytes.length; i++) {
            if (i >= first.length || (first[i] & 0xFF) != bytes[i]) {
                return false;
            }
        }
        return true;
    }
}
