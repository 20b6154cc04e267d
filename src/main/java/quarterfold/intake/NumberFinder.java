package quarterfold.intake;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import quarterfold.intake.Layout.Numbers;

/** Finds how a file writes its numbers: one way for all its columns. */
final class NumberFinder {
    private static final String[] WAYS = {
        ". ", ".,", ".'", ".\u2019", ".s", ", ", ",.", ",'", ",\u2019", ",s"
    };

    /**
     * A way to write numbers.
     *
     * @param other another way that reads the same texts as other amounts, where there is one
     * @param marked whether any number shows decimals
     */
    record Found(Numbers numbers, Optional<Numbers> other, boolean marked) {}

    private final NumberText text;
    private final Set<String> units = new LinkedHashSet<>();
    private boolean letters;
    private final Set<String> cells = new LinkedHashSet<>();

    NumberFinder(NumberText text) {
        this.text = text;
    }

    /** Takes a cell that must be read; one the file itself stores as a number needs no finding. */
    void add(String cell) {
        text.of(cell)
                .ifPresent(
                        dress -> {
                            if (!dress.unit().isEmpty()) {
                                units.add(dress.unit());
                            }
                            letters |= dress.letters();
                            cells.add(cell);
                        });
    }

    Set<String> units() {
        return units;
    }

    /** The way that reads every cell taken; nothing where there is none. */
    Optional<Found> find() {
        List<Numbers> good = new ArrayList<>();
        for (String way : WAYS) {
            char thousands = way.charAt(1) == ' ' ? 0 : way.charAt(1) == 's' ? ' ' : way.charAt(1);
            Numbers numbers = numbers(way.charAt(0), thousands);
            if (readsAll(numbers)) {
                good.add(numbers);
            }
        }
        if (good.isEmpty()) {
            return Optional.empty();
        }
        Numbers first = good.get(0);
        Optional<Numbers> other = good.stream().filter(n -> !sameAmounts(first, n)).findFirst();
        boolean marked = cells.stream().anyMatch(c -> decimals(c, first) > 0);
        return Optional.of(new Found(withThousands(first, marked), other, marked));
    }

    /** Signs in every place: none reads as another amount without them. */
    private Numbers numbers(char decimal, char thousands) {
        return new Numbers(decimal, thousands, true, true, true, letters, 0, List.copyOf(units));
    }

    /** Where no number has a mark, the usual one is allowed later on. */
    private Numbers withThousands(Numbers numbers, boolean marked) {
        return numbers.thousands() == 0 && marked
                ? numbers(numbers.decimal(), numbers.decimal() == '.' ? ',' : '.')
                : numbers;
    }

    private boolean readsAll(Numbers numbers) {
        AmountReader reader = new AmountReader(numbers);
        for (String cell : cells) {
            if (reader.read(cell) == AmountReader.BAD) {
                return false;
            }
        }
        return true;
    }

    private boolean sameAmounts(Numbers one, Numbers two) {
        AmountReader first = new AmountReader(one);
        AmountReader second = new AmountReader(two);
        for (String cell : cells) {
            if (first.read(cell) != second.read(cell)) {
                return false;
            }
        }
        return true;
    }

    private int decimals(String cell, Numbers numbers) {
        String digits = text.of(cell).map(NumberText.Dress::digits).orElse("");
        int mark = digits.lastIndexOf(numbers.decimal());
        return mark < 0 ? 0 : digits.length() - mark - 1;
    }

    /** Distinct lengths of decimals the numbers show. */
    Set<Integer> lengths(Numbers numbers) {
        Set<Integer> lengths = new HashSet<>();
        cells.forEach(c -> lengths.add(decimals(c, numbers)));
        return lengths;
    }
}
