package quarterfold.treatment;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import quarterfold.law.Law;
import quarterfold.law.TimeRule;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Profile;
import quarterfold.ledger.Schemes;

/**
 * Says on which days an entry does something to a return. {@code timing.csv} says which treatments
 * are under which rule.
 *
 * <p>A purchase whose document is held only later is reclaimed when it is held: VAT Regulations
 * 1995 reg 29(1) as amended by SI 2009/586 reg 3. For import VAT paid the document is the import
 * VAT certificate.
 */
public final class Timing {

    private final Context context;
    private final Law law;
    private final Payments payments;
    private final TaxPoints taxPoints;
    private final CashBasis cash;
    private final ExportEvidence exports;
    private final Unpaid unpaid;
    private final Exchange exchange;
    private final Rulings rulings;
    private final BeforeRegistration before;

    public Timing(Context context) {
        this.context = context;
        this.law = context.law();
        this.payments = context.ties().payments();
        this.taxPoints = new TaxPoints(law);
        this.cash = new CashBasis(law, context.settings());
        this.exports = new ExportEvidence(law);
        this.unpaid = new Unpaid(law);
        this.exchange = Exchange.of(context);
        this.rulings = new Rulings(context, exchange);
        this.before = new BeforeRegistration(context.settings(), context.answers());
    }

    /** The occasions of an entry, in the order of their days; at least one, but under a scheme. */
    public List<Occasion> of(Entry entry) {
        if (before.isClaimOf(entry)) {
            return List.of(before.occasion(entry));
        }
        if (entry.line().particulars().isEmpty()
                && !cash.isEver()
                && !mayBeAwaited(entry.profile())
                && context.answers().about(entry).isEmpty()) {
            return List.of(Occasion.of(entry));
        }
        Answered answered = Answered.of(entry, context.answers());
        Entry known = answered.entry();
        Paid paid = payments.of(known);
        List<TaxPoint> points = taxPoints.of(known, paid);
        LocalDate supplied = points.get(points.size() - 1).day();
        Entry asSupplied = exports.asSupplied(known.at(supplied));
        String treatment = treatment(asSupplied, supplied, answered);
        List<Counted> counted = new ArrayList<>();
        for (TaxPoint point : points) {
            counted.addAll(counted(known, point, paid, treatment));
        }
        counted.addAll(after(known, treatment, counted, paid));
        return once(counted).stream()
                .sorted(Comparator.comparing(Counted::day))
                .map(c -> new Occasion(entry, c.day(), c.taxPoint(), c.cause(), c.share()))
                .toList();
    }

    /** For each cause one on a day: parts that follow one another count as one. */
    private static List<Counted> once(List<Counted> counted) {
        List<Counted> once = new ArrayList<>();
        for (Counted next : counted) {
            int at = 0;
            while (at < once.size() && !once.get(at).isLike(next)) {
                at++;
            }
            if (at < once.size()) {
                once.set(at, once.get(at).joined(next));
            } else {
                once.add(next);
            }
        }
        return once;
    }

    private String treatment(Entry stated, LocalDate supplied, Answered answered) {
        Exchange.Exchanged exchanged = exchange.of(stated);
        Entry entry = exchanged.entry();
        Occasion supply = new Occasion(entry, supplied, Cause.SUPPLY, Share.WHOLE);
        Portion first = rulings.portions(entry).get(0);
        return rulings.of(
                        entry,
                        first,
                        rulings.rare(entry, supply, answered),
                        answered,
                        rulings.weigh(exchanged, answered, first.liability()))
                .row()
                .treatment();
    }

    private List<Counted> counted(Entry entry, TaxPoint point, Paid paid, String treatment) {
        List<Counted> counted =
                isWhenPaid(entry, point.day(), treatment)
                        ? cash.count(entry, point, paid)
                        : List.of(
                                new Counted(point.day(), point.day(), Cause.SUPPLY, point.share()));
        Optional<LocalDate> held =
                entry.kind().side() == Kind.Side.PURCHASES || entry.kind() == Kind.IMPORT_VAT_PAID
                        ? entry.line().particulars().day(Particular.HELD)
                        : Optional.empty();
        return held.isEmpty() ? counted : counted.stream().map(c -> held(c, held.get())).toList();
    }

