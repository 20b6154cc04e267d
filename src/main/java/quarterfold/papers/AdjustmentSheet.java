package quarterfold.papers;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quarterfold.law.Box;
import quarterfold.money.Amount;
import quarterfold.period.Adjustment;
import quarterfold.period.BoxFigure;
import quarterfold.period.Pack;

/**
 * What the return took up beside its entries, one row each with its working. A period without any
 * has no such sheet.
 */
final class AdjustmentSheet {

    private static final double MONEY = 14;

    private final Optional<ListSheet<Adjustment>> list;
    private final List<String> boxes;
    private final int firstBox;

    AdjustmentSheet(Sheets sheets, Pack pack) {
        List<Adjustment> adjustments = pack.vatReturn().adjustments();
        boxes =
                pack.vatReturn().boxes().stream()
                        .map(BoxFigure::box)
                        .filter(b -> !b.isComputed())
                        .map(Box::id)
                        .toList();
        List<Column<Adjustment>> columns =
                new ArrayList<>(
                        List.of(
                                Column.text("What", 22, a -> Words.treatment(a.treatment())),
                                Column.text("About", 25, Adjustment::about),
                                Column.text("How it was worked out", 84, Adjustment::why),
                                Column.text("Rests on", 48, Adjustment::authority),
                                Column.money("Value", MONEY, Adjustment::net),
                                Column.money("VAT", MONEY, Adjustment::vat),
                                Column.money("Claimed VAT", MONEY, Adjustment::claim)));
        firstBox = columns.size();
        boxes.forEach(box -> columns.add(box(box)));
        list =
                adjustments.isEmpty()
                        ? Optional.empty()
                        : Optional.of(
                                new ListSheet<>(
                                        sheets,
                                        new ListSheet.Heading(
                                                "Adjustments",
                                                "Figures worked out over the whole period or year;"
                                                        + " the box columns show what each adds,"
                                                        + " with its sign.",
                                                "Nothing was taken up beside the entries.",
                                                30),
                                        columns,
                                        adjustments.size(),
                                        (page, column) -> total(adjustments, column)));
        list.ifPresent(sheet -> adjustments.forEach(sheet::add));
    }

    private static Column<Adjustment> box(String id) {
        return new Column<>(
                "Box " + id,
                MONEY,
                true,
                true,
                a ->
                        Optional.ofNullable(a.boxes().get(id))
                                .<Value>map(Value.Money::new)
                                .orElse(new Value.Blank()));
    }

    private Amount total(List<Adjustment> adjustments, int column) {
        String box = boxes.get(column - firstBox);
        return adjustments.stream()
                .map(a -> a.boxes().getOrDefault(box, Amount.ZERO))
                .reduce(Amount.ZERO, Amount::plus);
    }

    /** Every cell of the sheet that adds to a box. */
    List<String> ranges(String box) {
        return list.map(sheet -> sheet.ranges(firstBox + boxes.indexOf(box))).orElse(List.of());
    }
}
