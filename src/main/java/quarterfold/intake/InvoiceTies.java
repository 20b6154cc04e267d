package quarterfold.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import quarterfold.money.Amount;
import quarterfold.money.Percent;
import quarterfold.money.Rounding;

/**
 * Holds the figures of an invoice against each other, by the rules of EN 16931-1 as its published
 * artefacts name them. All are exact but for BR-CO-17, where a supplier may round line by line: it
 * may differ by a penny for each line, while the artefacts let it differ by 1.00.
 */
final class InvoiceTies {

    /**
     * A rule that does not hold.
     *
     * @param rule such as {@code BR-CO-10}
     * @param what what is stated, and what it should be
     */
    record Broken(String rule, String what) {}

    private final Invoice invoice;
    private final List<Broken> broken = new ArrayList<>();

    private InvoiceTies(Invoice invoice) {
        this.invoice = invoice;
    }

    /** The rules that do not hold, in the order of the document's arithmetic. */
    static List<Broken> broken(Invoice invoice) {
        InvoiceTies ties = new InvoiceTies(invoice);
        ties.lines();
        ties.totals();
        invoice.breakdown().forEach(ties::vatLine);
        return List.copyOf(ties.broken);
    }

    private void lines() {
        Invoice.Totals totals = invoice.totals();
        if (hasLines()) {
            hold(
                    "BR-CO-10",
                    "the sum of the lines (BT-106)",
                    totals.lines(),
                    "the lines sum to",
                    sum(invoice.items().stream(), Invoice.Item::net));
        }
        hold(
                "BR-CO-11",
                "the sum of the allowances (BT-107)",
                orZero(totals.allowances()),
                "the allowances sum to",
                sum(adjustments(false), Invoice.Adjustment::amount));
        hold(
                "BR-CO-12",
                "the sum of the charges (BT-108)",
                orZero(totals.charges()),
                "the charges sum to",
                sum(adjustments(true), Invoice.Adjustment::amount));
    }

    private void totals() {
        Invoice.Totals totals = invoice.totals();
        hold(
                "BR-CO-13",
                "the total without VAT (BT-109)",
                totals.net(),
                "lines less allowances plus charges come to",
                totals.lines().minus(orZero(totals.allowances())).plus(orZero(totals.charges())));
        totals.vat()
                .ifPresent(
                        vat ->
                                hold(
                                        "BR-CO-14",
                                        "the total of VAT (BT-110)",
                                        vat,
                                        "the VAT breakdown sums to",
                                        sum(invoice.breakdown().stream(), Invoice.VatLine::vat)));
        hold(
                "BR-CO-15",
                "the total with VAT (BT-112)",
                totals.gross(),
                "net and VAT come to",
                totals.net().plus(orZero(totals.vat())));
        hold(
                "BR-CO-16",
                "the amount due (BT-115)",
                totals.due(),
                "the total less what was paid plus the rounding comes to",
                totals.gross().minus(orZero(totals.paid())).plus(orZero(totals.rounding())));
    }

    private void vatLine(Invoice.VatLine line) {
        Invoice.Tax tax = line.tax();
        if (hasLines()) {
            hold(
                    tax.category().rule("08"),
                    "the amount VAT is charged on in category %s (BT-116)".formatted(named(tax)),
                    line.net(),
                    "its lines less allowances plus charges come to",
                    taxable(tax));
        }
        if (!tax.category().isTaxed()) {
            hold(
                    tax.category().rule("09"),
                    "the VAT in category %s (BT-117)".formatted(named(tax)),
                    line.vat(),
                    "the category has a VAT of",
                    Amount.ZERO);
        } else if (tax.rate().filter(Percent::isZero).isPresent()) {
            broken.add(
                    new Broken(
                            tax.category().rule("05"),
                            "category %s states a rate of 0; the category has a rate above 0"
                                    .formatted(tax.category().code())));
        } else {
            rate(line);
        }
    }

    /** VAT against net and rate. */
    private void rate(Invoice.VatLine line) {
        Amount right =
                line.net().vatOnTop(line.tax().rate().orElse(Percent.ZERO), Rounding.NEAREST_PENNY);
        long lines =
                Math.max(
                        1,
                        invoice.items().stream()
                                .filter(i -> i.tax().isOneWith(line.tax()))
                                .count());
        Amount most = Amount.ofPennies(lines);
        if (line.vat().minus(right).abs().compareTo(most) > 0) {
            broken.add(
                    new Broken(
                            "BR-CO-17",
                            "the VAT in category %s (BT-117) is stated as %s; %s at %s%% is %s, and rounding each of %d %s moves it by %s at most"
                                    .formatted(
                                            named(line.tax()),
                                            line.vat(),
                                            line.net(),
                                            line.tax().rate().orElse(Percent.ZERO),
                                            right,
                                            lines,
                                            lines == 1 ? "line" : "lines",
                                            most)));
        }
    }

    private boolean hasLines() {
        return !invoice.items().isEmpty();
    }

    private Amount taxable(Invoice.Tax tax) {
        return sum(invoice.items().stream().filter(i -> i.tax().isOneWith(tax)), Invoice.Item::net)
                .plus(
                        sum(
                                adjustments(true).filter(a -> a.tax().isOneWith(tax)),
                                Invoice.Adjustment::amount))
                .minus(
                        sum(
                                adjustments(false).filter(a -> a.tax().isOneWith(tax)),
                                Invoice.Adjustment::amount));
    }

    private Stream<Invoice.Adjustment> adjustments(boolean charges) {
        return invoice.adjustments().stream().filter(a -> a.charge() == charges);
    }

    private static String named(Invoice.Tax tax) {
        return tax.category().code()
                + (tax.category().isTaxed() ? tax.rate().map(r -> " " + r + "%").orElse("") : "");
    }

    private void hold(String rule, String what, Amount stated, String other, Amount right) {
        if (!stated.equals(right)) {
            broken.add(
                    new Broken(
                            rule,
                            "%s is stated as %s; %s %s".formatted(what, stated, other, right)));
        }
    }

    private static Amount orZero(Optional<Amount> amount) {
        return amount.orElse(Amount.ZERO);
    }

    private static <T> Amount sum(Stream<T> of, Function<T, Amount> amount) {
        return of.map(amount).reduce(Amount.ZERO, Amount::plus);
    }
}
