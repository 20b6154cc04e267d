package quarterfold.intake;

import java.io.IOException;
import java.io.InputStream;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import javax.xml.stream.util.StreamReaderDelegate;
import org.apache.poi.util.XMLHelper;

/** XML pulled event by event, in which a document type is refused, and with it every entity. */
final class SafeXml {
    private SafeXml() {}

    static XMLStreamReader reader(InputStream in) throws XMLStreamException {
        return new StreamReaderDelegate(parser(in)) {
            @Override
            public int next() throws XMLStreamException {
                int event = super.next();
                if (event == DTD || event == ENTITY_REFERENCE) {
                    throw new XMLStreamException("a document type or an entity", getLocation());
                }
                return event;
            }
        };
    }

    private static XMLStreamReader parser(InputStream in) throws XMLStreamException {
        try {
            return XMLHelper.newXMLInputFactory().createXMLStreamReader(XmlText.of(in));
        } catch (IOException e) {
            throw new XMLStreamException(e);
        }
    }
}
