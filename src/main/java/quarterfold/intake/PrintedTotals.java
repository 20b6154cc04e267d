package quarterfold.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import quarterfold.intake.Print.TotalLine;
import quarterfold.money.Amount;

/**
 * Holds the totals that the lines of a report state against the sums of the rows they are of. A
 * total that is not there is told as well as one that is wrong. For one thread.
 */
final class PrintedTotals {

    /** The rows one total is of: those of a page, or of a stretch, that share some texts. */
    private record Group(int scope, List<String> same) {}

    private static final class Sum {
        private final long[] sums;
        private long rows;

        Sum(int columns) {
            sums = new long[columns];
        }
    }

    private record Stated(Group group, PrintedLine line, Map<String, String> texts) {}

    private static final class Kind {
        private final TotalLine total;
        private final Map<Group, Sum> sums = new LinkedHashMap<>();
        private final List<Stated> stated = new ArrayList<>();

        Kind(TotalLine total) {
            this.total = total;
        }

        Group group(int page, Map<String, String> texts) {
            int scope =
                    switch (total.of()) {
                        case FILE -> 0;
                        case PAGE -> page;
                        case ABOVE -> stated.size();
                    };
            return new Group(
                    scope,
                    total.same().stream().map(column -> texts.getOrDefault(column, "")).toList());
        }
    }

    private final String file;
    private final Problems problems;
    private final AmountReader amounts;
    private final String expected;
    private final List<Kind> kinds = new ArrayList<>();
    private boolean spoilt;

    PrintedTotals(Layout layout, Print print, String file, Problems problems) {
        this.file = file;
        this.problems = problems;
        amounts = new AmountReader(layout.numbers());
        expected = layout.numbers().expected();
        print.totals().forEach(total -> kinds.add(new Kind(total)));
    }

    /** Counts a row, of what its line and the facts above it state. */
    void row(int page, Map<String, String> texts) {
        for (Kind kind : kinds) {
            Sum sum =
                    kind.sums.computeIfAbsent(
                            kind.group(page, texts), g -> new Sum(kind.total.sums().size()));
            sum.rows++;
            for (int i = 0; i < sum.sums.length; i++) {
                String text = texts.getOrDefault(kind.total.sums().get(i), "");
                long value = text.isEmpty() ? 0 : amounts.read(text);
                spoilt |= value == AmountReader.BAD;
                sum.sums[i] = spoilt ? 0 : Math.addExact(sum.sums[i], value);
            }
        }
    }

    /** Takes a line that states a total; false where it states none. */
    boolean take(PrintedLine line) {
        for (Kind kind : kinds) {
            Map<String, String> texts = kind.total.line().match(line.text()).orElse(Map.of());
            if (!texts.isEmpty()) {
                kind.stated.add(new Stated(kind.group(line.page(), texts), line, texts));
                return true;
            }
        }
        return false;
    }

    /** A row could not be read, so that no total can be held against the rows. */
    void spoil() {
        spoilt = true;
    }

    /** Tells of each total that is wrong or not there, once all lines are read. */
    void check() {
        if (spoilt) {
            return;
        }
        for (Kind kind : kinds) {
            for (Stated stated : kind.stated) {
                check(kind, stated);
            }
            kind.sums.forEach(
                    (group, sum) -> {
                        if (kind.stated.stream().noneMatch(s -> s.group().equals(group))) {
                            missing(kind, group, sum);
                        }
                    });
        }
    }

    private void check(Kind kind, Stated stated) {
        List<String> columns = kind.total.sums();
        Sum sum = kind.sums.getOrDefault(stated.group(), new Sum(columns.size()));
        for (int i = 0; i < columns.size(); i++) {
            String text = stated.texts().getOrDefault(columns.get(i), "");
            long value = amounts.read(text);
            if (value == AmountReader.BAD) {
                tell(stated.line(), columns.get(i), text, expected);
            } else if (value != sum.sums[i]) {
                tell(
                        stated.line(),
                        columns.get(i),
                        text,
                        "the sum of the %s %s, %s; are rows missing, or is one there twice?"
                                .formatted(
                                        rows(sum.rows),
                                        where(kind, stated.group()),
                                        new Amount(sum.sums[i])));
            }
        }
    }

    private void missing(Kind kind, Group group, Sum sum) {
        if (kind.total.optional() && kind.stated.isEmpty()) {
            return;
        }
        problems.add(
                new Problem(
                        file,
                        String.join(", ", kind.total.sums()),
                        "found %s %s and no line that states their total; expected one, such as '%s'; is a page missing?"
                                .formatted(rows(sum.rows), where(kind, group), kind.total.line())));
    }

    private void tell(PrintedLine line, String column, String found, String wanted) {
        problems.add(Problem.found(line.place(file), column, found, wanted));
    }

    private static String rows(long count) {
        return count == 1 ? "1 row" : count + " rows";
    }

    private static String where(Kind kind, Group group) {
        StringBuilder where =
                new StringBuilder(
                        switch (kind.total.of()) {
                            case FILE -> "of the file";
                            case PAGE -> "of page " + group.scope();
                            case ABOVE -> "above";
                        });
        for (int i = 0; i < group.same().size(); i++) {
            where.append(i == 0 ? " with " : " and ")
                    .append(kind.total.same().get(i))
                    .append(' ')
                    .append(Problem.quoted(group.same().get(i)));
        }
        return where.toString();
    }
}
