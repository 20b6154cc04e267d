package quarterfold.law;

import java.util.List;
import java.util.Locale;
import quarterfold.money.Rounding;

/** Reads {@code form.csv}: the boxes of the return form, in its order. */
final class Form {

    private Form() {}

    /**
     * The boxes of every day.
     *
     * @throws LawException if a cell cannot be read, or a box takes one that stands below it
     */
    static List<Dated<Box>> read(TableFile file) {
        List<Dated<Box>> form = Table.read(file).dated(Form::box, Box::id);
        List<String> ids = form.stream().map(f -> f.value().id()).toList();
        form.forEach(box -> check(box.value(), ids));
        return form;
    }

    private static Box box(Table.Row row) {
        Box.Unit unit =
                row.parse(
                        "unit",
                        t -> Box.Unit.valueOf(t.toUpperCase(Locale.ROOT)),
                        "pence or pounds");
        Rounding rounding =
                row.parse(
                        "rounding",
                        t -> Rounding.valueOf(t.toUpperCase(Locale.ROOT).replace('-', '_')),
                        "nearest-penny or pounds-down");
        return new Box(
                row.needed("box"),
                row.needed("label"),
                unit,
                rounding,
                row.parse(
                        "formula",
                        Form::formula,
                        "entries, sum and boxes such as 'sum 1 2', or gap and two boxes"),
                row.needed("export_name"),
                row.needed("source"));
    }

    private static Box.Formula formula(String text) {
        List<String> words = List.of(text.split(" ", -1));
        Box.Operation operation = Box.Operation.valueOf(words.get(0).toUpperCase(Locale.ROOT));
        List<String> boxes = words.subList(1, words.size());
        boolean right =
                switch (operation) {
                    case ENTRIES -> boxes.isEmpty();
                    case SUM -> !boxes.isEmpty();
                    case GAP -> boxes.size() == 2;
                };
        if (!right) {
            throw new IllegalArgumentException(text);
        }
        return new Box.Formula(operation, boxes);
    }

    /** A box that took a figure no row above it states would take nought instead. */
    private static void check(Box box, List<String> ids) {
        for (String operand : box.formula().boxes()) {
            int place = ids.indexOf(operand);
            if (place < 0 || place >= ids.indexOf(box.id())) {
                throw new LawException(
                        "form.csv: box %s takes box %s, which no row above it states"
                                .formatted(box.id(), operand));
            }
        }
    }
}
