package quarterfold.intake;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import quarterfold.money.Amount;

/**
 * UBL 2.1, {@code Invoice} and {@code CreditNote}, by the syntax binding of CEN/TS 16931-3-2. The
 * amounts of a credit note are positive.
 */
final class UblSyntax implements InvoiceSyntax {
    private static final String UBL = "urn:oasis:names:specification:ubl:schema:xsd:";
    private static final Set<String> ROOTS = Set.of("Invoice", "CreditNote");
    private static final Set<String> NAMESPACES =
            Set.of(UBL + "CommonAggregateComponents-2", UBL + "CommonBasicComponents-2");
    private static final String REGISTERED_NAME = "PartyLegalEntity/RegistrationName";
    private static final String PRECEDING = "BillingReference/InvoiceDocumentReference";
    private static final String NAME = "PartyName/Name";
    private static final String COUNTRY = "PostalAddress/Country/IdentificationCode";

    @Override
    public Set<String> namespaces() {
        return NAMESPACES;
    }

    @Override
    public boolean fits(String root, String namespace) {
        return ROOTS.contains(root) && namespace.equals(UBL + root + "-2");
    }

    @Override
    public Invoice read(XmlNode root, String place, Problems problems) {
        return new Document(root, new InvoiceTerms(place, new IsoDays(), problems)).read();
    }

    /** {@code 2026-09-30}, after which {@code xsd:date} may have a zone. */
    private static final class IsoDays implements InvoiceTerms.Days {
        private static final Pattern DAY =
                Pattern.compile("(\\d{4}-\\d{2}-\\d{2})(Z|[+-]\\d{2}:\\d{2})?");

        @Override
        public Optional<LocalDate> parse(XmlNode node) {
            Matcher day = DAY.matcher(node.text());
            return day.matches() ? Optional.of(LocalDate.parse(day.group(1))) : Optional.empty();
        }

        @Override
        public String example() {
            return "2026-09-30";
        }
    }

    /** One document being read. */
    private static final class Document {
        private final XmlNode root;
        private final InvoiceTerms terms;
        private final boolean credit;
        private String currency = "";

        Document(XmlNode root, InvoiceTerms terms) {
            this.root = root;
            this.terms = terms;
            this.credit = root.name().equals("CreditNote");
        }

        Invoice read() {
            currency = terms.currency(root, "DocumentCurrencyCode");
            XmlNode total = taxTotal();
            return new Invoice(
                    terms.text(root, "ID", InvoiceTerm.NUMBER),
                    type(),
                    currency,
                    root.text("CustomizationID"),
                    days(),
                    party("AccountingSupplierParty/Party", InvoiceTerm.SELLER),
                    party("AccountingCustomerParty/Party", InvoiceTerm.BUYER),
                    root.first("TaxRepresentativeParty").map(Document::vatNumber).orElse(""),
                    terms.country(
                            root,
                            "Delivery/DeliveryLocation/Address/Country/IdentificationCode",
                            InvoiceTerm.DELIVERED_TO,
                            false),
                    root.all(credit ? "CreditNoteLine" : "InvoiceLine").map(this::item).toList(),
                    root.all("AllowanceCharge").map(this::adjustment).toList(),
                    total.all("TaxSubtotal").map(this::vatLine).toList(),
                    totals(total),
                    accountingVat(),
                    root.all(PRECEDING).map(r -> r.text("ID")).toList(),
                    notes());
        }

        private InvoiceType type() {
            String path = credit ? "CreditNoteTypeCode" : "InvoiceTypeCode";
            InvoiceType type = terms.type(root, path);
            boolean known = InvoiceType.of(type.code()).isPresent();
            if (known && type.credit() != credit) {
                terms.wrong(
                        root,
                        path,
                        credit
                                ? "a type of credit note, such as 381: an invoice has the root Invoice"
                                : "a type of invoice, such as 380: a credit note has the root CreditNote");
            }
            return type;
        }

        private Invoice.Days days() {
            return new Invoice.Days(
                    terms.day(root, "IssueDate", InvoiceTerm.ISSUED),
                    terms.dayIfAny(root, "TaxPointDate", InvoiceTerm.TAX_POINT),
                    terms.dayIfAny(
                            root,
                            credit ? "PaymentMeans/PaymentDueDate" : "DueDate",
                            InvoiceTerm.DUE),
                    terms.dayIfAny(root, "Delivery/ActualDeliveryDate", InvoiceTerm.DELIVERED));
        }

        private Invoice.Party party(String path, InvoiceTerm term) {
            boolean seller = term == InvoiceTerm.SELLER;
            Optional<XmlNode> stated = root.first(path);
            if (stated.isEmpty()) {
                terms.missing(root, path + "/" + REGISTERED_NAME, term.expected());
                return new Invoice.Party("", "", "");
            }
            XmlNode party = stated.get();
            boolean trades = party.text(REGISTERED_NAME).isEmpty() && party.first(NAME).isPresent();
            return new Invoice.Party(
                    terms.text(party, trades ? NAME : REGISTERED_NAME, term),
                    vatNumber(party),
                    terms.country(
                            party,
                            COUNTRY,
                            seller ? InvoiceTerm.SELLER_COUNTRY : InvoiceTerm.BUYER_COUNTRY,
                            seller));
        }

