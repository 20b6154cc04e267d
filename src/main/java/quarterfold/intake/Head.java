package quarterfold.intake;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
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
 * @param isBrokenXml whether it says that it is XML and is broken before its root element
 */
record Head(
        boolean isPdf,
        String root,
        String namespace,
        boolean hasDocumentType,
        boolean isBrokenXml) {
    private static final int LOOKED_AT = 64;
    private static final Head PDF = new Head(true, "", "", false, false);
    private static final Head OTHER = new Head(false, "", "", false, false);
    private static final Head WITH_TYPE = new Head(false, "", "", true, false);
    private static final Head BROKEN = new Head(false, "", "", false, true);

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
            return PDF;
        }
        return startsXml(first) ? xml(in, isDeclared(first)) : OTHER;
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

    private static boolean isDeclared(byte[] first) {
        String text = new String(first, StandardCharsets.ISO_8859_1);
        return text.replaceAll("[\0\u0080-\u00ff]", "").strip().startsWith("<?xml");
    }

    private static Head xml(InputStream in, boolean declared) {
        try {
            XMLStreamReader xml = SafeXml.glance(in);
            while (xml.hasNext()) {
                if (xml.next() == XMLStreamReader.START_ELEMENT) {
                    String namespace = xml.getNamespaceURI();
                    return new Head(
                            false,
                            xml.getLocalName(),
                            namespace == null ? "" : namespace,
                            false,
                            false);
                }
            }
            return OTHER;
        } catch (SafeXml.DocumentType e) {
            return WITH_TYPE;
        } catch (XMLStreamException e) {
            return declared ? BROKEN : OTHER; // a text that begins with an angle bracket
        }
    }
}
