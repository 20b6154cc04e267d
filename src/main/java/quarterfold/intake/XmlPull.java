package quarterfold.intake;

import java.io.BufferedInputStream;
import java.io.CharConversionException;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.io.UnsupportedEncodingException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * An XML file pulled element by element, by local names: what memory it needs does not grow with
 * the file. An element not asked for is passed over with all that is in it. For one thread.
 *
 * <p>Depth 0 is the document, 1 the root element.
 */
final class XmlPull implements Closeable {
    private static final int DEEPEST = 100;
    private static final int LONGEST = Rows.CELL_LIMIT;

    private final String file;
    private final InputStream in;
    private final XMLStreamReader xml;
    private int depth;

    private XmlPull(String file, InputStream in, XMLStreamReader xml) {
        this.file = file;
        this.in = in;
        this.xml = xml;
    }

    /** {@code name}: the file's own, for messages. */
    static XmlPull open(Path path, String name) throws BadFile, IOException {
        InputStream in = new BufferedInputStream(Files.newInputStream(path), 1 << 16);
        boolean opened = false;
        try {
            XmlPull pull = new XmlPull(name, in, SafeXml.reader(in));
            opened = true;
            return pull;
        } catch (XMLStreamException e) {
            throw broken(name, e);
        } finally {
            if (!opened) {
                in.close();
            }
        }
    }

    /** How deep the element it stands at is. */
    int depth() {
        return depth;
    }

    /** Moves to the next element in the one at {@code of}; false at that one's end. */
    boolean child(int of) throws BadFile {
        while (depth >= of) {
            int event = next();
            if (event == XMLStreamReader.START_ELEMENT) {
                enter();
                if (depth == of + 1) {
                    return true;
                }
            } else if (event == XMLStreamReader.END_ELEMENT
                    || event == XMLStreamReader.END_DOCUMENT) {
                depth--;
            }
        }
        return false;
    }

    /** Moves to the end of the document, so that a fault anywhere in it is told. */
    void end() throws BadFile {
        boolean more = true;
        while (more) {
            more = child(0);
        }
    }

    /** The local name of the element it stands at. */
    String name() {
        return xml.getLocalName();
    }

    /** The namespace of the element it stands at; empty where it has none. */
    String namespace() {
        String namespace = xml.getNamespaceURI();
        return namespace == null ? "" : namespace;
    }

    /** An attribute of the element it stands at; empty where it has none of that name. */
    String attribute(String name) {
        String value = xml.getAttributeValue(null, name);
        return value == null ? "" : value.strip();
    }

    /** The text of the element it stands at, on one line and trimmed; moves to its end. */
    String text() throws BadFile {
        StringBuilder all = new StringBuilder();
        String own = name();
        texts((path, text) -> all.append(path.equals(own) ? text : ""));
        return all.toString();
    }

    /** Who is told of texts and where they stand. */
    interface Texts {
        /** {@code path}: of local names, such as {@code Amt}, {@code Amt@Ccy}, {@code Sts/Cd}. */
        void text(String path, String text) throws BadFile;
    }

    /**
     * Gives every text in the element it stands at, and every attribute {@code Ccy}, under their
     * paths from that element's own name; moves to its end. Blank texts are left out.
     */
    void texts(Texts to) throws BadFile {
        int of = depth;
        StringBuilder path = new StringBuilder(name());
        StringBuilder text = new StringBuilder();
        currency(path, to);
        while (depth >= of) {
            switch (next()) {
                case XMLStreamReader.START_ELEMENT -> {
                    enter();
                    path.append('/').append(name());
                    text.setLength(0);
                    currency(path, to);
                }
                case XMLStreamReader.END_ELEMENT, XMLStreamReader.END_DOCUMENT -> {
                    String line = oneLine(text);
                    if (!line.isEmpty()) {
                        to.text(path.toString(), line);
                    }
                    text.setLength(0);
                    path.setLength(Math.max(0, path.lastIndexOf("/")));
                    depth--;
                }
                case XMLStreamReader.CHARACTERS, XMLStreamReader.CDATA, XMLStreamReader.SPACE ->
                        text.append(xml.getText());
                default -> {}
            }
            checkLength(text);
        }
    }

    private void currency(CharSequence path, Texts to) throws BadFile {
        String currency = attribute("Ccy");
        if (!currency.isEmpty()) {
            to.text(path + "@Ccy", currency);
        }
    }

    private void checkLength(CharSequence text) throws BadFile {
        if (text.length() > LONGEST) {
            throw bad(
                    "found a text of more than %,d characters; expected a shorter one"
                            .formatted(LONGEST));
        }
    }

    private static String oneLine(CharSequence text) {
        StringBuilder line = new StringBuilder(text.length());
        boolean gap = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (Character.isWhitespace(c) || Character.isISOControl(c)) {
                gap = true;
            } else {
                if (gap && line.length() > 0) {
                    line.append(' ');
                }
                gap = false;
                line.append(c);
            }
        }
        return line.toString();
    }

    private void enter() throws BadFile {
        depth++;
        if (depth > DEEPEST) {
            throw bad(
                    "found elements within elements more than %d deep; expected fewer"
                            .formatted(DEEPEST));
        }
    }

    private int next() throws BadFile {
        try {
            return xml.next();
        } catch (XMLStreamException e) {
            throw broken(file, e);
        }
    }

    /** Where it stands, such as {@code may.xml:57}. */
    String place() {
        return file + ":" + xml.getLocation().getLineNumber();
    }

    /** A fault of the file where it stands. */
    BadFile bad(String fault) {
        return new BadFile(place(), fault);
    }

    private static BadFile broken(String file, XMLStreamException e) {
        Throwable cause = e.getNestedException();
        boolean encoding =
                cause instanceof CharConversionException
                        || cause instanceof CharacterCodingException
                        || cause instanceof UnsupportedEncodingException;
        if (cause instanceof IOException failure && !encoding) {
            throw new UncheckedIOException(failure);
        }
        if (encoding) {
            return new BadFile(
                    file,
                    "found bytes that are not of the file's encoding; expected UTF-8, or the encoding its first line declares, such as encoding=\"windows-1252\"; get the file again");
        }
        int line = e.getLocation() == null ? -1 : e.getLocation().getLineNumber();
        return new BadFile(
                line > 0 ? file + ":" + line : file,
                "found XML that breaks off, breaks the rules of XML, or has a document type; expected the whole file as it was issued, every element closed; get it again");
    }

    @Override
    public void close() throws IOException {
        try {
            xml.close();
        } catch (XMLStreamException e) {
            throw new IOException(e);
        } finally {
            in.close();
        }
    }
}
