package quarterfold.intake;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;

/** Reads XML to the model, past the ledger. */
final class Invoices {
    private Invoices() {}

    static Invoice read(String xml) throws IOException {
        byte[] bytes = xml.getBytes(StandardCharsets.UTF_8);
        Head head = Head.of(new ByteArrayInputStream(bytes));
        InvoiceSyntax syntax =
                Stream.of(new UblSyntax(), new CiiSyntax())
                        .filter(s -> s.fits(head.root(), head.namespace()))
                        .findFirst()
                        .orElseThrow();
        Problems problems = new Problems();
        try {
            XmlNode root =
                    XmlTree.read(new ByteArrayInputStream(bytes), "a.xml", syntax.namespaces());
            Invoice invoice = syntax.read(root, "a.xml", problems);
            if (!problems.none()) {
                throw new AssertionError(problems.kept());
            }
            return invoice;
        } catch (BadFile e) {
            throw new AssertionError(e);
        }
    }
}
