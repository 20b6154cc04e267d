package quarterfold.intake;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * What a file begins with: its format by its first bytes, not by its name.
 *
 * @param root the local name of an XML file's root element; empty for other files
 * @param namespace of the root element; empty where there is none
 * @param hasDocumentType whether it is XML, or a web page, with a document type: nothing is read
 */
record Head(boolean isPdf, String root, String namespace, boolean hasDocumentType) {
    private static final int LOOKED_AT = 64;
    private static final Head OTHER = new Head(false, "", "", false);

    boolean isXml() {
        return !root.isEmpty();
    }

    static Head of(Path file) throws IOException {
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
            return of(in);
        }
    }

    /** Of a stream that takes a mark. */
    static Head of(InputStream in) throws IOException {
        in.mark(LOOKED_AT);
        byte[] first = in.readNBytes(LOOKED_AT);
        in.reset();
        if (startsPdf(first)) {
            return new Head(true, "", "", false);
        }
        return startsXml(first) ? xml(in) : OTHER;
    }

    private static boolean startsPdf(byte[] first) {
        return first.length >= 5
                && first[0] == '%'
                && first[1] == 'P'
                && first[2] == 'D'
                && first[3] == 'F'
                && first[4] == '-';
    }

    /** The first character that is no mark of an encoding and no space is an angle bracket. */
    private static boolean startsXml(byte[] first) {
        for (byte b : first) {
            boolean passed = (b & 0x80) != 0 || b == 0 || Character.isWhitespace(b);
            if (!passed) {
                return b == '<';
            }
        }
        return false;
    }

    private static Head xml(InputStream in) {
        try {
            XMLStreamReader xml = SafeXml.glance(in);
            while (xml.hasNext()) {
                if (xml.next() == XMLStreamReader.START_ELEMENT) {
                    String namespace = xml.getNamespaceURI();
                    return new Head(
                            false, xml.getLocalName(), namespace == null ? "" : namespace, false);
                }
            }
            return OTHER;
        } catch (SafeXml.DocumentType e) {
            return new Head(false, "", "", true);
        } catch (XMLStreamException e) {
            return OTHER; // a text that begins with an angle bracket
        }
    }
}
