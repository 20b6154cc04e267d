package quarterfold.intake;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import quarterfold.intake.Layout.WorkedOut;
import quarterfold.money.Amount;

/**
 * The amount cells of a row, each read once, in ten-thousandths: the columns of the file first,
 * then those worked out of them. A blank cell is zero. What is printed positive and goes out is
 * negative here. For one thread.
 */
final class MoneyCells {
    private final Layout.Numbers numbers;
    private final AmountReader[] readers;
    private final Optional<ForeignAmounts> foreign;
    private final List<String> names = new ArrayList<>();
    private final int[] columns;
    private final int[][] factors;
    private final long[] values;
    private final boolean[] stated;
    private final boolean[] converted;
    private final boolean[] negated;
    private final boolean[] marked;
    private final boolean[] isProduct;
    private final boolean[] lettered;
    private final boolean[] bare;
    private int mark = -1;
    private Set<String> negative = Set.of();

    MoneyCells(Header header, Iterable<String> wanted, Layout layout) {
        this(
                header,
                wanted,
                layout.workedOut(),
                layout.numbers(),
                Optional.of(new ForeignAmounts(layout)));
        for (int i = 0; i < negated.length; i++) {
            negated[i] = i < columns.length && layout.outgoing().contains(names.get(i));
        }
        for (int i = 0; i < marked.length; i++) {
            marked[i] = layout.amounts().contains(names.get(i));
        }
        AmountReader without = new AmountReader(AmountReader.withoutLetters(numbers));
        for (int p = 0; p < factors.length; p++) {
            boolean directed =
                    !isProduct[p] && Arrays.stream(factors[p]).anyMatch(part -> negated[part]);
            for (int part : directed && numbers.letters() ? factors[p] : new int[0]) {
                readers[part] = without;
                bare[part] = true;
            }
        }
        if (layout.mark().isPresent()) {
            mark = header.column(layout.mark().get().column());
            negative = layout.mark().get().negative();
        }
    }

    MoneyCells(
            Header header,
            Iterable<String> wanted,
            Map<String, WorkedOut> workedOut,
            Layout.Numbers numbers) {
        this(header, wanted, workedOut, numbers, Optional.empty());
    }

    private MoneyCells(
            Header header,
            Iterable<String> wanted,
            Map<String, WorkedOut> workedOut,
            Layout.Numbers numbers,
            Optional<ForeignAmounts> foreign) {
        this.foreign = foreign;
        this.numbers = numbers;
        List<String> products = new ArrayList<>();
        for (String name : wanted) {
            List<String> list = workedOut.containsKey(name) ? products : names;
            if (!list.contains(name)) {
                list.add(name);
            }
        }
        int asked = names.size();
        for (String product : products) {
            for (String factor : worked(workedOut, product).columns()) {
                if (!names.contains(factor)) {
                    names.add(factor);
                }
            }
        }
        columns = names.stream().mapToInt(header::column).toArray();
        factors =
                products.stream()
                        .map(p -> worked(workedOut, p).columns())
                        .map(parts -> parts.stream().mapToInt(names::indexOf).toArray())
                        .toArray(int[][]::new);
        isProduct = new boolean[products.size()];
        for (int p = 0; p < isProduct.length; p++) {
            isProduct[p] = worked(workedOut, products.get(p)).product();
        }
        readers = new AmountReader[columns.length];
        AmountReader money = AmountReader.ofMoney(numbers);
        AmountReader number = new AmountReader(numbers);
        Set<Integer> multiplied = new HashSet<>();
        for (int p = 0; p < isProduct.length; p++) {
            for (int factor : isProduct[p] ? factors[p] : new int[0]) {
                multiplied.add(factor);
            }
        }
        for (int i = 0; i < readers.length; i++) {
            readers[i] = i >= asked && multiplied.contains(i) ? number : money;
        }
        lettered = new boolean[columns.length];
        bare = new boolean[columns.length];
        names.addAll(products);
        values = new long[names.size()];
        stated = new boolean[names.size()];
        converted = new boolean[names.size()];
        negated = new boolean[names.size()];
        marked = new boolean[names.size()];
    }

    private static WorkedOut worked(Map<String, WorkedOut> workedOut, String name) {
        return workedOut.getOrDefault(name, new WorkedOut(false, List.of()));
    }

