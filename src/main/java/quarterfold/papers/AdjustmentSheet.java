package quarterfold.papers;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quarterfold.law.Box;
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
    private final BoxColumns<Adjustment> boxes;

    AdjustmentSheet(Sheets sheets, Pack pack) {
        List<Adjustment> adjustments = pack.vatReturn().adjustments();
        List<String> ids =
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
        boxes = new BoxColumns<>(ids, columns.size(), Adjustment::boxes);
        columns.addAll(boxes.columns(MONEY));
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
                                        (page, column) -> boxes.total(adjustments, column)));
        list.ifPresent(sheet -> adjustments.forEach(sheet::add));
    }

    /** Every cell of the sheet that adds to a box. */
    List<String> ranges(String box) {
        return list.map(sheet -> sheet.ranges(boxes.first() + boxes.ids().indexOf(box)))
                .orElse(List.of());
    }
}
