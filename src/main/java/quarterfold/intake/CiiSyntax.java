package quarterfold.intake;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * UN/CEFACT Cross Industry Invoice D16B, by the syntax binding of CEN/TS 16931-3-3. One root for
 * invoices and credit notes: the type tells.
 */
final class CiiSyntax implements InvoiceSyntax {
    private static final String UN = "urn:un:unece:uncefact:data:standard:";
    private static final String ROOT = "CrossIndustryInvoice";
    private static final Set<String> NAMESPACES =
            Set.of(
                    UN + "CrossIndustryInvoice:100",
                    UN + "ReusableAggregateBusinessInformationEntity:100",
                    UN + "UnqualifiedDataType:100",
                    UN + "QualifiedDataType:100");

    @Override
    public Set<String> namespaces() {
        return NAMESPACES;
    }

    @Override
    public boolean fits(String root, String namespace) {
        return root.equals(ROOT) && namespace.equals(UN + "CrossIndustryInvoice:100");
    }

    @Override
    public Invoice read(XmlNode root, String place, Problems problems) {
        return new Document(root, new InvoiceTerms(place, new BasicDays(), problems)).read();
    }

    /** {@code 20260930}, which is format 102 of UNTDID 2379. */
    private static final class BasicDays implements InvoiceTerms.Days {

        @Override
        public Optional<LocalDate> parse(XmlNode node) {
            String format = node.attribute("format");
            return format.isEmpty() || format.equals("102")
                    ? Optional.of(LocalDate.parse(node.text(), DateTimeFormatter.BASIC_ISO_DATE))
                    : Optional.empty();
        }

        @Override
        public String example() {
            return "20260930 with format 102";
        }
    }

    /** One document being read. */
    private static final class Document {
        private static final String TRADE = "SupplyChainTradeTransaction/";
        private static final String AGREEMENT = TRADE + "ApplicableHeaderTradeAgreement/";
        private static final String DELIVERY = TRADE + "ApplicableHeaderTradeDelivery/";
        private static final String SETTLEMENT = TRADE + "ApplicableHeaderTradeSettlement/";
        private static final String PRECEDING = SETTLEMENT + "InvoiceReferencedDocument";
        private static final String SUMMATION =
                SETTLEMENT + "SpecifiedTradeSettlementHeaderMonetarySummation/";

        private final XmlNode root;
        private final InvoiceTerms terms;
        private String currency = "";

        Document(XmlNode root, InvoiceTerms terms) {
            this.root = root;
            this.terms = terms;
        }

        Invoice read() {
            currency = terms.currency(root, SETTLEMENT + "InvoiceCurrencyCode");
            return new Invoice(
                    terms.text(root, "ExchangedDocument/ID", InvoiceTerm.NUMBER),
                    terms.type(root, "ExchangedDocument/TypeCode"),
                    currency,
                    root.text(
                            "ExchangedDocumentContext/GuidelineSpecifiedDocumentContextParameter/ID"),
                    days(),
                    party("SellerTradeParty", InvoiceTerm.SELLER),
                    party("BuyerTradeParty", InvoiceTerm.BUYER),
                    root.first(AGREEMENT + "SellerTaxRepresentativeTradeParty")
                            .map(Document::vatNumber)
                            .orElse(""),
                    terms.country(
                            root,
                            DELIVERY + "ShipToTradeParty/PostalTradeAddress/CountryID",
                            InvoiceTerm.DELIVERED_TO,
                            false),
                    root.all(TRADE + "IncludedSupplyChainTradeLineItem").map(this::item).toList(),
                    adjustments(),
                    root.all(SETTLEMENT + "ApplicableTradeTax").map(this::vatLine).toList(),
                    totals(),
                    accountingVat(),
                    root.all(PRECEDING).map(r -> r.text("IssuerAssignedID")).toList(),
                    notes());
        }

