package quarterfold.intake;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.charset.CodingErrorAction;
import javax.xml.stream.Location;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import javax.xml.stream.util.StreamReaderDelegate;
import org.apache.poi.util.XMLHelper;

/** XML pulled event by event, in which a document type is refused, and with it every entity. */
final class SafeXml {

    /** A document type, or an entity that only one could have declared. */
    static final class DocumentType extends XMLStreamException {
        private static final long serialVersionUID = 1L;

        DocumentType(Location at) {
            super("a document type or an entity", at);
        }
    }

    private SafeXml() {}

    /** Bytes that are not of the text's encoding are a fault. */
    static XMLStreamReader reader(InputStream in) throws XMLStreamException {
        return reader(in, CodingErrorAction.REPORT);
    }

    /** For a look at what a file is: bytes that are not of its encoding are passed over. */
    static XMLStreamReader glance(InputStream in) throws XMLStreamException {
        return reader(in, CodingErrorAction.REPLACE);
    }

    private static XMLStreamReader reader(InputStream in, CodingErrorAction faulty)
            throws XMLStreamException {
        return new StreamReaderDelegate(
                XMLHelper.newXMLInputFactory().createXMLStreamReader(text(in, faulty))) {
            @Override
            public int next() throws XMLStreamException {
                int event = super.next();
                if (event == DTD || event == ENTITY_REFERENCE) {
                    throw new DocumentType(getLocation());
                }
                return event;
            }
        };
    }

    private static Reader text(InputStream in, CodingErrorAction faulty) throws XMLStreamException {
        try {
            return XmlText.of(in, faulty);
        } catch (IOException e) {
            throw new XMLStreamException("a text that cannot be decoded", e);
        }
    }
}
