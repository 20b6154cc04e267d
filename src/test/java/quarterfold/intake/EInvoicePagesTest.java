package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quarterfold.ledger.Evidence;

/**
 * The pages of a PDF against the invoice in it. Supplier and customer ensure that the content of an
 * invoice is not altered: VAT Regulations 1995 reg 13(7) and (8)(b).
 */
class EInvoicePagesTest {
    private static final String PAGE =
            """
            Fernmoor Pottery Ltd
            Invoice no.|INV-1001
            Bowls|1,000.00
            VAT 20%|200.00
            Total to pay|1,200.00
            """;

    @TempDir Path folder;
    private Desk desk;

    @BeforeEach
    void open() {
        desk = new Desk(folder);
    }

    @AfterEach
    void close() {
        desk.close();
    }

    private static MadeInvoice usual() {
        return new MadeInvoice("INV-1001").line("Bowls", "1000.00", "S", "20");
    }

    private void enter(MadeInvoice invoice, String... pages) throws IOException {
        Path path = PrintedPdf.write(folder.resolve("a.pdf"), pages);
        try (PDDocument pdf = Loader.loadPDF(path.toFile())) {
            if (pages.length == 0) {
                pdf.addPage(new PDPage());
            }
            byte[] xml = invoice.cii().getBytes(StandardCharsets.UTF_8);
            PDComplexFileSpecification file = new PDComplexFileSpecification();
            file.setFile("factur-x.xml");
            file.setEmbeddedFile(new PDEmbeddedFile(pdf, new ByteArrayInputStream(xml)));
            PDEmbeddedFilesNameTreeNode tree = new PDEmbeddedFilesNameTreeNode();
            tree.setNames(Map.of("factur-x.xml", file));
            PDDocumentNameDictionary names = new PDDocumentNameDictionary(pdf.getDocumentCatalog());
            names.setEmbeddedFiles(tree);
            pdf.getDocumentCatalog().setNames(names);
            pdf.save(path.toFile());
        }
        assertThat(desk.enter(path).problems()).isEmpty();
    }

    private List<String> asked() {
        return desk.raised().stream()
                .map(q -> q.code() + "/" + q.about() + ": " + q.question())
                .toList();
    }