        private Invoice.Days days() {
            return new Invoice.Days(
                    terms.day(
                            root,
                            "ExchangedDocument/IssueDateTime/DateTimeString",
                            InvoiceTerm.ISSUED),
                    terms.dayIfAny(
                            root,
                            SETTLEMENT + "ApplicableTradeTax/TaxPointDate/DateString",
                            InvoiceTerm.TAX_POINT),
                    terms.dayIfAny(
                            root,
                            SETTLEMENT
                                    + "SpecifiedTradePaymentTerms/DueDateDateTime/DateTimeString",
                            InvoiceTerm.DUE),
                    terms.dayIfAny(
                            root,
                            DELIVERY
                                    + "ActualDeliverySupplyChainEvent/OccurrenceDateTime/DateTimeString",
                            InvoiceTerm.DELIVERED));
        }

        private Invoice.Party party(String name, InvoiceTerm term) {
            boolean seller = term == InvoiceTerm.SELLER;
            Optional<XmlNode> party = root.first(AGREEMENT + name);
            if (party.isEmpty()) {
                terms.missing(root, AGREEMENT + name + "/Name", term.expected());
                return new Invoice.Party("", "", "");
            }
            return new Invoice.Party(
                    terms.text(party.get(), "Name", term),
                    vatNumber(party.get()),
                    terms.country(
                            party.get(),
                            "PostalTradeAddress/CountryID",
                            seller ? InvoiceTerm.SELLER_COUNTRY : InvoiceTerm.BUYER_COUNTRY,
                            seller));
        }

        private static String vatNumber(XmlNode party) {
            return party.all("SpecifiedTaxRegistration/ID")
                    .filter(id -> id.attribute("schemeID").equals("VA"))
                    .map(XmlNode::text)
                    .findFirst()
                    .orElse("");
        }

        private Invoice.Item item(XmlNode line) {
            String in = "SpecifiedLineTradeSettlement/";
            return new Invoice.Item(
                    line.text("SpecifiedTradeProduct/Name"),
                    terms.amount(
                            line,
                            in + "SpecifiedTradeSettlementLineMonetarySummation/LineTotalAmount",
                            InvoiceTerm.LINE_NET),
                    tax(line, in + "ApplicableTradeTax", false));
        }

        private Invoice.Tax tax(XmlNode in, String path, boolean needed) {
            String at = path.isEmpty() ? "" : path + "/";
            return terms.tax(in, at + "CategoryCode", at + "RateApplicablePercent", needed);
        }

        /** Beside allowances and charges, the charge for carriage that a wider profile has. */
        private List<Invoice.Adjustment> adjustments() {
            return Stream.concat(
                            root.all(SETTLEMENT + "SpecifiedTradeAllowanceCharge")
                                    .map(
                                            node ->
                                                    adjustment(
                                                            node,
                                                            InvoiceTerms.isTrue(
                                                                    node.text(
                                                                            "ChargeIndicator/Indicator")),
                                                            "ActualAmount",
                                                            "CategoryTradeTax")),
                            root.all(SETTLEMENT + "SpecifiedLogisticsServiceCharge")
                                    .map(
                                            node ->
                                                    adjustment(
                                                            node,
                                                            true,
                                                            "AppliedAmount",
                                                            "AppliedTradeTax")))
                    .toList();
        }

        private Invoice.Adjustment adjustment(
                XmlNode node, boolean charge, String amount, String tax) {
            return new Invoice.Adjustment(
                    charge,
                    terms.amount(node, amount, InvoiceTerm.ADJUSTMENT),
                    tax(node, tax, false));
        }

        private Invoice.VatLine vatLine(XmlNode node) {
            if (!node.text("TypeCode").equalsIgnoreCase("VAT")) {
                terms.wrong(node, "TypeCode", "the tax VAT, such as VAT");
            }
            String reason = node.text("ExemptionReason");
            return new Invoice.VatLine(
                    node.line(),
                    terms.amount(node, "BasisAmount", InvoiceTerm.TAXABLE),
                    terms.amount(node, "CalculatedAmount", InvoiceTerm.TAX),
                    tax(node, "", true),
                    reason.isEmpty() ? node.text("ExemptionReasonCode") : reason);
        }

