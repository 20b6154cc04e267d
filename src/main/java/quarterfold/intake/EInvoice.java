package quarterfold.intake;

import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * An electronic invoice or credit note after EN 16931: in UBL, in CII, or as CII or UBL within a
 * PDF.
 */
final class EInvoice implements DocumentForm {
    static final String NAME = "e-invoice";

    private static final List<InvoiceSyntax> SYNTAXES = List.of(new UblSyntax(), new CiiSyntax());
    private static final Set<String> ROOTS =
            Set.of("Invoice", "CreditNote", "CrossIndustryInvoice", "CrossIndustryDocument");
    private static final String EXPECTED =
            "an e-invoice: Invoice or CreditNote of UBL 2.1, or CrossIndustryInvoice of CII D16B, such as the XML file the supplier sent, or a PDF with it inside";

    /** XML found in a PDF. */
    private record Packed(String name, Head head, InputStream content) {}

    /** What is attached to a PDF; the fault of the first XML of which nothing can be known. */
    private record Attached(List<Packed> invoices, Optional<BadFile> unread) {}

    /** An invoice in a PDF, and the pages it is in. */
    private record Hybrid(Packed packed, InvoicePages pages) {}

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public boolean fits(Head head, Brought file) throws BadFile, IOException {
        if (!head.isPdf()) {
            return ROOTS.contains(head.root());
        }
        try (PdfFile pdf = PdfFile.open(file.path(), file.name())) {
            Attached attached = attached(pdf);
            return !attached.invoices().isEmpty()
                    || (attached.unread().isPresent() && !PdfReading.isKnown(pdf, file.layouts()));
        }
    }

    @Override
    public Reading open(Brought file) throws BadFile, IOException {
        Head head = Head.of(file.path());
        if (head.isPdf()) {
            Hybrid hybrid = inPdf(file);
            Packed packed = hybrid.packed();
            String place = file.name() + ":" + packed.name();
            return open(file, place, packed.head(), packed.content(), hybrid.pages());
        }
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file.path()))) {
            return open(file, file.name(), head, in, InvoicePages.NONE);
        }
    }

    private static Hybrid inPdf(Brought file) throws BadFile, IOException {
        try (PdfFile pdf = PdfFile.open(file.path(), file.name())) {
            Attached attached = attached(pdf);
            List<Packed> found = attached.invoices();
            if (found.size() == 1) {
                return new Hybrid(found.get(0), InvoicePages.of(pdf, found.get(0).name()));
            }
            if (found.isEmpty() && attached.unread().isPresent()) {
                throw attached.unread().get();
            }
            throw new BadFile(
                    file.name(),
                    found.isEmpty()
                            ? "found a PDF without an e-invoice in it; expected " + EXPECTED
                            : "found %d e-invoices in the PDF: %s; expected one, such as the XML file of each, brought by itself"
                                    .formatted(
                                            found.size(),
                                            found.stream()
                                                    .map(p -> Problem.quoted(p.name()))
                                                    .collect(Collectors.joining(", "))));
        }
    }

    /** The e-invoices attached to a PDF, found by what they begin with. */
    private static Attached attached(PdfFile pdf) {
        List<Packed> found = new ArrayList<>();
        Set<ByteBuffer> seen = new HashSet<>();
        Optional<BadFile> unread = Optional.empty();
        for (PdfAttachments.Attachment attachment : PdfAttachments.of(pdf)) {
            try {
                byte[] bytes = attachment.bytes();
                Head head = Head.of(new ByteArrayInputStream(bytes));
                if ((head.hasDocumentType() || head.isBrokenXml()) && isNamedXml(attachment)) {
                    BadFile fault =
                            new BadFile(
                                    pdf.name() + ":" + attachment.name(),
                                    head.hasDocumentType()
                                            ? "found attached XML with a document type (<!DOCTYPE); expected it without one, such as the PDF as the supplier sent it"
                                            : "found attached XML that breaks off or breaks the rules of XML before its first element; expected it whole, such as the PDF as the supplier sent it");
                    unread = unread.or(() -> Optional.of(fault));
                }
                // The same file attached under two names is one invoice.
                if (ROOTS.contains(head.root()) && seen.add(ByteBuffer.wrap(bytes))) {
                    found.add(new Packed(attachment.name(), head, new ByteArrayInputStream(bytes)));
                }
            } catch (IOException e) {
                if (!isNamedXml(attachment)) {
                    continue; // a picture or a film, say, of which nothing is needed
                }
                BadFile fault =
                        new BadFile(
                                pdf.name(),
                                "found an attached file %s that cannot be unpacked, or that is larger than 50 MB; expected files that open, such as the PDF as the supplier sent it"
                                        .formatted(Problem.quoted(attachment.name())));
                unread = unread.or(() -> Optional.of(fault));
            }
        }
        return new Attached(found, unread);
    }

    private static boolean isNamedXml(PdfAttachments.Attachment attachment) {
        return attachment.name().toLowerCase(Locale.ROOT).endsWith(".xml");
    }

    /**
     * Opens an invoice that a file is or holds.
     *
     * @param place the name of what is read, for problems
     * @param pages of the PDF that holds it
     */
    static Reading open(Brought file, String place, Head head, InputStream in, InvoicePages pages)
            throws BadFile {
        Optional<InvoiceSyntax> syntax =
                SYNTAXES.stream().filter(s -> s.fits(head.root(), head.namespace())).findFirst();
        if (syntax.isEmpty()) {
            throw new BadFile(place, "found %s; expected %s".formatted(shown(head), EXPECTED));
        }
        XmlNode root = XmlTree.read(in, place, syntax.get().namespaces());
        Problems problems = new Problems();
        try {
            Invoice invoice = syntax.get().read(root, place, problems).noted(pages.notes());
            if (invoice.breakdown().isEmpty()) {
                throw withoutBreakdown(place, invoice);
            }
            InvoiceSide side = InvoiceSide.of(invoice, file.book());
            if (side == InvoiceSide.BOTH && problems.none()) {
                throw new BadFile(
                        place,
                        "found this business as seller and as buyer of %s; expected another party on one side, such as a supplier"
                                .formatted(Problem.quoted(invoice.number())));
            }
            file.problems().addAll(problems);
            return new EInvoiceReading(invoice, side, pages, place, file);
        } catch (ArithmeticException tooMuch) {
            throw new BadFile(
                    place,
                    "found amounts that add up to more than 922 million million; expected less, such as 120.00");
        }
    }

    private static BadFile withoutBreakdown(String place, Invoice invoice) {
        return new BadFile(
                place,
                "found no VAT breakdown (BG-23, rule BR-CO-18)%s; expected at least one line of it, such as category S at 20 with 100.00 and VAT of 20.00; ask the supplier for the whole invoice"
                        .formatted(
                                invoice.profile().isEmpty()
                                        ? ""
                                        : " in a document of profile "
                                                + Problem.quoted(invoice.profile())));
    }

    private static String shown(Head head) {
        return head.isXml()
                ? "the root element %s of the namespace %s"
                        .formatted(Problem.quoted(head.root()), Problem.quoted(head.namespace()))
                : "a file that is no XML and no PDF";
    }
}
