package quarterfold.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Looks whether amounts are in several currencies by the signs they carry. A layout reads a row's
 * currency from a column, so such a file cannot be read as it is: a sum of pounds and euros is no
 * money.
 */
final class CurrencySigns {
    private CurrencySigns() {}

    /** Tells amounts of several currencies; whether there are any. */
    static boolean tell(
            List<Column> columns, List<Grid.Line> rows, NumberText text, Findings findings) {
        Map<String, String> places = new LinkedHashMap<>();
        for (int row = 0; row < rows.size(); row++) {
            for (Column column : columns) {
                String cell = column.hasValues() ? column.texts().get(row) : "";
                String unit = text.of(cell).map(NumberText.Dress::unit).orElse("");
                if (!unit.isEmpty()) {
                    String code = text.codes(Set.of(unit)).iterator().next();
                    places.putIfAbsent(
                            code.isEmpty() ? unit : code,
                            "%s in row %d".formatted(Problem.quoted(cell), rows.get(row).number()));
                }
            }
        }
        if (places.size() < 2) {
            return false;
        }
        List<String> shown = new ArrayList<>(places.values());
        findings.unsound(
                "amounts have the signs of several currencies, such as %s; expected amounts without signs beside a column that states each row's currency, such as Currency, or a file for each currency"
                        .formatted(String.join(" and ", shown)));
        return true;
    }
}
