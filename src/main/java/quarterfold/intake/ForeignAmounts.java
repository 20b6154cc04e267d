package quarterfold.intake;

import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Cells that a layout cannot read as amounts because they are in another currency than its own. */
final class ForeignAmounts {
    private final Layout layout;
    private Optional<NumberText> text = Optional.empty();

    ForeignAmounts(Layout layout) {
        this.layout = layout;
    }

    /** What was expected of such a cell; nothing where that is not what is wrong with it. */
    Optional<String> expected(String cell) {
        NumberText numbers = text.orElseGet(() -> new NumberText(Vocabulary.load().currencies()));
        text = Optional.of(numbers);
        Optional<String> unit =
                numbers.of(cell).map(NumberText.Dress::unit).filter(u -> !u.isEmpty());
        if (unit.isEmpty() || layout.numbers().units().contains(unit.get())) {
            return Optional.empty();
        }
        String column = layout.fields().getOrDefault(Field.CURRENCY, "");
        if (!column.isEmpty()) {
            return Optional.of(
                    "an amount without a currency, which the column '%s' says, such as %s"
                            .formatted(column, example()));
        }
        Set<String> units = new LinkedHashSet<>(layout.numbers().units());
        layout.currency().ifPresent(units::add);
        Set<String> own = numbers.codes(units);
        own.remove("");
        String code = numbers.codes(Set.of(unit.get())).iterator().next();
        return own.isEmpty() || own.contains(code)
                ? Optional.empty()
                : Optional.of(told(String.join(" or ", own), code, unit.get()));
    }

    private String told(String own, String code, String unit) {
        String other = code.isEmpty() ? "another currency (" + unit + ")" : code;
        String name =
                layout.name() + "-" + (code.isEmpty() ? "other" : code.toLowerCase(Locale.ROOT));
        return "an amount in %1$s, which layout %2$s reads, such as %3$s, and this is in %4$s; where all of the file is, learn it with a name of its own, such as --name %5$s --accept, and import it with --layout %5$s; where some rows are, a column must state each row's currency"
                .formatted(own, layout.name(), example(), other, name);
    }

    private String example() {
        return "1234" + layout.numbers().decimal() + "50";
    }
}
