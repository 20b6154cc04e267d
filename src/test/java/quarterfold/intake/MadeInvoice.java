package quarterfold.intake;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/**
 * An invented invoice, written in UBL and in CII so that both say the same. Totals and the VAT
 * breakdown are worked out from its lines, unless a term is stated otherwise to break a rule.
 */
public final class MadeInvoice {

    public record Party(String name, String country, String vat) {}

    private record Line(String name, BigDecimal net, String category, String rate) {}

    private record Adjustment(boolean charge, BigDecimal amount, String category, String rate) {}

    private record Group(String category, String rate) {}

    public static final Party POTTERY = new Party("Fernmoor Pottery Ltd", "GB", "GB000472729");
    public static final Party BUSINESS = new Party("Alder & Wren", "GB", "GB101747696");

    private final Map<String, String> terms = new LinkedHashMap<>();
    private final List<Line> lines = new ArrayList<>();
    private final List<Adjustment> adjustments = new ArrayList<>();
    private final Map<String, String> vat = new LinkedHashMap<>();
    private Party seller = POTTERY;
    private Party buyer = BUSINESS;

    public MadeInvoice(String number) {
        terms.put("BT-1", number);
        terms.put("BT-2", "2026-07-20");
        terms.put("BT-3", "380");
        terms.put("BT-5", "GBP");
        terms.put("BT-9", "2026-08-19");
        terms.put("BT-24", "urn:cen.eu:en16931:2017");
    }

    /** States a term by its number, such as {@code BT-72}; totals otherwise than they are. */
    public MadeInvoice with(String term, String text) {
        terms.put(term, text);
        return this;
    }

    /** A credit note, of type 381. */
    public MadeInvoice credit() {
        return with("BT-3", "381");
    }

    /** Of another seller. */
    public MadeInvoice from(Party party) {
        seller = party;
        return this;
    }

    /** To another buyer. */
    public MadeInvoice to(Party party) {
        buyer = party;
        return this;
    }

    /** Adds a line of one unit; no rate is the empty text. */
    public MadeInvoice line(String name, String net, String category, String rate) {
        lines.add(new Line(name, new BigDecimal(net), category, rate));
        return this;
    }

    /** Adds an allowance on the document. */
    public MadeInvoice allowance(String amount, String category, String rate) {
        adjustments.add(new Adjustment(false, new BigDecimal(amount), category, rate));
        return this;
    }

    /** Adds a charge on the document. */
    public MadeInvoice charge(String amount, String category, String rate) {
        adjustments.add(new Adjustment(true, new BigDecimal(amount), category, rate));
        return this;
    }

    /** States the VAT of a line of the breakdown otherwise than its rate gives. */
    public MadeInvoice vat(String category, String rate, String amount) {
        vat.put(category + rate, amount);
        return this;
    }

    private boolean isCredit() {
        return term("BT-3").equals("381");
    }

    private String term(String number) {
        return terms.getOrDefault(number, "");
    }

    private String total(String number, BigDecimal worked) {
        return terms.getOrDefault(number, worked.setScale(2, RoundingMode.HALF_UP).toString());
    }