    private Evidence evidence() {
        return desk.entries().get(0).profile().evidence();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"1,200.00", "1.200,00", "1 200,00", "1200.00", "£1,200", "1 2 0 0 . 0 0"})
    void pagesThatSayTheSame(String total) throws IOException {
        enter(usual(), PAGE.replace("1,200.00", total));
        assertThat(asked()).isEmpty();
        assertThat(evidence()).isEqualTo(Evidence.INVOICE);
        assertThat(desk.lines().get(0).notes()).isEqualTo("type: 380; VAT category: S 20%");
    }

    @ParameterizedTest
    @ValueSource(strings = {"inv-1001", "INV 1001", "INV/1001", "No.INV1001", "I N V - 1 0 0 1"})
    void aNumberWrittenOtherwise(String number) throws IOException {
        enter(usual(), PAGE.replace("INV-1001", number));
        assertThat(asked()).isEmpty();
    }

    @Test
    void theTotalMayBeOnAnotherPage() throws IOException {
        enter(usual(), PAGE.replace("Total to pay|1,200.00", ""), "Total|1,200.00");
        assertThat(asked()).isEmpty();
    }

    /** A part was paid before: some pages print only what is left. */
    @Test
    void theAmountDueAlone() throws IOException {
        enter(
                usual().with("BT-113", "300.00"),
                PAGE.replace("Total to pay|1,200.00", "Left to pay|900.00"));
        assertThat(asked()).isEmpty();
    }

    @Test
    void anotherTotal() throws IOException {
        enter(usual(), PAGE.replace("1,200.00", "1,080.00"));
        assertThat(asked())
                .containsExactly(
                        "document-pages-differ/INV-1001: invoice INV-1001 of Fernmoor Pottery Ltd (GB000472729), GBP 1200.00, is read from 'factur-x.xml' in the PDF, but its pages, which a person reads, do not show the total with VAT (BT-112), 1200.00; the largest amount on them is 1,080.00. The content of an invoice must be as it was issued (VAT Regulations 1995 reg 13(7)). Its VAT is not reclaimed until a person says that the document was seen. Which is right? Ask the supplier.");
        assertThat(evidence()).isEqualTo(Evidence.UNSTATED);
    }

    @Test
    void anotherNumberAlone() throws IOException {
        enter(usual(), PAGE.replace("INV-1001", "INV-10010"));
        assertThat(asked())
                .containsExactly(
                        "document-pages-differ/INV-1001: invoice INV-1001 of Fernmoor Pottery Ltd (GB000472729), GBP 1200.00, is read from 'factur-x.xml' in the PDF, but its pages, which a person reads, do not show the number (BT-1), INV-1001. The content of an invoice must be as it was issued (VAT Regulations 1995 reg 13(7)). Its VAT is reclaimed as the VAT breakdown states it. Which is right? Ask the supplier.");
        assertThat(evidence()).isEqualTo(Evidence.INVOICE);
    }

    @Test
    void nothingOfTheInvoiceAtAll() throws IOException {
        enter(usual().with("BT-113", "300.00"), "Our terms|See overleaf");
        assertThat(asked())
                .containsExactly(
                        "document-pages-differ/INV-1001: invoice INV-1001 of Fernmoor Pottery Ltd (GB000472729), GBP 1200.00, is read from 'factur-x.xml' in the PDF, but its pages, which a person reads, show neither the number (BT-1), INV-1001, nor the total with VAT (BT-112), 1200.00, or the amount due (BT-115), 900.00; they print no amount with two decimals. The content of an invoice must be as it was issued (VAT Regulations 1995 reg 13(7)). Its VAT is not reclaimed until a person says that the document was seen. Which is right? Ask the supplier.");
    }

    /** A credit takes from the claim meanwhile. */
    @Test
    void aCreditOfAnotherTotal() throws IOException {
        enter(usual().credit(), PAGE.replace("1,200.00", "-1,080.00"));
        assertThat(asked())
                .containsExactly(
                        "document-pages-differ/INV-1001: credit note INV-1001 of Fernmoor Pottery Ltd (GB000472729), GBP 1200.00, is read from 'factur-x.xml' in the PDF, but its pages, which a person reads, do not show the total with VAT (BT-112), 1200.00; the largest amount on them is 1,080.00. The content of an invoice must be as it was issued (VAT Regulations 1995 reg 13(7)). It takes from the claim as the VAT breakdown states it. Which is right? Ask the supplier.");
        assertThat(evidence()).isEqualTo(Evidence.INVOICE);
    }

    @Test
    void aSaleOfTheBusiness() throws IOException {
        enter(
                usual().from(MadeInvoice.BUSINESS).to(MadeInvoice.POTTERY),
                PAGE.replace("1,200.00", "1,080.00"));
        assertThat(asked())
                .containsExactly(
                        "document-pages-differ/INV-1001: invoice INV-1001 of Alder & Wren (GB101747696), GBP 1200.00, is read from 'factur-x.xml' in the PDF, but its pages, which a person reads, do not show the total with VAT (BT-112), 1200.00; the largest amount on them is 1,080.00. The content of an invoice must be as it was issued (VAT Regulations 1995 reg 13(7)). Its VAT is entered as the VAT breakdown states it. Which is right? Ask who made it out.");
    }

    /** Nothing on a picture can be compared, and a picture beside text may hold what is missing. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void pagesThatArePictures(boolean allOfThem) throws IOException {
        if (allOfThem) {
            enter(usual());
        } else {
            enter(usual(), "Our terms|See overleaf", "");
        }
        assertThat(asked()).isEmpty();
        assertThat(evidence()).isEqualTo(Evidence.INVOICE);
        assertThat(desk.lines().get(0).notes())
                .isEqualTo(
                        "pages: not compared, as they are not all text that can be read; type: 380; VAT category: S 20%");
    }

    @Test
    void aTotalOfNothingIsNotLookedFor() throws IOException {
        enter(
                new MadeInvoice("INV-1001")
                        .line("Bowls", "50.00", "S", "20")
                        .line("Taken back", "-50.00", "S", "20"),
                "Invoice|INV-1001|Nothing to pay");
        assertThat(asked()).isEmpty();
    }

    @Test
    void theSameTwice() throws IOException {
        enter(usual(), PAGE.replace("1,200.00", "1,080.00"));
        assertThat(desk.reread()).isEmpty();
    }
}
