package quarterfold.intake;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.ChannelCollects;
import quarterfold.ledger.Customer;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Item;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Line;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Particulars;
import quarterfold.ledger.Profile;
import quarterfold.ledger.StatedRate;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/** Makes the lines of an invoice: one for each line of its VAT breakdown. */
final class InvoiceLines {

    /** As goods and VAT numbers name it; the codes of countries have it in GB. */
    private static final String NORTHERN_IRELAND = "XI";

    /** The countries whose VAT is that of the return: areas.csv of the United Kingdom's tables. */
    private static final Set<String> HOME = Set.of("GB", "IM", NORTHERN_IRELAND);

    private final Invoice invoice;
    private final InvoiceSide side;
    private final Evidence evidence;
    private final List<Optional<Amount>> sterlingVat;

    /**
     * @param evidence what the document is, where the business bought
     * @param home the book's currency
     */
    InvoiceLines(Invoice invoice, InvoiceSide side, Evidence evidence, String home) {
        this.invoice = invoice;
        this.side = side;
        this.evidence = evidence;
        this.sterlingVat = SterlingVat.of(invoice, home);
    }

    /** Whether a supplier is taxed here: by its country, or by a VAT number of here. */
    static boolean isHome(Invoice.Party party) {
        String vat = party.vat().strip().toUpperCase(Locale.ROOT);
        return HOME.contains(party.country()) || vat.startsWith("GB") || vat.startsWith("XI");
    }

    /** The line of a line of the breakdown, counted from 1. */
    Line line(int row) {
        Invoice.VatLine vatLine = invoice.breakdown().get(row - 1);
        LocalDate day = day();
        Particulars particulars = particulars(day);
        Optional<Amount> sterling = sterlingVat.get(row - 1);
        if (sterling.isPresent()) {
            particulars = particulars.with(Particular.STERLING_VAT, sterling.get().toString());
        }
        return new Line(
                row,
                day,
                profile(vatLine.tax()),
                new Item("", description(vatLine.tax())),
                invoice.number(),
                "",
                new Amounts(
                        Optional.of(vatLine.net()), Optional.of(vatLine.vat()), Optional.empty()),
                Optional.empty(),
                particulars,
                "",
                notes(vatLine));
    }

    /**
     * The tax point where it is stated; else the day of delivery, or that of issue, from which the
     * rule about tax points goes on.
     */
    private LocalDate day() {
        Invoice.Days days = invoice.days();
        return days.taxPoint().or(days::delivered).orElse(days.issued());
    }

    /**
     * A stated tax point stands: the days that would make another are left to the notes. A document
     * on which nothing is left to pay, and a credit, have no day payment is due.
     */
    private Particulars particulars(LocalDate day) {
        Invoice.Days days = invoice.days();
        Particulars stated = Particulars.NONE;
        if (days.taxPoint().isEmpty()) {
            if (days.delivered().isPresent()) {
                stated = stated.with(Particular.SENT, days.delivered().get().toString());
            }
            stated = stated.with(Particular.INVOICED, days.issued().toString());
        } else if (days.issued().equals(day)) {
            stated = stated.with(Particular.INVOICED, day.toString());
        }
        boolean owed = !invoice.type().credit() && invoice.totals().due().signum() > 0;
        if (days.due().isPresent() && owed) {
            stated = stated.with(Particular.DUE, days.due().get().toString());
        }
        if (side != InvoiceSide.SELLER) {
            stated =
                    stated.with(
                            Particular.ADDRESSED, side == InvoiceSide.BUYER ? "business" : "other");
            return Advanced.state(invoice, stated);
        }
        return Advanced.credited(invoice, stated);
    }

    private Profile profile(Invoice.Tax tax) {
        return side == InvoiceSide.SELLER ? sale(tax) : purchase(tax);
    }

    private Profile sale(Invoice.Tax tax) {
        Invoice.Party buyer = invoice.buyer();
        return new Profile(
                invoice.type().credit() ? Kind.SALE_REFUND : Kind.SALE,
                invoice.currency(),
                saleRate(tax),
                buyer.name(),
                country(buyer),
                "",
                "",
                "",
                goesTo(tax),
                buyer.vat().isEmpty() ? Customer.CONSUMER : Customer.BUSINESS,
                buyer.vat(),
                "",
                ChannelCollects.NO,
                "",
                Evidence.UNSTATED,
                Percent.HUNDRED);
    }

