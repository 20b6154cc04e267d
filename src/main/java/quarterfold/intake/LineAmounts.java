package quarterfold.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the amounts of rows round a table, as its own rows write theirs. */
final class LineAmounts {
    private static final Pattern AMOUNT =
            Pattern.compile("[-(]?[\\d][\\d.,'\u2019 \u00a0]*[.,]\\d{2}\\)?-?(?!\\d)");

    private final AmountReader reader;
    private final AmountReader plain;

    LineAmounts(Layout.Numbers numbers) {
        reader = new AmountReader(numbers);
        char usual = numbers.decimal() == '.' ? ',' : '.';
        char thousands = numbers.thousands() == 0 ? usual : numbers.thousands();
        plain = new AmountReader(new Layout.Numbers(numbers.decimal(), thousands, true, true));
    }

    /** The cell's amount, where the whole cell is one. */
    Optional<Long> cell(Grid.Line line, int column) {
        String cell = line.cell(column);
        long value = line.numbers().get(column) ? reader.readNumber(cell) : reader.read(cell);
        return value == AmountReader.BAD ? Optional.empty() : Optional.of(value);
    }

    /** All amounts in its cells, and in the texts of its cells. */
    List<Long> of(Grid.Line line) {
        List<Long> amounts = new ArrayList<>();
        for (int i = 0; i < line.width(); i++) {
            String cell = line.cell(i);
            Optional<Long> whole = cell.matches(".*\\d.*") ? cell(line, i) : Optional.empty();
            if (whole.isPresent()) {
                amounts.add(whole.get());
                continue;
            }
            Matcher found = AMOUNT.matcher(cell);
            while (found.find()) {
                long value = plain.read(found.group().strip());
                if (value != AmountReader.BAD) {
                    amounts.add(value);
                }
            }
        }
        return amounts;
    }

    /** The line with just the cells that show decimals. */
    static Grid.Line decimals(Grid.Line line) {
        return new Grid.Line(
                line.number(),
                line.cells().stream().map(c -> showsDecimals(c) ? c : "").toList(),
                line.numbers());
    }

    static boolean showsDecimals(String cell) {
        return cell.matches(".*\\d[.,]\\d{2}\\D*");
    }
}
