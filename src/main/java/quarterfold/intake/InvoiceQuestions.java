package quarterfold.intake;

import java.util.ArrayList;
import java.util.List;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.RaisedQuery;
import quarterfold.money.Amount;

/** What a person must be asked about an invoice before its figures are safe. */
final class InvoiceQuestions {
    static final String DOES_NOT_TIE = RaisedQuery.DOCUMENT_DOES_NOT_TIE;
    static final String NOT_WHOLE = RaisedQuery.DOCUMENT_NOT_WHOLE;
    static final String OF_OTHERS = RaisedQuery.DOCUMENT_OF_OTHERS;
    static final String NOT_VAT = "document-tax-not-vat";
    static final String PAGES_DIFFER = RaisedQuery.DOCUMENT_PAGES_DIFFER;
    static final String GOODS_OR_SERVICE = RaisedQuery.GOODS_OR_SERVICE;
    static final String BELOW_NOTHING = RaisedQuery.CREDIT_BELOW_NOTHING;

    private record Question(String code, String about, String text) {}

    private final Invoice invoice;
    private final InvoiceSide side;
    private final InvoicePages pages;
    private final List<InvoiceTies.Broken> broken;

    InvoiceQuestions(Invoice invoice, InvoiceSide side, InvoicePages pages) {
        this.pages = pages;
        this.invoice = invoice;
        this.side = side;
        this.broken = InvoiceTies.broken(invoice);
    }

    /**
     * What the document is as evidence. One whose figures do not tie, whose pages show another
     * total, or that does not show what a VAT invoice must, is none until a person has seen it; nor
     * is a credit note of less than nothing, which adds to a claim. A credit takes from a claim, so
     * it counts as it stands.
     */
    Evidence evidence() {
        if (isBelowNothing()
                || (adds() && (!broken.isEmpty() || !isWhole() || !pages.showTotal(invoice)))) {
            return Evidence.UNSTATED;
        }
        return invoice.type().isSelfBilled() ? Evidence.SELF_BILLED : Evidence.INVOICE;
    }

    private boolean adds() {
        return isBelowNothing()
                || (!invoice.type().credit() && invoice.totals().gross().signum() >= 0);
    }

    private boolean isBelowNothing() {
        return invoice.type().credit() && invoice.totals().gross().signum() < 0;
    }

    private boolean isWhole() {
        return !invoice.items().isEmpty() && !invoice.type().isForAccountingAlone();
    }

    void raise(Payouts.Raise raise) {
        for (Question question : all()) {
            raise.query(question.code(), question.about(), question.text());
        }
    }

    private List<Question> all() {
        List<Question> all = new ArrayList<>();
        for (InvoiceTies.Broken rule : broken) {
            all.add(
                    new Question(
                            DOES_NOT_TIE,
                            invoice.number() + " " + rule.rule(),
                            "%s breaks rule %s of EN 16931: %s. %s Which figure is right? Ask %s."
                                    .formatted(
                                            document(),
                                            rule.rule(),
                                            rule.what(),
                                            counted(),
                                            maker())));
        }
        String lacking = pages.lacking(invoice);
        if (!lacking.isEmpty()) {
            all.add(
                    new Question(
                            PAGES_DIFFER,
                            invoice.number(),
                            "%s is read from %s in the PDF, but its pages, which a person reads, %s. The content of an invoice must be as it was issued (VAT Regulations 1995 reg 13(7)). %s Which is right? Ask %s."
                                    .formatted(
                                            document(),
                                            Problem.quoted(pages.file()),
                                            lacking,
                                            counted(),
                                            maker())));
        }
        if (side == InvoiceSide.NEITHER) {
            all.add(
                    new Question(
                            OF_OTHERS,
                            invoice.number(),
                            "%s is made out to %s, and neither is this business by VAT number or, where none is stated, by name. It is entered as a purchase made out to somebody else, whose VAT is not reclaimed. Whose is it? That it was seen does not answer that: if it is this business's all the same, such as under a name it trades in, decide --state addressed=business for each of its entries; if it is not, decide --disallow for them."
                                    .formatted(document(), who(invoice.buyer()))));
        }
        if (side != InvoiceSide.SELLER) {
            asBuyer(all);
        }
        invoice.breakdown().stream()
                .filter(line -> line.tax().category().isOfAnIsland())
                .findFirst()
                .ifPresent(
                        line ->
                                all.add(
                                        new Question(
                                                NOT_VAT,
                                                invoice.number(),
                                                "%s charges %s of the tax of %s (category %s), which is no VAT. Is it a cost without VAT?"
                                                        .formatted(
                                                                document(),
                                                                line.vat(),
                                                                line.tax().category()
                                                                                == VatCategory
                                                                                        .CANARY_ISLANDS
                                                                        ? "the Canary Islands"
                                                                        : "Ceuta and Melilla",
                                                                line.tax().category().code()))));
        return all;
    }