    private Profile purchase(Invoice.Tax tax) {
        Invoice.Party seller = invoice.seller();
        boolean credit = invoice.type().credit();
        boolean service = !isHome(seller) && isService(tax.category());
        return new Profile(
                service
                        ? (credit ? Kind.EXPENSE_CREDIT : Kind.EXPENSE)
                        : (credit ? Kind.PURCHASE_CREDIT : Kind.PURCHASE),
                invoice.currency(),
                isHome(seller) ? homeRate(tax, StatedRate.REVERSE_CHARGE) : StatedRate.NONE,
                seller.name(),
                country(seller),
                seller.vat().isEmpty() ? invoice.representativeVat() : seller.vat(),
                "",
                "",
                service || HOME.contains(invoice.deliveredTo()) ? "" : invoice.deliveredTo(),
                Customer.CONSUMER,
                "",
                "",
                ChannelCollects.NO,
                "",
                evidence,
                Percent.HUNDRED);
    }

    /**
     * Whether what a supplier abroad charges under the category is taken for a service: goods that
     * cross a border have categories of their own.
     */
    static boolean isService(VatCategory category) {
        return switch (category) {
            case REVERSE_CHARGE, OUTSIDE, ZERO, EXEMPT -> true;
            case TAXED, INTRA_COMMUNITY, EXPORT, CANARY_ISLANDS, CEUTA_AND_MELILLA -> false;
        };
    }

    /** The zero rate of goods that leave hangs on where they go and on evidence, not on words. */
    private StatedRate saleRate(Invoice.Tax tax) {
        return tax.category() == VatCategory.INTRA_COMMUNITY || tax.category() == VatCategory.EXPORT
                ? StatedRate.NONE
                : homeRate(
                        tax,
                        isHome(invoice.buyer()) ? StatedRate.REVERSE_CHARGE : StatedRate.OUTSIDE);
    }

    /** The rate as a document under the law of here states it. */
    private static StatedRate homeRate(Invoice.Tax tax, StatedRate reverseCharge) {
        return switch (tax.category()) {
            case TAXED -> tax.rate().map(r -> new StatedRate(r.toString())).orElse(StatedRate.NONE);
            case ZERO, INTRA_COMMUNITY, EXPORT -> new StatedRate(Percent.ZERO.toString());
            case EXEMPT -> StatedRate.EXEMPT;
            case REVERSE_CHARGE -> reverseCharge;
            case OUTSIDE -> StatedRate.OUTSIDE;
            case CANARY_ISLANDS, CEUTA_AND_MELILLA -> StatedRate.NONE;
        };
    }

    /** Where sold goods go, where that is abroad. */
    private String goesTo(Invoice.Tax tax) {
        boolean leaves =
                tax.category() == VatCategory.INTRA_COMMUNITY
                        || tax.category() == VatCategory.EXPORT;
        String to =
                invoice.deliveredTo().isEmpty() && leaves
                        ? invoice.buyer().country()
                        : invoice.deliveredTo();
        return HOME.contains(to) ? "" : to;
    }

    private static String country(Invoice.Party party) {
        boolean north =
                party.country().equals("GB")
                        && party.vat().toUpperCase(Locale.ROOT).startsWith(NORTHERN_IRELAND);
        return north ? NORTHERN_IRELAND : party.country();
    }

    /** What was supplied at the rate, as far as it is short enough to read. */
    private String description(Invoice.Tax tax) {
        return InvoiceNotes.cut(
                invoice.items().stream()
                        .filter(i -> i.tax().isOneWith(tax) && !i.name().isEmpty())
                        .map(Invoice.Item::name)
                        .distinct()
                        .collect(Collectors.joining("; ")));
    }

    private String notes(Invoice.VatLine line) {
        List<String> notes = new ArrayList<>(invoice.notes());
        Invoice.Tax tax = line.tax();
        int leftOut = Advanced.leftOut(invoice, side == InvoiceSide.SELLER);
        if (leftOut > 0) {
            InvoiceNotes.add(
                    notes,
                    "preceding invoices that follows has no room for",
                    String.valueOf(leftOut));
        }
        InvoiceNotes.add(notes, "type", invoice.type().code());
        InvoiceNotes.add(
                notes,
                "VAT category",
                tax.category().code(),
                tax.rate().map(r -> r + "%").orElse(""),
                line.reason());
        Invoice.Days days = invoice.days();
        if (days.taxPoint().isPresent()) {
            InvoiceNotes.add(notes, "issued", days.issued().toString());
            days.delivered().ifPresent(d -> InvoiceNotes.add(notes, "delivered", d.toString()));
        }
        invoice.accountingVat()
                .ifPresent(
                        vat ->
                                InvoiceNotes.add(
                                        notes,
                                        "total of VAT in " + vat.currency(),
                                        vat.amount().toString()));
        return String.join("; ", notes);
    }
}
