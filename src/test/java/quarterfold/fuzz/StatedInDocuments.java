package quarterfold.fuzz;

import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/**
 * What invoices, bank statements and printed certificates say their money comes to: XML by the
 * JDK's tree of it, PDFs by the order in which their texts are drawn.
 */
final class StatedInDocuments {
    private static final Pattern PRINTED = Pattern.compile("£([0-9]+\\.[0-9]{2})Total VAT paid");

    private StatedInDocuments() {}

    /** The total with VAT: BT-112. A purchase, so it is paid; a credit note comes back. */
    static Optional<BigDecimal> inInvoice(byte[] input, String layout) throws IOException {
        Optional<Document> xml = xml(input);
        if (xml.isEmpty()) {
            return Optional.empty();
        }
        List<String> totals = texts(xml.get().getDocumentElement(), "TaxInclusiveAmount");
        totals.addAll(texts(xml.get().getDocumentElement(), "GrandTotalAmount"));
        if (totals.size() != 1) {
            return Optional.empty();
        }
        String root = xml.get().getDocumentElement().getLocalName();
        Optional<BigDecimal> total = amount(totals.get(0));
        return root.equals("CreditNote") ? total : total.map(BigDecimal::negate);
    }

    /** What the balances of each statement differ by. */
    static Optional<BigDecimal> inStatement(byte[] input, String layout) throws IOException {
        Optional<Document> xml = xml(input);
        if (xml.isEmpty()) {
            return Optional.empty();
        }
        BigDecimal all = BigDecimal.ZERO;
        for (Element statement : elements(xml.get().getDocumentElement(), "Stmt")) {
            Optional<BigDecimal> opening = balance(statement, "OPBD");
            Optional<BigDecimal> closing = balance(statement, "CLBD");
            if (opening.isEmpty() || closing.isEmpty()) {
                return Optional.empty();
            }
            all = all.add(closing.get()).subtract(opening.get());
        }
        return Optional.of(all);
    }

    private static Optional<BigDecimal> balance(Element statement, String code) {
        List<Element> all =
                elements(statement, "Bal").stream()
                        .filter(b -> texts(b, "Cd").contains(code))
                        .toList();
        if (all.size() != 1) {
            return Optional.empty();
        }
        List<String> amounts = texts(all.get(0), "Amt");
        List<String> sides = texts(all.get(0), "CdtDbtInd");
        if (amounts.size() != 1 || sides.size() != 1) {
            return Optional.empty();
        }
        Optional<BigDecimal> amount = amount(amounts.get(0));
        return sides.get(0).equals("DBIT") ? amount.map(BigDecimal::negate) : amount;
    }

    /** The total printed on a certificate, each line drawn before the one above it. */
    static Optional<BigDecimal> inPdf(byte[] input, String layout) {
        if (!layout.equals("import-vat-certificate-pdf")) {
            return Optional.empty();
        }
        try (PDDocument pdf = Loader.loadPDF(input)) {
            String text = new PDFTextStripper().getText(pdf).replaceAll("\\R", "");
            Matcher total = PRINTED.matcher(text);
            return total.find() ? amount(total.group(1)).map(BigDecimal::negate) : Optional.empty();
        } catch (IOException | RuntimeException other) { // it throws both on broken ones
            return Optional.empty();
        }
    }

    private static Optional<Document> xml(byte[] input) throws IOException {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setNamespaceAware(true);
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            var builder = factory.newDocumentBuilder();
            builder.setErrorHandler(null); // or it prints what is wrong
            return Optional.of(builder.parse(Stated.in(input)));
        } catch (SAXException | IOException other) {
            return Optional.empty();
        } catch (ParserConfigurationException e) {
            throw new IOException(e);
        }
    }

    private static List<Element> elements(Element of, String name) {
        NodeList nodes = of.getElementsByTagNameNS("*", name);
        List<Element> all = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            all.add((Element) nodes.item(i));
        }
        return all;
    }

    private static List<String> texts(Element of, String name) {
        List<String> all = new ArrayList<>();
        elements(of, name).forEach(e -> all.add(e.getTextContent().strip()));
        return all;
    }

    private static Optional<BigDecimal> amount(String text) {
        return text.matches("-?[0-9]{1,12}(\\.[0-9]{1,4})?")
                ? Optional.of(new BigDecimal(text))
                : Optional.empty();
    }
}
