package quarterfold.intake;

import java.io.InputStream;
import java.io.UnsupportedEncodingException;
import java.nio.charset.CharacterCodingException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Reads an XML document whole, as a tree of the elements of some namespaces; others are passed over
 * with all that is in them, and so are files packed into it. What it may hold is limited.
 */
final class XmlTree {
    private static final int MOST_ELEMENTS = 500_000;
    private static final int DEEPEST = 100;
    private static final int LONGEST_TEXT = 100_000;
    private static final long MOST_TEXT = 50_000_000;

    /** White space and what controls a terminal. */
    private static final Pattern SPACES = Pattern.compile("[\\s\\p{Cc}]+");

    /** Elements whose text is a file: another person's bytes, and no term of a document. */
    private static final Set<String> FILES =
            Set.of("EmbeddedDocumentBinaryObject", "AttachmentBinaryObject");

    private final String place;
    private final Set<String> namespaces;
    private final Deque<XmlNode> open = new ArrayDeque<>();
    private final StringBuilder text = new StringBuilder();
    private Optional<XmlNode> root = Optional.empty();
    private int elements;
    private long characters;

    private XmlTree(String place, Set<String> namespaces) {
        this.place = place;
        this.namespaces = namespaces;
    }

    /**
     * Reads a document to its end.
     *
     * @param place the file's name, for messages
     * @param namespaces of the elements that are kept; the root is kept whatever its own
     * @throws BadFile if it is not sound, is larger than it may be, or has a document type
     */
    static XmlNode read(InputStream in, String place, Set<String> namespaces) throws BadFile {
        return new XmlTree(place, namespaces).read(in);
    }

    private XmlNode read(InputStream in) throws BadFile {
        int line = 1;
        try {
            XMLStreamReader xml = SafeXml.reader(in);
            while (xml.hasNext()) {
                int event = xml.next();
                line = Math.max(line, xml.getLocation().getLineNumber());
                take(xml, event, line);
            }
        } catch (XMLStreamException e) {
            if (e.getNestedException() instanceof CharacterCodingException
                    || e.getNestedException() instanceof UnsupportedEncodingException) {
                throw new BadFile(
                        place,
                        "found bytes that are not of the file's encoding; expected UTF-8, or the encoding its first line declares, such as encoding=\"windows-1252\"");
            }
            int at = e.getLocation() == null ? 0 : e.getLocation().getLineNumber();
            throw new BadFile(
                    place + ":" + Math.max(line, at),
                    "found XML that is not sound, or that has a document type; expected every element closed and no <!DOCTYPE, such as the file as the supplier sent it");
        }
        return root.orElseThrow(
                () ->
                        new BadFile(
                                place,
                                "found no element; expected XML, such as the file as the supplier sent it"));
    }

    private void take(XMLStreamReader xml, int event, int line) throws BadFile, XMLStreamException {
        switch (event) {
            case XMLStreamReader.START_ELEMENT -> start(xml, line);
            case XMLStreamReader.CHARACTERS, XMLStreamReader.CDATA -> characters(xml, line);
            case XMLStreamReader.END_ELEMENT -> {
                XmlNode ended = open.pop();
                ended.write(SPACES.matcher(text).replaceAll(" ").strip());
                text.setLength(0);
            }
            default -> {}
        }
    }

    private void start(XMLStreamReader xml, int line) throws BadFile, XMLStreamException {
        count(line);
        String namespace = xml.getNamespaceURI() == null ? "" : xml.getNamespaceURI();
        if (!open.isEmpty() && !namespaces.contains(namespace)) {
            pass(xml, line);
            return;
        }
        String name = xml.getLocalName();
        XmlNode node = new XmlNode(path(name), name, line);
        for (int i = 0; i < xml.getAttributeCount(); i++) {
            node.attribute(xml.getAttributeLocalName(i), xml.getAttributeValue(i));
        }
        if (open.isEmpty()) {
            root = Optional.of(node);
        } else {
            open.getFirst().add(node);
        }
        open.push(node);
        text.setLength(0);
        if (open.size() > DEEPEST) {
            throw tooLarge(line, "elements more than %,d deep".formatted(DEEPEST));
        }
    }

    /** The root has the empty path, so that a path begins with what tells elements apart. */
    private String path(String name) {
        if (open.isEmpty()) {
            return "";
        }
        String above = open.getFirst().path();
        return above.isEmpty() ? name : above + "/" + name;
    }

    /** To the end of the element it stands at. */
    private void pass(XMLStreamReader xml, int line) throws BadFile, XMLStreamException {
        for (int depth = 1; depth > 0; ) {
            int event = xml.next();
            if (event == XMLStreamReader.START_ELEMENT) {
                count(line);
                depth++;
            } else if (event == XMLStreamReader.END_ELEMENT) {
                depth--;
            }
        }
    }

    private void count(int line) throws BadFile {
        if (++elements > MOST_ELEMENTS) {
            throw tooLarge(line, "more than %,d elements".formatted(MOST_ELEMENTS));
        }
    }

    private void characters(XMLStreamReader xml, int line) throws BadFile {
        if (open.isEmpty() || FILES.contains(open.getFirst().name())) {
            return;
        }
        int length = xml.getTextLength();
        characters += length;
        if (text.length() + length > LONGEST_TEXT || characters > MOST_TEXT) {
            throw tooLarge(
                    line,
                    "a text of more than %,d characters, or more than %,d in all"
                            .formatted(LONGEST_TEXT, MOST_TEXT));
        }
        text.append(xml.getTextCharacters(), xml.getTextStart(), length);
    }

    private BadFile tooLarge(int line, String found) {
        return new BadFile(
                place + ":" + line,
                "found %s; expected one document, such as an invoice".formatted(found));
    }
}
