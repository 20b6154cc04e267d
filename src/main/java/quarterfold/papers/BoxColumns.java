package quarterfold.papers;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import quarterfold.money.Amount;

/**
 * The columns of a list whose rows add to boxes, one for each box, with their totals.
 *
 * @param ids of the boxes, in the order of the columns
 * @param first the number of the first of them on its sheet
 * @param adds what a row adds to each box, by box id
 */
record BoxColumns<R>(List<String> ids, int first, Function<R, Map<String, Amount>> adds) {

    BoxColumns {
        ids = List.copyOf(ids);
    }

    List<Column<R>> columns(double width) {
        return ids.stream().map(id -> column(id, width)).toList();
    }

    private Column<R> column(String id, double width) {
        return new Column<>(
                "Box " + id,
                width,
                true,
                true,
                row ->
                        Optional.ofNullable(adds.apply(row).get(id))
                                .<Value>map(Value.Money::new)
                                .orElse(new Value.Blank()));
    }

    /** What the rows add to the box of a column of the sheet. */
    Amount total(List<R> rows, int column) {
        String id = ids.get(column - first);
        return rows.stream()
                .map(row -> adds.apply(row).getOrDefault(id, Amount.ZERO))
                .reduce(Amount.ZERO, Amount::plus);
    }
}
