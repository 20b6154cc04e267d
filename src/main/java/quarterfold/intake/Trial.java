package quarterfold.intake;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import quarterfold.ledger.Line;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;

/**
 * A reading of a whole file with a layout, just as an import would, that enters nothing.
 *
 * @param entries how many lines it would make
 * @param setAside rows that make none
 * @param money what the lines come to, positive where it comes to the business, by currency
 * @param problems what an import would refuse it for
 * @param raised questions an import would raise about payouts
 * @param tied payouts that tie
 */
record Trial(
        long rows,
        long entries,
        long setAside,
        Map<String, Amount> money,
        Problems problems,
        List<String> raised,
        Payouts.Tied tied) {

    /** Reads the file; {@code lines} is given each line. */
    static Trial run(
            Tables tables,
            String name,
            Layout layout,
            String table,
            Settings book,
            Consumer<Line> lines)
            throws BadFile, IOException {
        Problems problems = new Problems();
        Payouts payouts = new Payouts();
        Asked asked = new Asked();
        Header header = header(tables, layout, table);
        Recognition.Found found = new Recognition.Found(layout, table, header);
        for (String column : layout.columns()) {
            if (!header.has(column) && !isBeside(layout, column)) {
                problems.add(new Problem(name, column, "found no such column"));
            }
        }
        var reader = Recognition.reader(tables, name, found, book, payouts, asked, problems);
        Count count = new Count(lines, payouts);
        if (reader.isPresent()) {
            try (Rows rows = AboveRows.of(tables, table, layout)) {
                Tables.header(rows, layout.shape().headerRow());
                Row row = new Row(rows, header, layout.shape().blanks(), problems);
                while (row.next()) {
                    count.rows++;
                    count.stated = Math.addExact(count.stated, reader.get().read(row, count));
                }
            }
            if (problems.none() && count.stated != count.money) {
                problems.add(
                        new Problem(
                                name,
                                "",
                                "found %s in the amounts; expected the %s of the entries"
                                        .formatted(
                                                new Amount(count.stated),
                                                new Amount(count.money))));
            }
        }
        List<String> raised = new ArrayList<>();
        payouts.tie(true, name, (code, about, question) -> raised.add(question));
        return new Trial(
                count.rows,
                count.entries,
                count.aside,
                count.sums(),
                problems,
                List.copyOf(raised),
                payouts.tied());
    }

    /** Sums by currency: {@code 10.00}; of several currencies each with its own. */
    static String text(Map<String, Amount> money) {
        if (money.size() < 2) {
            return money.values().stream().findFirst().orElse(Amount.ZERO).toString();
        }
        return money.entrySet().stream()
                .map(e -> e.getKey() + " " + e.getValue())
                .collect(Collectors.joining(", "));
    }

    /** Whether a row round the shapes, which may be wider than they are, states a total there. */
    private static boolean isBeside(Layout layout, String column) {
        return layout.shape().headerRow() == 0
                && layout.otherRows().stream().anyMatch(o -> o.states().containsKey(column));
    }

    /** What is wrong and what is asked, in words. */
    List<String> told() {
        return Stream.concat(problems.kept().stream().map(Problem::toString), raised.stream())
                .toList();
    }

    static Header header(Tables tables, Layout layout, String table) throws BadFile, IOException {
        if (layout.shape().headerRow() == 0) {
            return new Header(Header.numbered(layout.shape().columns()));
        }
        try (Rows rows = AboveRows.of(tables, table, layout)) {
            List<String> names = Tables.header(rows, layout.shape().headerRow()).orElse(List.of());
            return new Header(names, rows.above());
        }
    }

    private static final class Count implements RowReader.Output {
        private final Consumer<Line> lines;
        private final Payouts payouts;
        private long rows;
        private long entries;
        private long aside;
        private long stated;
        private long money;
        private final Map<String, Long> byCurrency = new TreeMap<>();

        Count(Consumer<Line> lines, Payouts payouts) {
            this.lines = lines;
            this.payouts = payouts;
        }

        @Override
        public void line(Line line) {
            entries++;
            long in = line.signedMoney().tenThousandths();
            money = Math.addExact(money, in);
            byCurrency.merge(line.profile().currency(), in, Math::addExact);
            payouts.add(line);
            lines.accept(line);
        }

        Map<String, Amount> sums() {
            Map<String, Amount> sums = new TreeMap<>();
            byCurrency.forEach((currency, sum) -> sums.put(currency, new Amount(sum)));
            return sums;
        }

        @Override
        public void setAside(long row, String reason) {
            aside++;
        }
    }
}
