package quarterfold.fuzz;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;
import quarterfold.intake.MadeInvoice;
import quarterfold.intake.MadeStatement;
import quarterfold.intake.PrintedPdf;

/** Sound documents that are no tables, from which broken ones are made. */
final class DocumentSeeds {
    private static final String CERTIFICATE =
            """
            Monthly import VAT certificate
            EORI number: GB101747696000
            Month: July 2026
            Page 1 of 1
            Entry reference|Accounting date|VAT paid
            26GB0INVENTED04712|30/07/2026|£13.58
            Total of this page||£13.58
            Total VAT paid||£13.58
            """;

    private static final String RATES =
            """
            <?xml version="1.0" encoding="UTF-8"?>
            <exchangeRateMonthList Period="01/Aug/2026 to 31/Aug/2026">
              <exchangeRate><countryName>USA</countryName><countryCode>US</countryCode><currencyName>Dollar</currencyName><currencyCode>USD</currencyCode><rateNew>1.3367</rateNew></exchangeRate>
              <exchangeRate><countryName>Eurozone</countryName><countryCode>EU</countryCode><currencyName>Euro</currencyName><currencyCode>EUR</currencyCode><rateNew>1.1719</rateNew></exchangeRate>
            </exchangeRateMonthList>
            """;

    private static final String RATES_SHEET =
            """
            Period,countryName,countryCode,currencyName,currencyCode,rateNew
            01/Aug/2026 to 31/Aug/2026,Germany,DE,Euro,EUR,1.1719
            01/Aug/2026 to 31/Aug/2026,USA,US,Dollar,USD,1.3367
            """;

    private DocumentSeeds() {}

    static List<byte[]> invoices() {
        MadeInvoice plain = new MadeInvoice("INV-9").line("Bowls", "100.00", "S", "20");
        MadeInvoice mixed =
                new MadeInvoice("INV-10")
                        .with("BT-5", "EUR")
                        .with("BT-6", "GBP")
                        .with("BT-111", "25.61")
                        .line("Bowls", "100.00", "S", "20")
                        .line("Seats", "200.00", "S", "5")
                        .line("Books", "30.00", "Z", "0");
        return texts(
                plain.ubl(),
                plain.cii(),
                mixed.ubl(),
                mixed.cii(),
                new MadeInvoice("CN-1").credit().line("Bowls", "10.00", "S", "20").ubl());
    }

    static List<byte[]> statements() {
        return texts(
                MadeStatement.ofVersion(2),
                MadeStatement.ofVersion(8),
                MadeStatement.ofVersion(14));
    }

    static List<byte[]> rates() {
        return texts(RATES, RATES_SHEET);
    }

    /** A certificate with a text layer, and a page with an invoice in it. */
    static List<byte[]> pdfs(Path folder) throws IOException {
        Path certificate = PrintedPdf.write(folder.resolve("seed.pdf"), CERTIFICATE);
        return List.of(
                Files.readAllBytes(certificate),
                hybrid(new MadeInvoice("INV-9").line("Bowls", "100.00", "S", "20").cii()));
    }

    static List<byte[]> zips(List<byte[]> tables) throws IOException {
        List<byte[]> all = new ArrayList<>();
        for (byte[] table : tables) {
            all.add(zip("quarter/report.csv", table));
        }
        all.add(zip("inner.zip", all.get(0)));
        all.add(zip("INV-9.xml", invoices().get(0)));
        return all;
    }

    private static byte[] zip(String name, byte[] content) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            zip.putNextEntry(new ZipEntry(name));
            zip.write(content);
            zip.closeEntry();
            zip.putNextEntry(new ZipEntry("notes.txt"));
            zip.write("nothing".getBytes(StandardCharsets.UTF_8));
            zip.closeEntry();
        }
        return bytes.toByteArray();
    }

    private static byte[] hybrid(String xml) throws IOException {
        try (PDDocument pdf = new PDDocument();
                ByteArrayOutputStream out = new ByteArrayOutputStream()) {
            pdf.addPage(new PDPage());
            PDEmbeddedFile file =
                    new PDEmbeddedFile(
                            pdf, new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)));
            PDComplexFileSpecification named = new PDComplexFileSpecification();
            named.setFile("invoice.xml");
            named.setEmbeddedFile(file);
            PDEmbeddedFilesNameTreeNode tree = new PDEmbeddedFilesNameTreeNode();
            tree.setNames(java.util.Map.of("invoice.xml", named));
            PDDocumentNameDictionary names = new PDDocumentNameDictionary(pdf.getDocumentCatalog());
            names.setEmbeddedFiles(tree);
            pdf.getDocumentCatalog().setNames(names);
            pdf.save(out);
            return out.toByteArray();
        }
    }

    private static List<byte[]> texts(String... texts) {
        List<byte[]> all = new ArrayList<>();
        for (String text : texts) {
            all.add(text.getBytes(StandardCharsets.UTF_8));
        }
        return all;
    }
}