    private BigDecimal sum(boolean charge) {
        return adjustments.stream()
                .filter(a -> a.charge() == charge)
                .map(Adjustment::amount)
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private BigDecimal lineSum() {
        return lines.stream().map(Line::net).reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private Map<Group, BigDecimal> groups() {
        Map<Group, BigDecimal> groups = new LinkedHashMap<>();
        lines.forEach(
                l -> groups.merge(new Group(l.category(), l.rate()), l.net(), BigDecimal::add));
        adjustments.forEach(
                a ->
                        groups.merge(
                                new Group(a.category(), a.rate()),
                                a.charge() ? a.amount() : a.amount().negate(),
                                BigDecimal::add));
        return groups;
    }

    private String base(Group group, BigDecimal worked) {
        return terms.getOrDefault(
                "BT-116 " + group.category() + group.rate(),
                worked.setScale(2, RoundingMode.HALF_UP).toString());
    }

    private BigDecimal vat(Group group, BigDecimal net) {
        String stated = vat.get(group.category() + group.rate());
        if (stated != null) {
            return new BigDecimal(stated);
        }
        BigDecimal rate = new BigDecimal(group.rate().isEmpty() ? "0" : group.rate());
        return net.multiply(rate).divide(new BigDecimal(100), 2, RoundingMode.HALF_UP);
    }

    private BigDecimal vatSum() {
        return groups().entrySet().stream()
                .map(g -> vat(g.getKey(), g.getValue()))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private BigDecimal net() {
        return lineSum().subtract(sum(false)).add(sum(true));
    }

    private static String reason(String category) {
        return switch (category) {
            case "E" -> "Exempt supply";
            case "AE" -> "Reverse charge";
            case "K" -> "Intra-community supply";
            case "G" -> "Export";
            case "O" -> "Not subject to VAT";
            default -> "";
        };
    }

    private static String element(String name, String text) {
        return text.isEmpty()
                ? ""
                : "<%s>%s</%s>\n".formatted(name, escaped(text), name.replaceAll(" .*", ""));
    }

    private static String in(String name, String content) {
        return content.isEmpty() ? "" : "<%s>\n%s</%s>\n".formatted(name, content, name);
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;");
    }

    // UBL

    /** The document in UBL 2.1. */
    public String ubl() {
        String root = isCredit() ? "CreditNote" : "Invoice";
        return """
        <?xml version="1.0" encoding="UTF-8"?>
        <%s xmlns="urn:oasis:names:specification:ubl:schema:xsd:%s-2"
            xmlns:cac="urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2"
            xmlns:cbc="urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2">
        """
                        .formatted(root, root)
                + ublHead()
                + in("cac:AccountingSupplierParty", ublParty(seller, "cac:Party"))
                + in("cac:AccountingCustomerParty", ublParty(buyer, "cac:Party"))
                + in(
                        "cac:Delivery",
                        element("cbc:ActualDeliveryDate", term("BT-72"))
                                + in(
                                        "cac:DeliveryLocation",
                                        in(
                                                "cac:Address",
                                                in(
                                                        "cac:Country",
                                                        element(
                                                                "cbc:IdentificationCode",
                                                                term("BT-80"))))))
                + (isCredit()
                        ? in(
                                "cac:PaymentMeans",
                                element("cbc:PaymentMeansCode", "1")
                                        + element("cbc:PaymentDueDate", term("BT-9")))
                        : "")
                + adjustments.stream().map(this::ublAdjustment).collect(Collectors.joining())
                + ublTaxTotals()
                + ublTotals()
                + lines.stream().map(this::ublLine).collect(Collectors.joining())
                + "</%s>\n".formatted(root);
    }

    private String ublHead() {
        String taxPoint = element("cbc:TaxPointDate", term("BT-7"));
        return element("cbc:CustomizationID", term("BT-24"))
                + element("cbc:ID", term("BT-1"))
                + element("cbc:IssueDate", term("BT-2"))
                + (isCredit()
                        ? taxPoint + element("cbc:CreditNoteTypeCode", term("BT-3"))
                        : element("cbc:DueDate", term("BT-9"))
                                + element("cbc:InvoiceTypeCode", term("BT-3")))
                + element("cbc:Note", term("BT-22"))
                + (isCredit() ? "" : taxPoint)
                + element("cbc:DocumentCurrencyCode", term("BT-5"))
                + element("cbc:TaxCurrencyCode", term("BT-6"))
                + element("cbc:BuyerReference", term("BT-10"))
                + in(
                        "cac:InvoicePeriod",
                        element("cbc:StartDate", term("BT-73"))
                                + element("cbc:EndDate", term("BT-74")))
                + in("cac:OrderReference", element("cbc:ID", term("BT-13")))
                + each(
                        "BT-25",
                        number ->
                                in(
                                        "cac:BillingReference",
                                        in(
                                                "cac:InvoiceDocumentReference",
                                                element("cbc:ID", number)
                                                        + element(
                                                                "cbc:IssueDate", term("BT-26")))));
    }

    /** A term that may be there more than once, a line each. */
    private String each(String term, UnaryOperator<String> element) {
        return term(term).lines().map(element).collect(Collectors.joining());
    }

    private static String ublParty(Party party, String name) {
        return in(
                name,
                in(
                                "cac:PostalAddress",
                                element("cbc:CityName", "Fernmoor")
                                        + in(
                                                "cac:Country",
                                                element("cbc:IdentificationCode", party.country())))
                        + (party.vat().isEmpty()
                                ? ""
                                : in(
                                        "cac:PartyTaxScheme",
                                        element("cbc:CompanyID", party.vat())
                                                + in("cac:TaxScheme", element("cbc:ID", "VAT"))))
                        + in(
                                "cac:PartyLegalEntity",
                                element("cbc:RegistrationName", party.name())
                                        + element("cbc:CompanyID", "01234567")));
    }

    private String money(String name, String amount) {
        return element("%s currencyID=\"%s\"".formatted(name, term("BT-5")), amount);
    }

    private static String ublTax(String name, String category, String rate, String reason) {
        return in(
                name,
                element("cbc:ID", category)
                        + element("cbc:Percent", rate)
                        + element("cbc:TaxExemptionReason", reason)
                        + in("cac:TaxScheme", element("cbc:ID", "VAT")));
    }

    private String ublAdjustment(Adjustment a) {
        return in(
                "cac:AllowanceCharge",
                element("cbc:ChargeIndicator", Boolean.toString(a.charge()))
                        + element("cbc:AllowanceChargeReason", a.charge() ? "Carriage" : "Discount")
                        + money("cbc:Amount", a.amount().toString())
                        + ublTax("cac:TaxCategory", a.category(), a.rate(), ""));
    }

    private String ublTaxTotals() {
        StringBuilder own = new StringBuilder(money("cbc:TaxAmount", total("BT-110", vatSum())));
        if (term("BG-23").isEmpty()) {
            groups().forEach(
                            (group, net) ->
                                    own.append(
                                            in(
                                                    "cac:TaxSubtotal",
                                                    money("cbc:TaxableAmount", base(group, net))
                                                            + money(
                                                                    "cbc:TaxAmount",
                                                                    vat(group, net).toString())
                                                            + ublTax(
                                                                    "cac:TaxCategory",
                                                                    group.category(),
                                                                    group.rate(),
                                                                    reason(group.category())))));
        }
        String second =
                element("cbc:TaxAmount currencyID=\"%s\"".formatted(term("BT-6")), term("BT-111"));
        return in("cac:TaxTotal", own.toString()) + in("cac:TaxTotal", second);
    }

    private String ublTotals() {
        BigDecimal gross = net().add(vatSum());
        return in(
                "cac:LegalMonetaryTotal",
                money("cbc:LineExtensionAmount", total("BT-106", lineSum()))
                        + money("cbc:TaxExclusiveAmount", total("BT-109", net()))
                        + money("cbc:TaxInclusiveAmount", total("BT-112", gross))
                        + money("cbc:AllowanceTotalAmount", orNone("BT-107", sum(false)))
                        + money("cbc:ChargeTotalAmount", orNone("BT-108", sum(true)))
                        + money("cbc:PrepaidAmount", term("BT-113"))
                        + money("cbc:PayableRoundingAmount", term("BT-114"))
                        + money("cbc:PayableAmount", total("BT-115", due(gross))));
    }

    private String orNone(String term, BigDecimal sum) {
        return sum.signum() == 0 ? term(term) : total(term, sum);
    }

    private BigDecimal due(BigDecimal gross) {
        BigDecimal paid = new BigDecimal(terms.getOrDefault("BT-113", "0"));
        return gross.subtract(paid).add(new BigDecimal(terms.getOrDefault("BT-114", "0")));
    }

    private String ublLine(Line line) {
        boolean back = line.net().signum() < 0;
        return in(
                isCredit() ? "cac:CreditNoteLine" : "cac:InvoiceLine",
                element("cbc:ID", Integer.toString(lines.indexOf(line) + 1))
                        + element(
                                (isCredit() ? "cbc:CreditedQuantity" : "cbc:InvoicedQuantity")
                                        + " unitCode=\"C62\"",
                                back ? "-1" : "1")
                        + money("cbc:LineExtensionAmount", line.net().toString())
                        + in(
                                "cac:Item",
                                element("cbc:Name", line.name())
                                        + ublTax(
                                                "cac:ClassifiedTaxCategory",
                                                line.category(),
                                                line.rate(),
                                                ""))
                        + in("cac:Price", money("cbc:PriceAmount", line.net().abs().toString())));
    }

    // CII

    /** The document in CII D16B. */
    public String cii() {
        return """
        <?xml version="1.0" encoding="UTF-8"?>
        <rsm:CrossIndustryInvoice xmlns:rsm="urn:un:unece:uncefact:data:standard:CrossIndustryInvoice:100"
            xmlns:ram="urn:un:unece:uncefact:data:standard:ReusableAggregateBusinessInformationEntity:100"
            xmlns:udt="urn:un:unece:uncefact:data:standard:UnqualifiedDataType:100"
            xmlns:qdt="urn:un:unece:uncefact:data:standard:QualifiedDataType:100">
        """
                + in(
                        "rsm:ExchangedDocumentContext",
                        in(
                                "ram:GuidelineSpecifiedDocumentContextParameter",
                                element("ram:ID", term("BT-24"))))
                + in(
                        "rsm:ExchangedDocument",
                        element("ram:ID", term("BT-1"))
                                + element("ram:TypeCode", term("BT-3"))
                                + in("ram:IssueDateTime", day("udt:DateTimeString", "BT-2"))
                                + in("ram:IncludedNote", element("ram:Content", term("BT-22"))))
                + in(
                        "rsm:SupplyChainTradeTransaction",
                        lines.stream().map(this::ciiLine).collect(Collectors.joining())
                                + ciiAgreement()
                                + ciiDelivery()
                                + in("ram:ApplicableHeaderTradeSettlement", ciiSettlement()))
                + "</rsm:CrossIndustryInvoice>\n";
    }

    private String day(String name, String term) {
        return element(name + " format=\"102\"", term(term).replace("-", ""));
    }

    private String ciiAgreement() {
        return in(
                "ram:ApplicableHeaderTradeAgreement",
                element("ram:BuyerReference", term("BT-10"))
                        + ciiParty("ram:SellerTradeParty", seller)
                        + ciiParty("ram:BuyerTradeParty", buyer)
                        + in(
                                "ram:BuyerOrderReferencedDocument",
                                element("ram:IssuerAssignedID", term("BT-13"))));
    }

    private static String ciiParty(String name, Party party) {
        return in(
                name,
                element("ram:Name", party.name())
                        + in("ram:SpecifiedLegalOrganization", element("ram:ID", "01234567"))
                        + in(
                                "ram:PostalTradeAddress",
                                element("ram:CityName", "Fernmoor")
                                        + element("ram:CountryID", party.country()))
                        + in(
                                "ram:SpecifiedTaxRegistration",
                                element("ram:ID schemeID=\"VA\"", party.vat())));
    }

    private String ciiDelivery() {
        String content =
                in(
                                "ram:ShipToTradeParty",
                                in(
                                        "ram:PostalTradeAddress",
                                        element("ram:CountryID", term("BT-80"))))
                        + in(
                                "ram:ActualDeliverySupplyChainEvent",
                                in("ram:OccurrenceDateTime", day("udt:DateTimeString", "BT-72")));
        return "<ram:ApplicableHeaderTradeDelivery>\n%s</ram:ApplicableHeaderTradeDelivery>\n"
                .formatted(content);
    }

    private String ciiSettlement() {
        return element("ram:TaxCurrencyCode", term("BT-6"))
                + element("ram:InvoiceCurrencyCode", term("BT-5"))
                + (term("BG-23").isEmpty()
                        ? groups().entrySet().stream()
                                .map(g -> ciiVat(g.getKey(), g.getValue()))
                                .collect(Collectors.joining())
                        : "")
                + in(
                        "ram:BillingSpecifiedPeriod",
                        in("ram:StartDateTime", day("udt:DateTimeString", "BT-73"))
                                + in("ram:EndDateTime", day("udt:DateTimeString", "BT-74")))
                + adjustments.stream().map(this::ciiAdjustment).collect(Collectors.joining())
                + in(
                        "ram:SpecifiedTradePaymentTerms",
                        in("ram:DueDateDateTime", day("udt:DateTimeString", "BT-9")))
                + ciiTotals()
                + each(
                        "BT-25",
                        number ->
                                in(
                                        "ram:InvoiceReferencedDocument",
                                        element("ram:IssuerAssignedID", number)
                                                + in(
                                                        "ram:FormattedIssueDateTime",
                                                        day("qdt:DateTimeString", "BT-26"))));
    }

    private static String ciiTax(String name, String category, String rate) {
        return in(
                name,
                element("ram:TypeCode", "VAT")
                        + element("ram:CategoryCode", category)
                        + element("ram:RateApplicablePercent", rate));
    }

    private String ciiVat(Group group, BigDecimal net) {
        return in(
                "ram:ApplicableTradeTax",
                element("ram:CalculatedAmount", vat(group, net).toString())
                        + element("ram:TypeCode", "VAT")
                        + element("ram:ExemptionReason", reason(group.category()))
                        + element("ram:BasisAmount", base(group, net))
                        + element("ram:CategoryCode", group.category())
                        + (group.equals(groups().keySet().iterator().next())
                                ? in("ram:TaxPointDate", day("udt:DateString", "BT-7"))
                                : "")
                        + element("ram:RateApplicablePercent", group.rate()));
    }

    private String ciiAdjustment(Adjustment a) {
        return in(
                "ram:SpecifiedTradeAllowanceCharge",
                in("ram:ChargeIndicator", element("udt:Indicator", Boolean.toString(a.charge())))
                        + element("ram:ActualAmount", a.amount().toString())
                        + element("ram:Reason", a.charge() ? "Carriage" : "Discount")
                        + ciiTax("ram:CategoryTradeTax", a.category(), a.rate()));
    }

    private String ciiTotals() {
        BigDecimal gross = net().add(vatSum());
        return in(
                "ram:SpecifiedTradeSettlementHeaderMonetarySummation",
                element("ram:LineTotalAmount", total("BT-106", lineSum()))
                        + element("ram:ChargeTotalAmount", orNone("BT-108", sum(true)))
                        + element("ram:AllowanceTotalAmount", orNone("BT-107", sum(false)))
                        + element("ram:TaxBasisTotalAmount", total("BT-109", net()))
                        + element(
                                "ram:TaxTotalAmount currencyID=\"%s\"".formatted(term("BT-5")),
                                total("BT-110", vatSum()))
                        + element(
                                "ram:TaxTotalAmount currencyID=\"%s\"".formatted(term("BT-6")),
                                term("BT-111"))
                        + element("ram:RoundingAmount", term("BT-114"))
                        + element("ram:GrandTotalAmount", total("BT-112", gross))
                        + element("ram:TotalPrepaidAmount", term("BT-113"))
                        + element("ram:DuePayableAmount", total("BT-115", due(gross))));
    }

    private String ciiLine(Line line) {
        boolean back = line.net().signum() < 0;
        return in(
                "ram:IncludedSupplyChainTradeLineItem",
                in(
                                "ram:AssociatedDocumentLineDocument",
                                element("ram:LineID", Integer.toString(lines.indexOf(line) + 1)))
                        + in("ram:SpecifiedTradeProduct", element("ram:Name", line.name()))
                        + in(
                                "ram:SpecifiedLineTradeAgreement",
                                in(
                                        "ram:NetPriceProductTradePrice",
                                        element("ram:ChargeAmount", line.net().abs().toString())))
                        + in(
                                "ram:SpecifiedLineTradeDelivery",
                                element("ram:BilledQuantity unitCode=\"C62\"", back ? "-1" : "1"))
                        + in(
                                "ram:SpecifiedLineTradeSettlement",
                                ciiTax("ram:ApplicableTradeTax", line.category(), line.rate())
                                        + in(
                                                "ram:SpecifiedTradeSettlementLineMonetarySummation",
                                                element(
                                                        "ram:LineTotalAmount",
                                                        line.net().toString()))));
    }
}