        private Invoice.Totals totals() {
            List<XmlNode> vat = taxTotals(currency).toList();
            if (vat.size() > 1) {
                terms.problem(
                        vat.get(1).line(),
                        vat.get(1).path(),
                        "found a second total of VAT in %s; expected one, such as 20.00"
                                .formatted(currency));
            }
            return new Invoice.Totals(
                    terms.amount(root, SUMMATION + "LineTotalAmount", InvoiceTerm.LINES),
                    terms.amountIfAny(
                            root, SUMMATION + "AllowanceTotalAmount", InvoiceTerm.ALLOWANCES),
                    terms.amountIfAny(root, SUMMATION + "ChargeTotalAmount", InvoiceTerm.CHARGES),
                    terms.amount(root, SUMMATION + "TaxBasisTotalAmount", InvoiceTerm.NET),
                    vat.stream()
                            .findFirst()
                            .map(node -> terms.written(node, currency, InvoiceTerm.VAT)),
                    terms.amount(root, SUMMATION + "GrandTotalAmount", InvoiceTerm.GROSS),
                    terms.amountIfAny(root, SUMMATION + "TotalPrepaidAmount", InvoiceTerm.PAID),
                    terms.amountIfAny(root, SUMMATION + "RoundingAmount", InvoiceTerm.ROUNDING),
                    terms.amount(root, SUMMATION + "DuePayableAmount", InvoiceTerm.PAYABLE));
        }

        private Stream<XmlNode> taxTotals(String in) {
            return root.all(SUMMATION + "TaxTotalAmount")
                    .filter(
                            node -> {
                                String stated = node.attribute("currencyID");
                                return stated.equals(in)
                                        || (stated.isEmpty() && in.equals(currency));
                            });
        }

        private Optional<Invoice.AccountingVat> accountingVat() {
            String in = root.text(SETTLEMENT + "TaxCurrencyCode");
            return in.isEmpty() || in.equals(currency)
                    ? Optional.empty()
                    : taxTotals(in)
                            .findFirst()
                            .map(
                                    node ->
                                            new Invoice.AccountingVat(
                                                    in,
                                                    terms.written(
                                                            node, in, InvoiceTerm.ACCOUNTING_VAT)));
        }

        private List<String> notes() {
            List<String> notes = new ArrayList<>();
            InvoiceNotes.add(notes, "buyer reference", root.text(AGREEMENT + "BuyerReference"));
            InvoiceNotes.add(
                    notes,
                    "order",
                    root.text(AGREEMENT + "BuyerOrderReferencedDocument/IssuerAssignedID"));
            root.all(PRECEDING)
                    .forEach(
                            r ->
                                    InvoiceNotes.add(
                                            notes,
                                            "preceding invoice",
                                            r.text("IssuerAssignedID"),
                                            iso(r.text("FormattedIssueDateTime/DateTimeString"))));
            InvoiceNotes.add(
                    notes,
                    "period",
                    iso(
                            root.text(
                                    SETTLEMENT
                                            + "BillingSpecifiedPeriod/StartDateTime/DateTimeString")),
                    iso(
                            root.text(
                                    SETTLEMENT
                                            + "BillingSpecifiedPeriod/EndDateTime/DateTimeString")));
            root.all("ExchangedDocument/IncludedNote/Content")
                    .forEach(n -> InvoiceNotes.add(notes, "note", n.text()));
            return notes;
        }

        /** A day of a note as all papers write days; as it stands where it is none. */
        private static String iso(String text) {
            return text.matches("\\d{8}")
                    ? text.substring(0, 4) + "-" + text.substring(4, 6) + "-" + text.substring(6)
                    : text;
        }
    }
}