        private static String vatNumber(XmlNode party) {
            return party.all("PartyTaxScheme")
                    .filter(s -> s.text("TaxScheme/ID").equalsIgnoreCase("VAT"))
                    .map(s -> s.text("CompanyID"))
                    .findFirst()
                    .orElse("");
        }

        private Invoice.Item item(XmlNode line) {
            String tax = "Item/ClassifiedTaxCategory/";
            return new Invoice.Item(
                    line.text("Item/Name"),
                    terms.amount(line, "LineExtensionAmount", InvoiceTerm.LINE_NET),
                    terms.tax(line, tax + "ID", tax + "Percent", false));
        }

        private Invoice.Adjustment adjustment(XmlNode node) {
            return new Invoice.Adjustment(
                    InvoiceTerms.isTrue(node.text("ChargeIndicator")),
                    terms.amount(node, "Amount", InvoiceTerm.ADJUSTMENT),
                    terms.tax(node, "TaxCategory/ID", "TaxCategory/Percent", false));
        }

        private Invoice.VatLine vatLine(XmlNode node) {
            String scheme = node.text("TaxCategory/TaxScheme/ID");
            if (!scheme.equalsIgnoreCase("VAT")) {
                terms.wrong(node, "TaxCategory/TaxScheme/ID", "the tax scheme VAT, such as VAT");
            }
            String reason = node.text("TaxCategory/TaxExemptionReason");
            return new Invoice.VatLine(
                    node.line(),
                    terms.amount(node, "TaxableAmount", InvoiceTerm.TAXABLE),
                    terms.amount(node, "TaxAmount", InvoiceTerm.TAX),
                    terms.tax(node, "TaxCategory/ID", "TaxCategory/Percent", true),
                    reason.isEmpty() ? node.text("TaxCategory/TaxExemptionReasonCode") : reason);
        }

        /** The total of VAT in the document's currency, which has the breakdown. */
        private XmlNode taxTotal() {
            List<XmlNode> own = taxTotals(currency).toList();
            if (own.size() > 1) {
                terms.problem(
                        own.get(1).line(),
                        "TaxTotal",
                        "found a second total of VAT in %s; expected one, such as that with the VAT breakdown"
                                .formatted(currency));
            }
            return own.stream()
                    .findFirst()
                    .or(
                            () ->
                                    root.all("TaxTotal")
                                            .filter(t -> t.first("TaxSubtotal").isPresent())
                                            .findFirst())
                    .orElseGet(() -> new XmlNode("TaxTotal", "TaxTotal", root.line()));
        }

        private Stream<XmlNode> taxTotals(String in) {
            return root.all("TaxTotal")
                    .filter(
                            t -> {
                                String stated =
                                        t.first("TaxAmount")
                                                .map(a -> a.attribute("currencyID"))
                                                .orElse("");
                                return stated.equals(in)
                                        || (stated.isEmpty() && in.equals(currency));
                            });
        }

        private Invoice.Totals totals(XmlNode taxTotal) {
            String in = "LegalMonetaryTotal/";
            return new Invoice.Totals(
                    terms.amount(root, in + "LineExtensionAmount", InvoiceTerm.LINES),
                    terms.amountIfAny(root, in + "AllowanceTotalAmount", InvoiceTerm.ALLOWANCES),
                    terms.amountIfAny(root, in + "ChargeTotalAmount", InvoiceTerm.CHARGES),
                    terms.amount(root, in + "TaxExclusiveAmount", InvoiceTerm.NET),
                    terms.amountIfAny(taxTotal, "TaxAmount", InvoiceTerm.VAT),
                    terms.amount(root, in + "TaxInclusiveAmount", InvoiceTerm.GROSS),
                    terms.amountIfAny(root, in + "PrepaidAmount", InvoiceTerm.PAID),
                    terms.amountIfAny(root, in + "PayableRoundingAmount", InvoiceTerm.ROUNDING),
                    terms.amount(root, in + "PayableAmount", InvoiceTerm.PAYABLE));
        }

        private Optional<Invoice.AccountingVat> accountingVat() {
            String in = root.text("TaxCurrencyCode");
            if (in.isEmpty() || in.equals(currency)) {
                return Optional.empty();
            }
            return taxTotals(in)
                    .findFirst()
                    .flatMap(t -> t.first("TaxAmount"))
                    .map(a -> terms.written(a, in, InvoiceTerm.ACCOUNTING_VAT))
                    .map((Amount vat) -> new Invoice.AccountingVat(in, vat));
        }

        private List<String> notes() {
            List<String> notes = new ArrayList<>();
            InvoiceNotes.add(notes, "buyer reference", root.text("BuyerReference"));
            InvoiceNotes.add(notes, "order", root.text("OrderReference/ID"));
            root.all(PRECEDING)
                    .forEach(
                            r ->
                                    InvoiceNotes.add(
                                            notes,
                                            "preceding invoice",
                                            r.text("ID"),
                                            r.text("IssueDate")));
            InvoiceNotes.add(
                    notes,
                    "period",
                    root.text("InvoicePeriod/StartDate"),
                    root.text("InvoicePeriod/EndDate"));
            root.all("Note").forEach(n -> InvoiceNotes.add(notes, "note", n.text()));
            return notes;
        }
    }
}