    /** Where a column stands among these, or -1. */
    int index(String name) {
        return names.indexOf(name);
    }

    String name(int index) {
        return names.get(index);
    }

    /** Reads every amount of the row; false where one is not an amount, as problems say. */
    boolean read(Row row) {
        boolean good = true;
        boolean turned = mark >= 0 && negative.contains(row.text(mark));
        for (int i = 0; i < columns.length; i++) {
            good &= read(row, i, turned);
        }
        return good && (factors.length == 0 || workOut(row));
    }

    /** Reads one amount of the file; false where it is none, as a problem says. */
    boolean read(Row row, int i, boolean turned) {
        String text = row.text(columns[i]);
        stated[i] = !text.isEmpty();
        converted[i] = false;
        values[i] = 0;
        if (stated[i]) {
            AmountReader reader = readers[i];
            boolean stored = row.isNumber(columns[i]);
            long value = stored ? reader.readNumber(text) : reader.read(text);
            lettered[i] = !stored && numbers.letters() && AmountReader.hasLetters(text);
            if (value == AmountReader.BAD) {
                row.wrong(
                        columns[i],
                        foreign.flatMap(f -> f.expected(text)).orElseGet(() -> expected(i)));
                return false;
            }
            boolean other = negated[i] != (turned && marked[i]);
            values[i] = other ? -value : value;
            converted[i] = reader.converted() || (other && value != 0);
        }
        return true;
    }

    private String expected(int i) {
        return (bare[i] ? AmountReader.withoutLetters(numbers) : numbers).expected();
    }

    private boolean workOut(Row row) {
        for (int p = 0; p < factors.length; p++) {
            if (!isProduct[p]) {
                add(p);
            } else if (!multiply(row, p)) {
                return false;
            }
        }
        return true;
    }

    private void add(int p) {
        int at = columns.length + p;
        values[at] = 0;
        stated[at] = false;
        converted[at] = false;
        for (int part : factors[p]) {
            values[at] = Math.addExact(values[at], values[part]);
            stated[at] |= stated[part];
            converted[at] |= converted[part];
        }
    }

    private boolean multiply(Row row, int p) {
        int at = columns.length + p;
        int a = factors[p][0];
        int b = factors[p][1];
        stated[at] = stated[a] && stated[b];
        converted[at] = true;
        try {
            BigDecimal product =
                    new Amount(values[a]).decimal().multiply(new Amount(values[b]).decimal());
            values[at] = stated[at] ? Amount.of(product).tenThousandths() : 0;
        } catch (ArithmeticException tooPrecise) {
            row.fault(
                    names.get(at),
                    "found %s; expected a product with at most 4 decimals, such as 10 x 1.95"
                            .formatted(original(row, at)));
            return false;
        }
        if (numbers.letters() && values[at] > 0 && lettered[a] == lettered[b]) {
            row.fault(
                    names.get(at),
                    "found %s; expected CR or DR behind one of the two, such as 10 x 1.95 CR"
                            .formatted(original(row, at)));
            return false;
        }
        return true;
    }

    /** The value, 0 where the cell is blank or {@code index} is -1. */
    long value(int index) {
        return index < 0 ? 0 : values[index];
    }

    Amount amount(int index) {
        return new Amount(value(index));
    }

    boolean isStated(int index) {
        return index >= 0 && stated[index];
    }

    /** Whether the file has no such column. */
    boolean isLacking(int index) {
        return index >= 0 && index < columns.length && columns[index] < 0;
    }

    boolean isConverted(int index) {
        return index >= 0 && converted[index];
    }

    /** Whether what the file prints is turned round. */
    boolean isNegated(int index) {
        return index < columns.length && negated[index];
    }

    /** The column of the file, or that of the first factor. */
    int column(int index) {
        return index < columns.length
                ? columns[index]
                : columns[factors[index - columns.length][0]];
    }

    /** The cell as the file writes it, with its column's name; a product as its two factors. */
    String original(Row row, int index) {
        if (index >= columns.length) {
            StringBuilder parts = new StringBuilder();
            for (int part : factors[index - columns.length]) {
                if (stated[part]) {
                    parts.append(parts.length() == 0 ? "" : "; ").append(original(row, part));
                }
            }
            return parts.toString();
        }
        return names.get(index) + ": " + row.text(columns[index]);
    }
}
