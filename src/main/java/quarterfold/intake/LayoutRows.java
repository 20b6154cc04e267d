package quarterfold.intake;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import quarterfold.ledger.Profile;
import quarterfold.money.Amount;

/** Reads the rows of a report by its layout, made ready for one header. For one thread. */
final class LayoutRows implements RowReader {
    private final Layout layout;
    private final Payouts payouts;
    private final RuleFinder rules;
    private final MoneyCells money;
    private final LineMaker lines;
    private final List<EnterRow> enterings = new ArrayList<>();
    private final List<Identity> identities = new ArrayList<>();
    private final int[] counted;
    private final int payout;
    private final ProfileReader payoutProfiles;
    private final OtherRows others;
    private final Optional<RunningBalance> balance;
    private final Asked asked;
    private final ExpectedCells expected;
    private final Footers footers;

    LayoutRows(Layout layout, Form.Terms terms) {
        this(layout, terms, new FileTotals());
    }

    /** {@code totals}: of the whole file, of which these are the rows of one shape. */
    LayoutRows(Layout layout, Form.Terms terms, FileTotals totals) {
        this.layout = layout;
        this.payouts = terms.payouts();
        Header header = terms.header();
        FieldCells cells = FieldCells.of(header, layout.fields(), layout.constants());
        String currency = layout.currency().orElse(terms.book().currency());
        rules = new RuleFinder(layout.rules(), header);
        Set<String> amounts = amountColumns();
        money = new MoneyCells(header, amounts, layout);
        counted = layout.amounts().stream().mapToInt(money::index).toArray();
        payout = layout.payoutColumn().map(money::index).orElse(-1);
        payoutProfiles = new ProfileReader(cells, currency);
        DateReader dates = new DateReader(layout.dates(), terms.zone(), terms.nativeDates());
        footers = new Footers(layout, header, money, amounts, dates);
        lines = new LineMaker(cells, dates, new Notes(header, layout.named()));
        asked = terms.asked();
        expected = new ExpectedCells(layout, header);
        others = new OtherRows(layout, header, money, totals);
        balance = layout.balance().map(b -> new RunningBalance(b, counted, money));
        layout.checks().forEach(check -> identities.add(new Identity(check, money)));
        for (Layout.Rule rule : layout.rules()) {
            List<EntryCells> entries =
                    rule.enter().stream()
                            .map(e -> new EntryCells(e, cells, currency, money))
                            .toList();
            enterings.add(
                    new EnterRow(
                            layout,
                            rule,
                            entries,
                            new TaxCells(layout, cells, currency, money),
                            money,
                            lines,
                            asked.against()));
        }
    }

    private Set<String> amountColumns() {
        Set<String> columns = new LinkedHashSet<>(layout.amounts());
        for (Layout.Rule rule : layout.rules()) {
            rule.enter().forEach(enter -> columns.addAll(enter.amounts().values()));
        }
        layout.tax().ifPresent(tax -> columns.add(tax.column()));
        layout.tax().flatMap(Layout.Tax::withheld).ifPresent(columns::add);
        layout.checks().forEach(check -> columns.addAll(check.sum()));
        layout.checks().forEach(check -> columns.add(check.equals()));
        layout.payoutColumn().ifPresent(columns::add);
        layout.balance().ifPresent(b -> columns.add(b.column()));
        layout.otherRows().forEach(other -> columns.addAll(other.sums()));
        return columns;
    }

    @Override
    public long read(Row row, Output output) {
        if (others.take(row, output) || footers.take(row, output)) {
            return 0;
        }
        if (!row.isWhole()) {
            spoil();
            return 0;
        }
        int rule = rules.find(row);
        if (rule < 0) {
            row.fault(
                    rules.columns(),
                    "found %s; expected a row that a rule of layout %s fits, such as '%s'; give the layout a rule for it, or set it aside"
                            .formatted(
                                    Problem.quoted(rules.texts(row)),
                                    layout.name(),
                                    rules.example()));
        }
        if (!money.read(row) || rule < 0) {
            spoil();
            return 0;
        }
        others.add();
        footers.add();
        expected.check(row);
        balance.ifPresent(b -> b.check(row, money));
        for (Identity identity : identities) {
            identity.check(row, money);
        }
        if (money.isStated(payout)) {
            statePayout(row);
        }
        String reason = layout.rules().get(rule).setAside();
        if (!reason.isEmpty()) {
            setAside(row, reason, output);
            return 0;
        }
        Layout.Rule fitting = layout.rules().get(rule);
        if (fitting.ask().isEmpty()) {
            return enterings.get(rule).read(row, output);
        }
        Asked.kind(fitting)
                .ifPresent(
                        kind ->
                                output.asked(
                                        new Ask(row.number(), Asked.about(fitting.when()), kind)));
        long in = enterings.get(rule).read(row, output);
        asked.add(fitting, in);
        return in;
    }

    /** Whether the row is none of the shape's table; it is then set aside. */
    boolean take(Row row, Output output) {
        return others.take(row, output);
    }

    /** How many rows of the shape's table were read. */
    long rows() {
        return others.rows();
    }

    /** What sums up rows cannot be held against a row that could not be read. */
    private void spoil() {
        others.spoil();
        footers.spoil();
        balance.ifPresent(RunningBalance::spoil);
    }

    private void setAside(Row row, String reason, Output output) {
        for (int index : counted) {
            if (money.value(index) != 0) {
                row.wrong(
                        money.column(index),
                        "no money on a row that layout %s sets aside as %s, such as 0.00"
                                .formatted(layout.name(), Problem.quoted(reason)));
            }
        }
        output.setAside(row.number(), reason);
    }

    private void statePayout(Row row) {
        Amount stated = money.amount(payout);
        if (money.column(payout) >= Header.ABOVE) {
            payouts.stateWhole(stated);
            return;
        }
        Optional<Profile> profile = payoutProfiles.read(row);
        Optional<Amount> earlier = profile.flatMap(p -> payouts.state(p, stated));
        earlier.ifPresent(
                e ->
                        row.wrong(
                                money.column(payout),
                                "the payout that earlier rows of settlement %s state, %s"
                                        .formatted(profile.orElseThrow().settlement(), e)));
    }
}
