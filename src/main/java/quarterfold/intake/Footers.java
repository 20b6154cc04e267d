package quarterfold.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import quarterfold.money.Amount;

/**
 * Knows rows below a table that its layout does not name by their own words: totals and counts,
 * which must be those of the rows above, and lines of words, which are told. For one thread.
 */
final class Footers {
    private static final Pattern LETTER = Pattern.compile("\\p{L}");
    private static final Pattern WORDS = Pattern.compile(".*\\p{L}{2,}.*\\s.*");
    private static final Pattern NUMBER = Pattern.compile("\\d+");
    private static final int COUNT_WORDS = 5;

    private final String layout;
    private final boolean isFirst;
    private final MoneyCells money;
    private final int date;
    private final DateReader dates;
    private final int dateLength;
    private final int[] summed;
    private final long[] sums;
    private long rows;
    private boolean spoilt;
    private Optional<Vocabulary> words = Optional.empty();

    Footers(Layout layout, Header header, MoneyCells money, Set<String> amounts, DateReader dates) {
        this.layout = layout.name();
        isFirst = layout.otherRows().isEmpty();
        this.money = money;
        this.dates = dates.another();
        dateLength = layout.dates().example().length();
        date = header.column(layout.fields().getOrDefault(Field.DATE, ""));
        List<String> states = new ArrayList<>(amounts);
        states.removeAll(layout.workedOut().keySet());
        layout.balance().ifPresent(b -> states.remove(b.column()));
        layout.payoutColumn().ifPresent(states::remove);
        summed = states.stream().mapToInt(money::index).toArray();
        sums = new long[summed.length];
    }

    /** Counts a row of the table, whose amounts have been read. */
    void add() {
        rows++;
        for (int i = 0; i < summed.length; i++) {
            sums[i] = Math.addExact(sums[i], money.value(summed[i]));
        }
    }

    /** A row of the table could not be read, so that no total can be held against the rows. */
    void spoil() {
        spoilt = true;
    }

    /** Whether the row is none of the table: it is set aside, or what is wrong with it is told. */
    boolean take(Row row, RowReader.Output output) {
        if (date < 0 || !maybe(row)) {
            return false;
        }
        List<String> cells = row.bare().stream().filter(cell -> !cell.isEmpty()).toList();
        if (cells.isEmpty()) {
            return false;
        }
        String first = cells.get(0);
        if (known().isLabel(first, "total") && statesMoney(row)) {
            total(row);
            output.setAside(row.number(), "total");
            return true;
        }
        String text = String.join(" ", cells);
        if (isCount(text)) {
            if (!spoilt) {
                FileTotals.checkCount(row, text, rows);
            }
            output.setAside(row.number(), "count");
            return true;
        }
        if (cells.size() == 1 && WORDS.matcher(first).matches()) {
            tell(row, first);
            return true;
        }
        return false;
    }

    /** Whether there is no date where rows of the table have theirs. */
    private boolean maybe(Row row) {
        String text = row.bare(date);
        if (text.length() == dateLength && Character.isDigit(text.charAt(0))) {
            return false; // as dates begin, and as long as they are: the usual row
        }
        return text.isEmpty() || (LETTER.matcher(text).find() && dates.read(text).isEmpty());
    }

    private boolean statesMoney(Row row) {
        for (int index : summed) {
            String text = money.isLacking(index) ? "" : row.bare(money.column(index));
            if (!text.isEmpty() && NUMBER.matcher(text).find()) {
                return true;
            }
        }
        return false;
    }

    private void total(Row row) {
        for (int i = 0; i < summed.length && !spoilt; i++) {
            int index = summed[i];
            if (money.column(index) != date
                    && money.read(row, index, false)
                    && money.isStated(index)
                    && money.value(index) != sums[i]) {
                row.wrong(
                        money.column(index),
                        "the sum of the %d rows above, %s, in a row that says it is a total; are rows missing, or is one there twice?"
                                .formatted(
                                        rows,
                                        new Amount(money.isNegated(index) ? -sums[i] : sums[i])));
            }
        }
    }

    /** Whether a few words say that the one number beside them is one of rows. */
    private boolean isCount(String text) {
        Matcher numbers = NUMBER.matcher(text);
        return numbers.find()
                && !numbers.find()
                && Phrase.of(text).words().size() <= COUNT_WORDS
                && known().isLabel(text, "count");
    }

    private void tell(Row row, String text) {
        row.fault(
                "",
                "found one cell, %s; expected a row of the table; if it is a line of words round the table, %s"
                        .formatted(
                                Problem.quoted(text),
                                OtherRowText.advice(
                                        "the layout " + layout,
                                        isFirst,
                                        "{starts: %s, why: words}"
                                                .formatted(
                                                        LayoutWriter.text(
                                                                LeadingWords.of(text)
                                                                        .orElse(text))))));
    }

    private Vocabulary known() {
        Vocabulary known = words.orElseGet(Vocabulary::load);
        words = Optional.of(known);
        return known;
    }
}
