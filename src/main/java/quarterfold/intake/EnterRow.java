package quarterfold.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quarterfold.intake.Layout.Signs;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.ChannelCollects;
import quarterfold.ledger.Line;
import quarterfold.ledger.Profile;
import quarterfold.money.Amount;

/** Makes the entries of a row that one rule of a layout fits. For one thread. */
final class EnterRow {
    private final Layout layout;
    private final Layout.Rule rule;
    private final Signs signs;
    private final List<EntryCells> entries;
    private final TaxCells tax;
    private final MoneyCells money;
    private final LineMaker lines;
    private final Optional<AgainstKind.Heap> heap;
    private final List<Optional<AgainstKind.Heap>> besides;
    private final int[] counted;
    private final int[] directions;
    private final boolean[] used;
    private final List<EntryCells> there = new ArrayList<>();
    private final List<Optional<AgainstKind.Heap>> thereBeside = new ArrayList<>();
    private final List<Line> made = new ArrayList<>();

    EnterRow(
            Layout layout,
            Layout.Rule rule,
            List<EntryCells> entries,
            TaxCells tax,
            MoneyCells money,
            LineMaker lines,
            AgainstKind against) {
        this.layout = layout;
        this.rule = rule;
        this.entries = entries;
        this.tax = tax;
        this.money = money;
        this.lines = lines;
        heap = against.heap(layout, rule);
        besides = rule.enter().stream().map(e -> against.beside(layout, rule, e)).toList();
        signs = rule.signs(layout);
        counted = layout.amounts().stream().mapToInt(money::index).toArray();
        directions = new int[counted.length];
        used = new boolean[counted.length];
        for (int i = 0; i < counted.length; i++) {
            int index = counted[i];
            used[i] =
                    tax.uses(index)
                            || entries.stream().anyMatch(e -> e.uses(index))
                            || (signs == Signs.DOCUMENT && entries.size() == 1);
            directions[i] = signs.owners(direction(index));
        }
    }

    /** With document signs the kind of a column's entry says which way its money goes. */
    private int direction(int index) {
        return entries.size() == 1
                ? entries.get(0).kind().direction()
                : entries.stream()
                        .filter(e -> e.uses(index))
                        .findFirst()
                        .map(e -> e.kind().direction())
                        .orElse(0);
    }

    /** Gives the row's lines; returns its money as the counted cells state it. */
    long read(Row row, RowReader.Output output) {
        long in = moneyIn(row);
        there.clear();
        thereBeside.clear();
        for (int i = 0; i < entries.size(); i++) {
            if (entries.get(i).isThere(money)) {
                there.add(entries.get(i));
                thereBeside.add(besides.get(i));
            }
        }
        if (there.isEmpty() && !row.isBad()) {
            setAside(row, output);
            return 0;
        }
        boolean dated = lines.start(row);
        made.clear();
        make(row, dated);
        if (!row.isBad()) {
            emit(row, in, output);
        }
        return in;
    }

    private long moneyIn(Row row) {
        long in = 0;
        for (int i = 0; i < counted.length; i++) {
            long value = money.value(counted[i]);
            in += value * directions[i];
            if (value != 0 && !used[i]) {
                row.wrong(
                        money.column(counted[i]),
                        "no amount in this column on a row read by line %d of layout %s, such as 0.00; else give the rule an entry for it"
                                .formatted(rule.line(), layout.name()));
            }
        }
        return in;
    }

    private void setAside(Row row, RowReader.Output output) {
        for (int index : counted) {
            if (money.value(index) != 0) {
                row.wrong(
                        money.column(index),
                        "an amount that makes an entry beside it, such as a price");
            }
        }
        output.setAside(row.number(), "no amount");
    }

    private void make(Row row, boolean dated) {
        ChannelCollects collects = tax.collects(money);
        boolean own = tax.isOwn(money);
        Optional<long[]> shares = own ? tax.shares(row, money, there) : Optional.empty();
        for (int i = 0; i < there.size(); i++) {
            EntryCells entry = there.get(i);
            boolean taxed = entry.isSale() && shares.isPresent();
            Amounts amounts =
                    taxed ? tax.taxed(entry, money, shares.get()[i]) : entry.amounts(money, signs);
            AmountsCheck.check(row, entry.grossName(money), amounts);
            Optional<Profile> profile = entry.profile(row, collects);
            if (dated && profile.isPresent()) {
                String original = entry.original(row, money);
                if (taxed) {
                    original += (original.isEmpty() ? "" : "; ") + tax.original(row, money);
                }
                made.add(lines.line(row, entry.cells(), profile.get(), amounts, original));
            }
        }
        if (dated && collects == ChannelCollects.UNCLEAR) {
            tax.rest(row, money, lines).ifPresent(made::add);
        }
    }

    private void emit(Row row, long in, RowReader.Output output) {
        long entered = 0;
        for (Line line : made) {
            entered += line.signedMoney().tenThousandths();
        }
        if (entered != in) {
            row.fault(
                    String.join(", ", layout.amounts()),
                    "found %s in the columns that count; expected the %s its entries add up to; name in amounts of layout %s just the columns its rules enter"
                            .formatted(new Amount(in), new Amount(entered), layout.name()));
            return;
        }
        for (int i = 0; i < made.size(); i++) {
            Line line = made.get(i);
            if (heap.isPresent()) {
                AgainstKind.add(heap.get(), row.number(), line);
            }
            if (i < thereBeside.size() && thereBeside.get(i).isPresent()) {
                AgainstKind.add(thereBeside.get(i).get(), row.number(), line);
            }
            output.line(line);
        }
    }
}