    private boolean isWhenPaid(Entry entry, LocalDate taxPoint, String treatment) {
        return cash.isEver()
                && law.isUnder(TimeRule.CASH_ACCOUNTING, treatment, taxPoint)
                && cash.covers(entry, taxPoint);
    }

    private static Counted held(Counted counted, LocalDate held) {
        return counted.cause() == Cause.SUPPLY && held.isAfter(counted.day())
                ? new Counted(held, counted.taxPoint(), counted.cause(), counted.share())
                : counted;
    }

    /** What happens of the entry after its supply. */
    private List<Counted> after(Entry entry, String treatment, List<Counted> counted, Paid paid) {
        Counted last = counted.get(counted.size() - 1);
        LocalDate supplied = last.taxPoint();
        if (law.isUnder(TimeRule.EXPORT_EVIDENCE, treatment, supplied)) {
            return exported(entry, supplied, counted);
        }
        Optional<LocalDate> due = entry.line().particulars().day(Particular.DUE);
        if (due.isEmpty()
                || isWhenPaid(entry, supplied, treatment)
                || context.settings().schemeOn(supplied).equals(Schemes.FLAT_RATE)) {
            return List.of();
        }
        if (law.isUnder(TimeRule.SUPPLIER_UNPAID, treatment, supplied) && !reduces(entry.kind())) {
            return unpaid.after("supplier-unpaid", last, due.get(), paid);
        }
        return entry.kind() == Kind.SALE
                        && law.isUnder(TimeRule.BAD_DEBT, treatment, supplied)
                        && !payments.isRelieved(entry)
                ? unpaid.after("bad-debt-wait", last, due.get(), paid).stream()
                        .filter(c -> c.cause() == Cause.UNPAID)
                        .toList()
                : List.of();
    }

    private List<Counted> exported(Entry entry, LocalDate supplied, List<Counted> counted) {
        if (!followsASale(entry.kind())) {
            return exports.after(
                    counted, supplied, entry.line().particulars().day(Particular.EVIDENCED));
        }
        return context.ties()
                .exportSales()
                .of(entry)
                .map(sale -> exports.after(counted, sale.taxPoint(), sale.evidenced()))
                .orElse(List.of());
    }

    /** The first day of supply whose time for evidence can run out on the day or later. */
    public LocalDate earliestExport(LocalDate day) {
        return exports.earliestFor(day);
    }

    /** Whether entries of the profile, dated months before a period, may do something in it. */
    public boolean mayReachFromMonthsBefore(Profile profile) {
        return mayBeAwaited(profile) && !followsASale(profile.kind());
    }

    /** The same of entries dated at any time before. */
    public boolean mayReachFromAnyTime(Profile profile) {
        return mayBeAwaited(profile) && followsASale(profile.kind());
    }

    private boolean mayBeAwaited(Profile profile) {
        return exports.mayBeAwaited(profile)
                && (!followsASale(profile.kind()) || context.ties().exportSales().any());
    }

    /** Whether what happens of an entry goes by the days of the sale it changes. */
    private static boolean followsASale(Kind kind) {
        return kind != Kind.SALE && kind != Kind.DELIVERY;
    }

    private static boolean reduces(Kind kind) {
        return switch (kind) {
            case SALE_REFUND,
                            DELIVERY_REFUND,
                            DISCOUNT,
                            PURCHASE_CREDIT,
                            EXPENSE_CREDIT,
                            FEE_REFUND ->
                    true;
            default -> false;
        };
    }

    /** Whether a payment row names the party of a profile, whose documents count when paid. */
    public boolean mayBePaidByRows(Profile profile) {
        return payments.names(profile.party());
    }

    /** Whether the book was ever on a scheme that counts what is paid. */
    public boolean countsPayments() {
        return cash.isEver();
    }

    /** The days on which what is unpaid of that scheme falls due, rising. */
    public List<LocalDate> reckonings() {
        return cash.reckonings();
    }
}
