package quarterfold.intake;

import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Our own interchange: a table whose columns have the names of {@link Field}, in any order, as CSV,
 * TSV or XLSX. Dates are ISO, the decimal mark is a point; a column that is no field is a note.
 */
record PlainSheet(Layout.Shape shape) implements Form {
    static final String NAME = "plain-sheet";

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public Set<String> columns() {
        return new LinkedHashSet<>(Set.of(Field.DATE.code(), Field.KIND.code()));
    }

    @Override
    public Set<String> named() {
        return Stream.of(Field.values()).map(Field::code).collect(Collectors.toSet());
    }

    /** Made by hand, it need name nothing that tells one sale from another. */
    @Override
    public RepeatRule repeats() {
        return new RepeatRule(RepeatRule.Meeting.ASK, Set.of(), false);
    }

    @Override
    public Optional<String> documents() {
        return Optional.of(Field.FILE.code());
    }

    @Override
    public RowReader reader(Terms terms) {
        Header header = terms.header();
        if (Stream.of(Field.values()).noneMatch(f -> f.isAmount() && header.has(f.code()))) {
            terms.problems()
                    .add(
                            new Problem(
                                    terms.place(),
                                    "",
                                    "found no column for an amount; expected gross, or net with vat or rate, such as gross"));
        }
        Map<Field, String> columns =
                Stream.of(Field.values())
                        .filter(f -> header.has(f.code()))
                        .collect(Collectors.toMap(Function.identity(), Field::code));
        FieldCells cells = FieldCells.of(header, columns, Map.of());
        return new PlainRows(
                LineCells.of(cells),
                new MoneyCells(
                        header,
                        Stream.of(Field.values())
                                .filter(f -> f.isAmount() && header.has(f.code()))
                                .map(Field::code)
                                .toList(),
                        Map.of(),
                        Layout.Numbers.PLAIN),
                new LineMaker(
                        cells,
                        new DateReader(Layout.Dates.ISO, terms.zone(), terms.nativeDates()),
                        new Notes(header, named())),
                new ProfileReader(cells, terms.book().currency(), false),
                terms.book().currency());
    }
}
