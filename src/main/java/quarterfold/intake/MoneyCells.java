package quarterfold.intake;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import quarterfold.money.Amount;

/**
 * The amount cells of a row, each read once, in ten-thousandths: the columns of the file first,
 * then those worked out as the product of two. A blank cell is zero. For one thread.
 */
final class MoneyCells {
    private final AmountReader reader;
    private final String expected;
    private final List<String> names = new ArrayList<>();
    private final int[] columns;
    private final int[][] factors;
    private final long[] values;
    private final boolean[] stated;
    private final boolean[] converted;

    MoneyCells(
            Header header,
            Iterable<String> wanted,
            Map<String, List<String>> workedOut,
            Layout.Numbers numbers) {
        reader = new AmountReader(numbers);
        expected = numbers.expected();
        List<String> products = new ArrayList<>();
        for (String name : wanted) {
            List<String> list = workedOut.containsKey(name) ? products : names;
            if (!list.contains(name)) {
                list.add(name);
            }
        }
        for (String product : products) {
            for (String factor : workedOut.getOrDefault(product, List.of())) {
                if (!names.contains(factor)) {
                    names.add(factor);
                }
            }
        }
        columns = names.stream().mapToInt(header::column).toArray();
        factors =
                products.stream()
                        .map(p -> workedOut.getOrDefault(p, List.of()))
                        .map(pair -> pair.stream().mapToInt(names::indexOf).toArray())
                        .toArray(int[][]::new);
        names.addAll(products);
        values = new long[names.size()];
        stated = new boolean[names.size()];
        converted = new boolean[names.size()];
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
        for (int i = 0; i < columns.length; i++) {
            String text = row.text(columns[i]);
            stated[i] = !text.isEmpty();
            converted[i] = false;
            values[i] = 0;
            if (stated[i]) {
                long value = row.isNumber(columns[i]) ? reader.readNumber(text) : reader.read(text);
                if (value == AmountReader.BAD) {
                    row.wrong(columns[i], expected);
                    good = false;
                } else {
                    values[i] = value;
                    converted[i] = reader.converted();
                }
            }
        }
        return good && (factors.length == 0 || multiply(row));
    }

    private boolean multiply(Row row) {
        for (int p = 0; p < factors.length; p++) {
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

    boolean isConverted(int index) {
        return index >= 0 && converted[index];
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
            int[] pair = factors[index - columns.length];
            return original(row, pair[0]) + "; " + original(row, pair[1]);
        }
        return names.get(index) + ": " + row.text(columns[index]);
    }
}
