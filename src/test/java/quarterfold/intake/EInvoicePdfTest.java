package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** E-invoices within PDFs, found wherever they are attached and whatever they are called. */
class EInvoicePdfTest {
    @TempDir Path folder;
    private Desk desk;
    private PDDocument pdf;

    @BeforeEach
    void open() {
        desk = new Desk(folder);
        pdf = new PDDocument();
        pdf.addPage(new PDPage());
    }

    @AfterEach
    void close() throws IOException {
        pdf.close();
        desk.close();
    }

    private static MadeInvoice usual() {
        return new MadeInvoice("INV-1001").line("Bowls", "100.00", "S", "20");
    }

    private COSDictionary file(String name, String text) throws IOException {
        return file(name, text.getBytes(StandardCharsets.UTF_8), COSName.FLATE_DECODE);
    }

    private COSDictionary file(String name, byte[] bytes, COSName filter) throws IOException {
        COSStream stream = pdf.getDocument().createCOSStream();
        try (OutputStream out = stream.createOutputStream(filter)) {
            new ByteArrayInputStream(bytes).transferTo(out);
        }
        COSDictionary embedded = new COSDictionary();
        embedded.setItem(COSName.F, stream);
        COSDictionary file = new COSDictionary();
        file.setItem(COSName.TYPE, COSName.getPDFName("Filespec"));
        file.setString(COSName.F, name);
        file.setItem(COSName.EF, embedded);
        return file;
    }

    /** Names files in the catalog's associated files. */
    private void associate(COSDictionary... files) {
        COSArray all = new COSArray();
        all.addAll(List.of(files));
        pdf.getDocumentCatalog().getCOSObject().setItem(COSName.getPDFName("AF"), all);
    }

    /** Names files in the tree of embedded files, which turns back on itself. */
    private void embed(COSDictionary... files) {
        COSArray pairs = new COSArray();
        for (COSDictionary file : files) {
            pairs.add(new COSString(file.getString(COSName.F)));
            pairs.add(file);
        }
        COSDictionary leaf = new COSDictionary();
        leaf.setItem(COSName.NAMES, pairs);
        COSArray kids = new COSArray();
        kids.add(leaf);
        COSDictionary root = new COSDictionary();
        root.setItem(COSName.KIDS, kids);
        COSArray back = new COSArray();
        back.add(leaf);
        leaf.setItem(COSName.KIDS, back);
        COSDictionary names = new COSDictionary();
        names.setItem(COSName.EMBEDDED_FILES, root);
        pdf.getDocumentCatalog().getCOSObject().setItem(COSName.NAMES, names);
    }

    private Path saved() throws IOException {
        Path path = desk.path("a.pdf");
        pdf.save(path.toFile());
        return path;
    }