    private void asBuyer(List<Question> all) {
        if (isBelowNothing()) {
            all.add(
                    new Question(
                            BELOW_NOTHING,
                            invoice.number(),
                            "%s is a credit note of less than nothing, so it would add to the claim. %s Does it charge %s? If it takes that back, enter it as a purchase-credit with positive amounts, and decide duplicate-of that entry for each of these."
                                    .formatted(document(), counted(), money().negated())));
        }
        if (!isWhole()) {
            all.add(
                    new Question(
                            NOT_WHOLE,
                            invoice.number(),
                            "%s %s. It is no VAT invoice by itself: what was supplied, how much, and each price and rate are not shown (VAT Regulations 1995 reg 14(1)). %s Is the document itself held?"
                                    .formatted(
                                            document(),
                                            invoice.items().isEmpty()
                                                    ? "has no lines" + profile()
                                                    : "is information for accounting (type %s)"
                                                            .formatted(invoice.type().code()),
                                            counted())));
        }
        if (!InvoiceLines.isHome(invoice.seller())) {
            invoice.breakdown().stream()
                    .filter(
                            line ->
                                    line.tax().category() == VatCategory.ZERO
                                            || line.tax().category() == VatCategory.EXEMPT)
                    .findFirst()
                    .ifPresent(
                            line ->
                                    all.add(
                                            new Question(
                                                    GOODS_OR_SERVICE,
                                                    invoice.number(),
                                                    "%s comes from %s and charges %s in category %s, which is zero-rated or exempt there. It is entered as a service from abroad, so the reverse charge applies. Was it goods, or is it exempt here too? For goods enter it as a purchase, and decide --duplicate-of that entry for each of these; if it is exempt here too, decide --treat-as no-vat-purchase for each of its entries; if it is a service that is taxed here, set this query aside."
                                                            .formatted(
                                                                    document(),
                                                                    invoice.seller().country(),
                                                                    line.net(),
                                                                    line.tax()
                                                                            .category()
                                                                            .code()))));
        }
    }

    /** What became of its VAT meanwhile. */
    private String counted() {
        if (side == InvoiceSide.SELLER) {
            return "Its VAT is entered as the VAT breakdown states it.";
        }
        if (evidence() == Evidence.UNSTATED) {
            return "Its VAT is not reclaimed until a person says that the document was seen.";
        }
        return adds()
                ? "Its VAT is reclaimed as the VAT breakdown states it."
                : "It takes from the claim as the VAT breakdown states it.";
    }

    private String maker() {
        return side == InvoiceSide.SELLER ? "who made it out" : "the supplier";
    }

    private String document() {
        return "%s %s of %s, %s %s,"
                .formatted(
                        invoice.type().credit() ? "credit note" : "invoice",
                        invoice.number(),
                        who(invoice.seller()),
                        invoice.currency(),
                        money());
    }

    private Amount money() {
        return invoice.totals().gross();
    }

    private String profile() {
        return invoice.profile().isEmpty()
                ? ""
                : " (profile %s)".formatted(Problem.quoted(invoice.profile()));
    }

    private static String who(Invoice.Party party) {
        return party.vat().isEmpty()
                ? party.name()
                : "%s (%s)".formatted(party.name(), party.vat());
    }
}
