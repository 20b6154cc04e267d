package quarterfold.intake;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.apache.poi.util.XMLHelper;

/**
 * The XML of a workbook's part, decoded strictly as UTF-8 or UTF-16, which are the encodings a part
 * may have (ECMA-376 part 2, 8.1.4, from memory). Document types and entities are refused.
 *
 * <p>The parser is given characters: of bytes that are none it would write to the standard error.
 */
final class XmlText {
    private XmlText() {}

    static XMLStreamReader reader(InputStream in) throws XMLStreamException {
        try {
            return XMLHelper.newXMLInputFactory().createXMLStreamReader(characters(in));
        } catch (IOException e) {
            throw new XMLStreamException(e);
        }
    }

    private static Reader characters(InputStream in) throws IOException {
        InputStream bytes = new BufferedInputStream(in);
        bytes.mark(3);
        byte[] head = bytes.readNBytes(3);
        bytes.reset();
        Charset charset = StandardCharsets.UTF_8;
        if (starts(head, 0xEF, 0xBB, 0xBF)) {
            bytes.skipNBytes(3);
        } else if (starts(head, 0xFE, 0xFF) || starts(head, 0xFF, 0xFE)) {
            charset = StandardCharsets.UTF_16; // which looks at the mark itself
        } else if (starts(head, '<', 0)) {
            charset = StandardCharsets.UTF_16LE;
        } else if (starts(head, 0, '<')) {
            charset = StandardCharsets.UTF_16BE;
        }
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