    private void oneEntry() {
        assertThat(desk.lines())
                .singleElement()
                .satisfies(line -> assertThat(line.document()).isEqualTo("INV-1001"))
                .satisfies(line -> assertThat(line.amounts().vat()).hasToString("Optional[20.00]"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"factur-x.xml", "xrechnung.xml", "ZUGFeRD-invoice.xml", "scan.bin", ""})
    void whateverItsName(String name) throws IOException {
        embed(file(name, usual().cii()));
        assertThat(desk.enter(saved()).problems()).isEmpty();
        oneEntry();
    }

    @Test
    void amongTheAssociatedFilesAlone() throws IOException {
        associate(file("factur-x.xml", usual().cii()));
        assertThat(desk.enter(saved()).problems()).isEmpty();
        oneEntry();
    }

    @Test
    void oneFileNamedInBothPlacesIsOne() throws IOException {
        COSDictionary file = file("factur-x.xml", usual().cii());
        associate(file);
        embed(file);
        assertThat(desk.enter(saved()).problems()).isEmpty();
        oneEntry();
    }

    @Test
    void theSameFileUnderTwoNamesIsOne() throws IOException {
        embed(file("factur-x.xml", usual().cii()), file("copy.xml", usual().cii()));
        assertThat(desk.enter(saved()).problems()).isEmpty();
        oneEntry();
    }

    @Test
    void ublAmongOtherFiles() throws IOException {
        embed(
                file("terms.txt", "Thirty days"),
                file("order.xml", "<Order><ID>7</ID></Order>"),
                file("invoice.xml", usual().ubl()));
        assertThat(desk.enter(saved()).problems()).isEmpty();
        oneEntry();
    }

    @Test
    void withoutObjectStreams() throws IOException {
        associate(
                file(
                        "factur-x.xml",
                        usual().cii().getBytes(StandardCharsets.UTF_8),
                        COSName.FLATE_DECODE));
        Path path = desk.path("a.pdf");
        pdf.save(path.toFile(), CompressParameters.NO_COMPRESSION);
        assertThat(desk.enter(path).problems()).isEmpty();
        oneEntry();
    }

    @Test
    void twoInvoicesInOnePdf() throws IOException {
        embed(
                file("one.xml", usual().cii()),
                file("two.xml", usual().with("BT-1", "INV-1002").cii()));
        assertThat(desk.problems(saved()))
                .containsExactly(
                        "a.pdf: found 2 e-invoices in the PDF: 'one.xml', 'two.xml'; expected one, such as the XML file of each, brought by itself");
    }

    @Test
    void aProblemNamesTheFileInThePdf() throws IOException {
        embed(file("factur-x.xml", usual().with("BT-109", "ten").cii()));
        assertThat(desk.problems(saved()))
                .containsExactly(
                        "a.pdf:factur-x.xml:91 [SupplyChainTradeTransaction/ApplicableHeaderTradeSettlement/SpecifiedTradeSettlementHeaderMonetarySummation/TaxBasisTotalAmount]: found 'ten'; expected the total without VAT (BT-109), such as 100.00, with a decimal point and at most 4 decimals");
    }

    @Test
    void aPdfWithoutOne() throws IOException {
        embed(file("terms.txt", "Thirty days"));
        assertThat(desk.enter(saved(), "e-invoice").problems())
                .extracting(Problem::toString)
                .containsExactly(
                        "a.pdf: found a PDF without an e-invoice in it; expected an e-invoice: Invoice or CreditNote of UBL 2.1, or CrossIndustryInvoice of CII D16B, such as the XML file the supplier sent, or a PDF with it inside");
    }

    @Test
    void aFileThatUnpacksWithoutEnd() throws IOException {
        embed(file("factur-x.xml", new byte[60_000_000], COSName.FLATE_DECODE));
        assertThat(desk.problems(saved()))
                .containsExactly(
                        "a.pdf: found an attached file 'factur-x.xml' that cannot be unpacked, or that is larger than 50 MB; expected files that open, such as the PDF as the supplier sent it");
    }

    @Test
    void aFilePackedUnusually() throws IOException {
        embed(
                file(
                        "factur-x.xml",
                        usual().cii().getBytes(StandardCharsets.UTF_8),
                        COSName.LZW_DECODE));
        assertThat(desk.problems(saved()))
                .containsExactly(
                        "a.pdf: found an attached file 'factur-x.xml' that cannot be unpacked, or that is larger than 50 MB; expected files that open, such as the PDF as the supplier sent it");
    }

    @Test
    void aLargeFilmBesideTheInvoice() throws IOException {
        embed(
                file("film.mp4", new byte[60_000_000], COSName.FLATE_DECODE),
                file("factur-x.xml", usual().cii()));
        assertThat(desk.enter(saved()).problems()).isEmpty();
        oneEntry();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    <?xml version="1.0"?><Order | found attached XML that breaks off or breaks the rules of XML before its first element; expected it whole, such as the PDF as the supplier sent it
                    <!DOCTYPE Order><Order/> | found attached XML with a document type (<!DOCTYPE); expected it without one, such as the PDF as the supplier sent it
                    """)
    void attachedXmlThatCannotBeRead(String text, String fault) throws IOException {
        embed(file("order.xml", text));
        assertThat(desk.problems(saved())).containsExactly("a.pdf:order.xml: " + fault);

        embed(file("order.xml", text), file("factur-x.xml", usual().cii()));
        assertThat(desk.enter(saved()).problems()).isEmpty();
        oneEntry();
    }

    /** The layout reads the pages; the attached file is nothing to it. */
    @Test
    void brokenXmlBesidePagesThatALayoutKnows() throws IOException {
        pdf.close();
        pdf =
                Loader.loadPDF(
                        PrintedPdf.write(
                                        folder.resolve("printed.pdf"),
                                        PdfReadingTest.CERTIFICATE,
                                        PdfReadingTest.SECOND_PAGE)
                                .toFile());
        embed(file("order.xml", "<?xml version=\"1.0\"?><Order"));
        ImportResult result = desk.enter(saved());
        assertThat(result.problems()).isEmpty();
        assertThat(result.layout()).isEqualTo("import-vat-certificate-pdf");
        assertThat(desk.lines()).hasSize(3);
    }

    @Test
    void aLockedPdf() throws IOException {
        embed(file("factur-x.xml", usual().cii()));
        pdf.protect(new StandardProtectionPolicy("owner", "user", new AccessPermission()));
        assertThat(desk.problems(saved()))
                .containsExactly(
                        "a.pdf: found a PDF that is locked with a password; expected one that opens without, such as the same report printed to a new PDF");
    }

    /** A PDF that only its author may change opens for anybody. */
    @Test
    void aPdfLockedForChangesAlone() throws IOException {
        embed(file("factur-x.xml", usual().cii()));
        pdf.protect(new StandardProtectionPolicy("owner", "", new AccessPermission()));
        assertThat(desk.enter(saved()).problems()).isEmpty();
        oneEntry();
    }
}
