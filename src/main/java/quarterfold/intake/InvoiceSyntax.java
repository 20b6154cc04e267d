package quarterfold.intake;

import java.util.Set;

/** A syntax of EN 16931: how a form of XML writes the terms of an invoice. */
interface InvoiceSyntax {

    /** The namespaces of its elements. */
    Set<String> namespaces();

    /** Whether a document with this root is written in it. */
    boolean fits(String root, String namespace);

    /**
     * Reads the terms; what is missing or wrong becomes problems, and then the invoice is not to be
     * used.
     *
     * @param place the file's name, for problems
     */
    Invoice read(XmlNode root, String place, Problems problems);
}
