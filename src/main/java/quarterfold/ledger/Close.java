package quarterfold.ledger;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import quarterfold.money.Amount;

/**
 * A return period as it was frozen. Never changed.
 *
 * @param period named by its last month
 * @param due the day the return must be in by
 * @param direction which way the money goes: {@code pay}, {@code reclaim} or {@code nil}
 * @param settings the book's settings as they were
 * @param lastEntry the highest entry number of the ledger at the close: what is numbered above it
 *     came later
 * @param lastDecision the highest decision's number at the close: what is above it came later
 * @param lastRate the highest exchange rate's number at the close: what is above it came later
 * @param exact each box's sum before its rounding, by box id, in the order of the form
 * @param figures what the return shows, for the same boxes
 * @param otherRounding what it would show under the rounding the book did not choose, for the same
 *     boxes
 * @param adjustments what the return took up beside its entries
 * @param queries the questions at the close, those set aside included
 * @param tables the law's tables and the product list it was worked out with, whole
 */
public record Close(
        YearMonth period,
        LocalDate start,
        LocalDate end,
        LocalDate due,
        String direction,
        Settings settings,
        long lastEntry,
        long lastDecision,
        long lastRate,
        Map<String, Amount> exact,
        Map<String, Amount> figures,
        Map<String, Amount> otherRounding,
        List<ClosedAdjustment> adjustments,
        List<ClosedQuery> queries,
        List<TableText> tables) {

    /** Refuses figures that are not for the same boxes. */
    public Close {
        if (!figures.keySet().equals(exact.keySet())
                || !otherRounding.keySet().equals(exact.keySet())) {
            throw new IllegalArgumentException(
                    "boxes differ: exact %s, figures %s, other rounding %s"
                            .formatted(exact.keySet(), figures.keySet(), otherRounding.keySet()));
        }
        exact = inOrder(exact);
        figures = inOrder(figures);
        otherRounding = inOrder(otherRounding);
        adjustments = List.copyOf(adjustments);
        queries = List.copyOf(queries);
        tables = List.copyOf(tables);
    }

    private static Map<String, Amount> inOrder(Map<String, Amount> boxes) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(boxes));
    }
}
