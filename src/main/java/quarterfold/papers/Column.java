package quarterfold.papers;

import java.util.function.Function;
import quarterfold.money.Amount;

/**
 * One column of a list sheet.
 *
 * @param width in characters of the sheet's own letter size
 * @param rightAligned whether it holds numbers, so that its heading stands over their last digit
 * @param totalled whether the total of the rows shown stands above the heading
 */
record Column<T>(
        String heading,
        double width,
        boolean rightAligned,
        boolean totalled,
        Function<T, Value> value) {

    static <T> Column<T> text(String heading, double width, Function<T, String> text) {
        return of(heading, width, row -> new Value.Text(text.apply(row)));
    }

    static <T> Column<T> of(String heading, double width, Function<T, Value> value) {
        return new Column<>(heading, width, false, false, value);
    }

    static <T> Column<T> whole(String heading, double width, Function<T, Long> number) {
        return new Column<>(heading, width, true, false, row -> new Value.Whole(number.apply(row)));
    }

    static <T> Column<T> count(String heading, double width, Function<T, Long> number) {
        return new Column<>(heading, width, true, false, row -> new Value.Count(number.apply(row)));
    }

    static <T> Column<T> money(String heading, double width, Function<T, Amount> amount) {
        return new Column<>(heading, width, true, false, row -> new Value.Money(amount.apply(row)));
    }

    Column<T> withTotal() {
        return new Column<>(heading, width, true, true, value);
    }
}
