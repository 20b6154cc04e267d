package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** E-invoices of which nothing is entered, and what is said of each. */
class EInvoiceRefusalTest {
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
        return new MadeInvoice("INV-1001").line("Bowls", "100.00", "S", "20");
    }

    @Test
    void noVatBreakdown() throws IOException {
        MadeInvoice without =
                usual().with("BG-23", "none").with("BT-24", "urn:factur-x.eu:1p0:minimum");
        String said =
                "a.xml: found no VAT breakdown (BG-23, rule BR-CO-18) in a document of profile 'urn:factur-x.eu:1p0:minimum'; expected at least one line of it, such as category S at 20 with 100.00 and VAT of 20.00; ask the supplier for the whole invoice";
        assertThat(desk.problems("a.xml", without.ubl())).containsExactly(said);
        assertThat(desk.problems("a.xml", without.cii())).containsExactly(said);
        assertThat(PublishedRules.broken(without.ubl())).contains("BR-CO-18");
        assertThat(PublishedRules.broken(without.cii())).contains("BR-CO-18");
    }

    @Test
    void termsThatAreMissingInUbl() throws IOException {
        MadeInvoice bare =
                new MadeInvoice("")
                        .with("BT-2", "")
                        .with("BT-3", "")
                        .with("BT-5", "")
                        .with("BT-106", "")
                        .with("BT-109", "")
                        .with("BT-112", "")
                        .with("BT-115", "")
                        .with("BT-116 S20", "")
                        .from(new MadeInvoice.Party("", "", ""))
                        .to(new MadeInvoice.Party("", "GB", ""))
                        .line("Bowls", "100.00", "S", "20");
        assertThat(desk.problems("a.xml", bare.ubl()))
                .containsExactly(
                        "a.xml:4 [DocumentCurrencyCode]: found none; expected the currency, a code of ISO 4217 (BT-5), such as GBP",
                        "a.xml:4 [ID]: found none; expected the number of the document (BT-1), such as INV-1001",
                        "a.xml:4 [InvoiceTypeCode]: found none; expected the type of the document (BT-3), such as 380 for an invoice or 381 for a credit note",
                        "a.xml:4 [IssueDate]: found none; expected the day of issue (BT-2), such as 2026-09-30",
                        "a.xml:12 [AccountingSupplierParty/Party/PartyLegalEntity/RegistrationName]: found none; expected the seller's name (BT-27), such as Fernmoor Pottery Ltd",
                        "a.xml:9 [AccountingSupplierParty/Party/PostalAddress/Country/IdentificationCode]: found none; expected the seller's country, a code of ISO 3166 (BT-40), such as GB",
                        "a.xml:25 [AccountingCustomerParty/Party/PartyLegalEntity/RegistrationName]: found none; expected the buyer's name (BT-44), such as Alder & Wren",
                        "a.xml:32 [TaxTotal/TaxSubtotal/TaxableAmount]: found none; expected the amount VAT is charged on (BT-116), such as 100.00",
                        "a.xml:4 [LegalMonetaryTotal/LineExtensionAmount]: found none; expected the sum of the lines (BT-106), such as 100.00",
                        "a.xml:4 [LegalMonetaryTotal/TaxExclusiveAmount]: found none; expected the total without VAT (BT-109), such as 100.00",
                        "a.xml:4 [LegalMonetaryTotal/TaxInclusiveAmount]: found none; expected the total with VAT (BT-112), such as 120.00",
                        "a.xml:4 [LegalMonetaryTotal/PayableAmount]: found none; expected the amount due (BT-115), such as 120.00");
    }

    @Test
    void termsThatAreMissingInCii() throws IOException {
        MadeInvoice bare =
                new MadeInvoice("")
                        .with("BT-2", "")
                        .with("BT-3", "")
                        .with("BT-5", "")
                        .with("BT-106", "")
                        .with("BT-109", "")
                        .with("BT-112", "")
                        .with("BT-115", "")
                        .with("BT-116 S20", "")
                        .from(new MadeInvoice.Party("", "", ""))
                        .to(new MadeInvoice.Party("", "GB", ""))
                        .line("Bowls", "100.00", "S", "20");
        assertThat(desk.problems("a.xml", bare.cii()))
                .containsExactly(
                        "a.xml:59 [SupplyChainTradeTransaction/ApplicableHeaderTradeSettlement/InvoiceCurrencyCode]: found none; expected the currency, a code of ISO 4217 (BT-5), such as GBP",
                        "a.xml:5 [ExchangedDocument/ID]: found none; expected the number of the document (BT-1), such as INV-1001",
                        "a.xml:5 [ExchangedDocument/TypeCode]: found none; expected the type of the document (BT-3), such as 380 for an invoice or 381 for a credit note",
                        "a.xml:5 [ExchangedDocument/IssueDateTime/DateTimeString]: found none; expected the day of issue (BT-2), such as 20260930 with format 102",
                        "a.xml:39 [SupplyChainTradeTransaction/ApplicableHeaderTradeAgreement/SellerTradeParty/Name]: found none; expected the seller's name (BT-27), such as Fernmoor Pottery Ltd",
                        "a.xml:43 [SupplyChainTradeTransaction/ApplicableHeaderTradeAgreement/SellerTradeParty/PostalTradeAddress/CountryID]: found none; expected the seller's country, a code of ISO 3166 (BT-40), such as GB",
                        "a.xml:47 [SupplyChainTradeTransaction/ApplicableHeaderTradeAgreement/BuyerTradeParty/Name]: found none; expected the buyer's name (BT-44), such as Alder & Wren",
                        "a.xml:60 [SupplyChainTradeTransaction/ApplicableHeaderTradeSettlement/ApplicableTradeTax/BasisAmount]: found none; expected the amount VAT is charged on (BT-116), such as 100.00",
                        "a.xml:71 [SupplyChainTradeTransaction/ApplicableHeaderTradeSettlement/SpecifiedTradeSettlementHeaderMonetarySummation/LineTotalAmount]: found none; expected the sum of the lines (BT-106), such as 100.00",
                        "a.xml:71 [SupplyChainTradeTransaction/ApplicableHeaderTradeSettlement/SpecifiedTradeSettlementHeaderMonetarySummation/TaxBasisTotalAmount]: found none; expected the total without VAT (BT-109), such as 100.00",
                        "a.xml:71 [SupplyChainTradeTransaction/ApplicableHeaderTradeSettlement/SpecifiedTradeSettlementHeaderMonetarySummation/GrandTotalAmount]: found none; expected the total with VAT (BT-112), such as 120.00",
                        "a.xml:71 [SupplyChainTradeTransaction/ApplicableHeaderTradeSettlement/SpecifiedTradeSettlementHeaderMonetarySummation/DuePayableAmount]: found none; expected the amount due (BT-115), such as 120.00");
    }

    @Test
    void textsThatAreNotOfTheirKindInUbl() throws IOException {
        MadeInvoice wrong =
                usual().with("BT-2", "20.07.2026")
                        .with("BT-9", "2026-02-30")
                        .with("BT-3", "38O")
                        .with("BT-109", "1,00")
                        .with("BT-115", "1e3")
                        .with("BT-112", "1.00001")
                        .with("BT-80", "England")
                        .line("Odd", "1.00", "Q", "20")
                        .line("Dear", "1.00", "S", "200");
        assertThat(desk.problems("a.xml", wrong.ubl()))
                .containsExactly(
                        "a.xml:9 [InvoiceTypeCode]: found '38O'; expected the type of the document (BT-3), such as 380 for an invoice or 381 for a credit note",
                        "a.xml:7 [IssueDate]: found '20.07.2026'; expected the day of issue (BT-2), such as 2026-09-30",
                        "a.xml:8 [DueDate]: found '2026-02-30'; expected the day payment is due (BT-9), such as 2026-09-30",
                        "a.xml:55 [Delivery/DeliveryLocation/Address/Country/IdentificationCode]: found 'England'; expected the country of delivery, a code of ISO 3166 (BT-80), such as GB",
                        "a.xml:127 [InvoiceLine/Item/ClassifiedTaxCategory/ID]: found 'Q'; expected a VAT category: S, Z, E, AE, K, G, O, L or M (BT-118), such as S",
                        "a.xml:146 [InvoiceLine/Item/ClassifiedTaxCategory/Percent]: found '200'; expected the rate of VAT, a percentage from 0 to 100 (BT-119), such as 20",
                        "a.xml:77 [TaxTotal/TaxSubtotal/TaxCategory/ID]: found 'Q'; expected a VAT category: S, Z, E, AE, K, G, O, L or M (BT-118), such as S",
                        "a.xml:89 [TaxTotal/TaxSubtotal/TaxCategory/Percent]: found '200'; expected the rate of VAT, a percentage from 0 to 100 (BT-119), such as 20",
                        "a.xml:98 [LegalMonetaryTotal/TaxExclusiveAmount]: found '1,00'; expected the total without VAT (BT-109), such as 100.00, with a decimal point and at most 4 decimals",
                        "a.xml:99 [LegalMonetaryTotal/TaxInclusiveAmount]: found '1.00001'; expected the total with VAT (BT-112), such as 120.00, with a decimal point and at most 4 decimals",
                        "a.xml:100 [LegalMonetaryTotal/PayableAmount]: found '1e3'; expected the amount due (BT-115), such as 120.00, with a decimal point and at most 4 decimals");
    }

    @Test
    void textsThatAreNotOfTheirKindInCii() throws IOException {
        MadeInvoice wrong =
                usual().with("BT-2", "July 20")
                        .with("BT-9", "2026-02-30")
                        .with("BT-3", "38O")
                        .with("BT-109", "1,00")
                        .with("BT-115", "1e3")
                        .with("BT-112", "1.00001")
                        .with("BT-80", "England")
                        .line("Odd", "1.00", "Q", "20")
                        .line("Dear", "1.00", "S", "200");
        assertThat(desk.problems("a.xml", wrong.cii()))
                .containsExactly(
                        "a.xml:13 [ExchangedDocument/TypeCode]: found '38O'; expected the type of the document (BT-3), such as 380 for an invoice or 381 for a credit note",
                        "a.xml:15 [ExchangedDocument/IssueDateTime/DateTimeString]: found 'July 20' of format '102'; expected the day of issue (BT-2), such as 20260930 with format 102",
                        "a.xml:157 [SupplyChainTradeTransaction/ApplicableHeaderTradeSettlement/SpecifiedTradePaymentTerms/DueDateDateTime/DateTimeString]: found '20260230' of format '102'; expected the day payment is due (BT-9), such as 20260930 with format 102",
                        "a.xml:128 [SupplyChainTradeTransaction/ApplicableHeaderTradeDelivery/ShipToTradeParty/PostalTradeAddress/CountryID]: found 'England'; expected the country of delivery, a code of ISO 3166 (BT-80), such as GB",
                        "a.xml:63 [SupplyChainTradeTransaction/IncludedSupplyChainTradeLineItem/SpecifiedLineTradeSettlement/ApplicableTradeTax/CategoryCode]: found 'Q'; expected a VAT category: S, Z, E, AE, K, G, O, L or M (BT-118), such as S",
                        "a.xml:90 [SupplyChainTradeTransaction/IncludedSupplyChainTradeLineItem/SpecifiedLineTradeSettlement/ApplicableTradeTax/RateApplicablePercent]: found '200'; expected the rate of VAT, a percentage from 0 to 100 (BT-119), such as 20",
                        "a.xml:145 [SupplyChainTradeTransaction/ApplicableHeaderTradeSettlement/ApplicableTradeTax/CategoryCode]: found 'Q'; expected a VAT category: S, Z, E, AE, K, G, O, L or M (BT-118), such as S",
                        "a.xml:153 [SupplyChainTradeTransaction/ApplicableHeaderTradeSettlement/ApplicableTradeTax/RateApplicablePercent]: found '200'; expected the rate of VAT, a percentage from 0 to 100 (BT-119), such as 20",
                        "a.xml:162 [SupplyChainTradeTransaction/ApplicableHeaderTradeSettlement/SpecifiedTradeSettlementHeaderMonetarySummation/TaxBasisTotalAmount]: found '1,00'; expected the total without VAT (BT-109), such as 100.00, with a decimal point and at most 4 decimals",
                        "a.xml:164 [SupplyChainTradeTransaction/ApplicableHeaderTradeSettlement/SpecifiedTradeSettlementHeaderMonetarySummation/GrandTotalAmount]: found '1.00001'; expected the total with VAT (BT-112), such as 120.00, with a decimal point and at most 4 decimals",
                        "a.xml:165 [SupplyChainTradeTransaction/ApplicableHeaderTradeSettlement/SpecifiedTradeSettlementHeaderMonetarySummation/DuePayableAmount]: found '1e3'; expected the amount due (BT-115), such as 120.00, with a decimal point and at most 4 decimals");
    }

    @Test
    void aDayInAnotherFormat() throws IOException {
        assertThat(
                        desk.problems(
                                "a.xml",
                                usual().cii().replaceFirst("format=\"102\"", "format=\"610\"")))
                .containsExactly(
                        "a.xml:15 [ExchangedDocument/IssueDateTime/DateTimeString]: found '20260720' of format '610'; expected the day of issue (BT-2), such as 20260930 with format 102");
    }

    @Test
    void amountsInAnotherCurrency() throws IOException {
        String xml =
                usual().ubl()
                        .replace(
                                "<cbc:TaxExclusiveAmount currencyID=\"GBP\">",
                                "<cbc:TaxExclusiveAmount currencyID=\"USD\">");
        assertThat(desk.problems("a.xml", xml))
                .containsExactly(
                        "a.xml:67 [LegalMonetaryTotal/TaxExclusiveAmount/@currencyID]: found 'USD'; expected the currency of the document, such as GBP");
    }

    @Test
    void anUnknownCurrency() throws IOException {
        assertThat(desk.problems("a.xml", usual().with("BT-5", "STG").cii()))
                .containsExactly(
                        "a.xml:76 [SupplyChainTradeTransaction/ApplicableHeaderTradeSettlement/InvoiceCurrencyCode]: found 'STG'; expected the currency, a code of ISO 4217 (BT-5), such as GBP");
    }

    @Test
    void anotherTax() throws IOException {
        String said =
                "a.xml:60 [TaxTotal/TaxSubtotal/TaxCategory/TaxScheme/ID]: found 'GST'; expected the tax scheme VAT, such as VAT";
        assertThat(
                        desk.problems(
                                "a.xml",
                                usual().ubl()
                                        .replace("<cbc:ID>VAT</cbc:ID>", "<cbc:ID>GST</cbc:ID>")))
                .containsExactly(said);
        assertThat(
                        desk.problems(
                                "a.xml",
                                usual().cii()
                                        .replace(
                                                "<ram:TypeCode>VAT</ram:TypeCode>",
                                                "<ram:TypeCode>GST</ram:TypeCode>")))
                .containsExactly(
                        "a.xml:79 [SupplyChainTradeTransaction/ApplicableHeaderTradeSettlement/ApplicableTradeTax/TypeCode]: found 'GST'; expected the tax VAT, such as VAT");
    }

    @Test
    void aSecondTotalOfVat() throws IOException {
        MadeInvoice twice = usual().with("BT-6", "GBP").with("BT-111", "20.00");
        assertThat(desk.problems("a.xml", twice.ubl()))
                .containsExactly(
                        "a.xml:66 [TaxTotal]: found a second total of VAT in GBP; expected one, such as that with the VAT breakdown");
        assertThat(desk.problems("a.xml", twice.cii()))
                .containsExactly(
                        "a.xml:94 [SupplyChainTradeTransaction/ApplicableHeaderTradeSettlement/SpecifiedTradeSettlementHeaderMonetarySummation/TaxTotalAmount]: found a second total of VAT in GBP; expected one, such as 20.00");
    }

    @Test
    void aProForma() throws IOException {
        assertThat(desk.problems("a.xml", usual().with("BT-3", "325").ubl()))
                .containsExactly(
                        "a.xml:9 [InvoiceTypeCode]: found '325'; expected an invoice or a credit note, such as 380 or 381: a pro forma invoice is no VAT invoice");
    }

    @Test
    void aRootThatDoesNotFitTheType() throws IOException {
        assertThat(desk.problems("a.xml", usual().ubl().replace(">380<", ">381<")))
                .containsExactly(
                        "a.xml:9 [InvoiceTypeCode]: found '381'; expected a type of invoice, such as 380: a credit note has the root CreditNote");
        assertThat(desk.problems("a.xml", usual().credit().ubl().replace(">381<", ">380<")))
                .containsExactly(
                        "a.xml:8 [CreditNoteTypeCode]: found '380'; expected a type of credit note, such as 381: an invoice has the root Invoice");
    }

    @Test
    void theBusinessOnBothSides() throws IOException {
        assertThat(desk.problems("a.xml", usual().from(MadeInvoice.BUSINESS).ubl()))
                .containsExactly(
                        "a.xml: found this business as seller and as buyer of 'INV-1001'; expected another party on one side, such as a supplier");
    }

    @Test
    void anotherNamespace() throws IOException {
        assertThat(
                        desk.problems(
                                "a.xml",
                                "<Invoice xmlns=\"urn:example:invoice\"><ID>1</ID></Invoice>"))
                .containsExactly(
                        "a.xml: found the root element 'Invoice' of the namespace 'urn:example:invoice'; expected an e-invoice: Invoice or CreditNote of UBL 2.1, or CrossIndustryInvoice of CII D16B, such as the XML file the supplier sent, or a PDF with it inside");
        assertThat(desk.problems("a.xml", "<CrossIndustryDocument/>"))
                .containsExactly(
                        "a.xml: found the root element 'CrossIndustryDocument' of the namespace ''; expected an e-invoice: Invoice or CreditNote of UBL 2.1, or CrossIndustryInvoice of CII D16B, such as the XML file the supplier sent, or a PDF with it inside");
    }

    @Test
    void anotherRoot() throws IOException {
        assertThat(desk.problems("a.xml", "<Order><ID>1</ID></Order>"))
                .containsExactly(
                        "a.xml: found XML with the root element 'Order'; expected a form of XML that is known, or a table, such as the same report as .csv");
    }

    @Test
    void askedForByNameAndSomethingElse() throws IOException {
        Path file = desk.file("a.csv", "date,kind,gross\n2026-09-30,sale,1.00\n");
        assertThat(desk.enter(file, "e-invoice").problems())
                .extracting(Problem::toString)
                .containsExactly(
                        "a.csv: found a file that is no XML and no PDF; expected an e-invoice: Invoice or CreditNote of UBL 2.1, or CrossIndustryInvoice of CII D16B, such as the XML file the supplier sent, or a PDF with it inside");
    }

    @Test
    void aFileCutOff() throws IOException {
        String xml = usual().ubl();
        assertThat(desk.problems("a.xml", xml.substring(0, xml.indexOf("<cac:TaxTotal>"))))
                .containsExactly(
                        "a.xml:51: found XML that is not sound, or that has a document type; expected every element closed and no <!DOCTYPE, such as the file as the supplier sent it");
    }

    @Test
    void bytesThatAreNotOfTheEncoding() throws IOException {
        String xml = usual().with("BT-22", "Caf\u00e9").ubl();
        PrintStream terminal = System.err;
        ByteArrayOutputStream printed = new ByteArrayOutputStream();
        System.setErr(new PrintStream(printed, true, StandardCharsets.UTF_8));
        try {
            assertThat(desk.problems(desk.file("a.xml", xml, StandardCharsets.ISO_8859_1)))
                    .containsExactly(
                            "a.xml: found bytes that are not of the file's encoding; expected UTF-8, or the encoding its first line declares, such as encoding=\"windows-1252\"");
        } finally {
            System.setErr(terminal);
        }
        assertThat(printed.toString(StandardCharsets.UTF_8)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"ISO-8859-1", "windows-1252", "UTF-16", "UTF-8"})
    void otherEncodingsThatAreDeclared(String encoding) throws IOException {
        String xml =
                usual().with("BT-22", "Caf\u00e9")
                        .cii()
                        .replace("encoding=\"UTF-8\"", "encoding=\"" + encoding + "\"");
        ImportResult entered = desk.enter(desk.file("a.xml", xml, Charset.forName(encoding)));
        assertThat(entered.problems()).isEmpty();
        assertThat(desk.lines().get(0).notes()).startsWith("note: Caf\u00e9;");
    }

    @Test
    void elementsWithoutEnd() throws IOException {
        String xml = usual().ubl();
        String deep = xml.replace("<cac:TaxTotal>", "<cac:Party>".repeat(200));
        assertThat(desk.problems("a.xml", deep))
                .containsExactly(
                        "a.xml:51: found elements more than 100 deep; expected one document, such as an invoice");
    }

    @Test
    void aNumberThatIsTooLong() throws IOException {
        assertThat(desk.problems("a.xml", usual().with("BT-1", "7".repeat(201)).ubl()))
                .containsExactly(
                        "a.xml:6 [ID]: found '777777777777777777777777777777777777777777777777777777777777…'; expected the number of the document (BT-1), such as INV-1001, of at most 200 characters");
    }

    @Test
    void aTextThatIsTooLong() throws IOException {
        assertThat(desk.problems("a.xml", usual().with("BT-22", "x".repeat(100_001)).ubl()))
                .containsExactly(
                        "a.xml:10: found a text of more than 100,000 characters, or more than 50,000,000 in all; expected one document, such as an invoice");
    }

    @Test
    void tooManyElements() throws IOException {
        String xml = usual().ubl();
        assertThat(
                        desk.problems(
                                "a.xml",
                                xml.replace("</Invoice>", "<a/>".repeat(500_001) + "</Invoice>")))
                .containsExactly(
                        "a.xml:89: found more than 500,000 elements; expected one document, such as an invoice");
    }

    @Test
    void amountsThatAddUpToTooMuch() throws IOException {
        MadeInvoice dear = new MadeInvoice("INV-1");
        for (int i = 0; i < 10; i++) {
            dear.line("Gem " + i, "100000000000000.00", "S", "20");
        }
        String most = "900000000000000.00";
        dear.with("BT-106", most).with("BT-109", most).with("BT-110", most);
        dear.with("BT-112", most).with("BT-115", most).with("BT-116 S20", most);
        dear.vat("S", "20", most);
        assertThat(desk.problems("a.xml", dear.ubl()))
                .containsExactly(
                        "a.xml: found amounts that add up to more than 922 million million; expected less, such as 120.00");
    }

    /** Each amount fits, and net and VAT of a line of the breakdown together do not. */
    @Test
    void aLineOfTheBreakdownThatAddsUpToTooMuch() throws IOException {
        MadeInvoice invoice =
                new MadeInvoice("INV-1001")
                        .line("Bowls", "100.00", "S", "20")
                        .with("BT-116 S20", "900000000000000.00")
                        .vat("S", "20", "90000000000000.00")
                        .with("BT-110", "20.00")
                        .with("BT-112", "120.00")
                        .with("BT-115", "120.00");
        assertThat(desk.problems("a.xml", invoice.ubl()))
                .containsExactly(
                        "a.xml:53: found amounts that add up to more than 922 million million; expected less, such as the file in parts");
    }

    /** What is packed into a document, and elements of other namespaces, are passed over. */
    @Test
    void filesPackedIntoADocumentAreNotRead() throws IOException {
        String extension =
                "<ext:UBLExtensions xmlns:ext=\"urn:oasis:names:specification:ubl:schema:xsd:CommonExtensionComponents-2\"><ext:UBLExtension><ID>evil</ID></ext:UBLExtension></ext:UBLExtensions>\n<cbc:CustomizationID>";
        String attached =
                "<cac:AdditionalDocumentReference><cbc:ID>1</cbc:ID><cac:Attachment><cbc:EmbeddedDocumentBinaryObject>"
                        + "A".repeat(200_000)
                        + "</cbc:EmbeddedDocumentBinaryObject></cac:Attachment></cac:AdditionalDocumentReference>\n<cac:AccountingSupplierParty>";
        String xml =
                usual().ubl()
                        .replace("<cbc:CustomizationID>", extension)
                        .replace("<cac:AccountingSupplierParty>", attached);
        assertThat(desk.enter("a.xml", xml).problems()).isEmpty();
        assertThat(desk.lines()).hasSize(1);
        assertThat(desk.lines().get(0).document()).isEqualTo("INV-1001");
    }
}
