package quarterfold.intake;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UnsupportedEncodingException;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The characters of an XML file, decoded strictly by its byte-order mark, else by what it declares,
 * else as UTF-8 (XML 1.0, 4.3.3). The parser is given characters since of bytes that are none it
 * would write to the standard error.
 */
final class XmlText {
    private static final int LOOKED_AT = 200;
    private static final Pattern ENCODING =
            Pattern.compile("^<\\?xml[^>]*\\sencoding\\s*=\\s*[\"']([A-Za-z0-9._-]+)[\"']");

    private XmlText() {}

    static Reader of(InputStream in) throws IOException {
        InputStream bytes = new BufferedInputStream(in);
        bytes.mark(LOOKED_AT);
        byte[] head = bytes.readNBytes(LOOKED_AT);
        bytes.reset();
        if (starts(head, 0xEF, 0xBB, 0xBF)) {
            bytes.skipNBytes(3);
            return decoded(bytes, StandardCharsets.UTF_8);
        }
        return decoded(bytes, charset(head));
    }

    private static Charset charset(byte[] head) throws IOException {
        if (starts(head, 0xFE, 0xFF) || starts(head, 0xFF, 0xFE)) {
            return StandardCharsets.UTF_16; // which looks at the mark itself
        }
        if (starts(head, '<', 0)) {
            return StandardCharsets.UTF_16LE;
        }
        if (starts(head, 0, '<')) {
            return StandardCharsets.UTF_16BE;
        }
        Matcher declared = ENCODING.matcher(new String(head, StandardCharsets.ISO_8859_1));
        try {
            return declared.find() ? Charset.forName(declared.group(1)) : StandardCharsets.UTF_8;
        } catch (IllegalCharsetNameException | UnsupportedCharsetException unknown) {
            throw new UnsupportedEncodingException(declared.group(1));
        }
    }

    private static Reader decoded(InputStream bytes, Charset charset) {
        return new InputStreamReader(bytes, charset.newDecoder());
    }

    private static boolean starts(byte[] head, int... bytes) {
        for (int i = 0; i < bytes.length; i++) {
            if (i >= head.length || head[i] != (byte) bytes[i]) {
                return false;
            }
        }
        return true;
    }
}
