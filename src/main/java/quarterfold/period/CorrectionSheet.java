package quarterfold.period;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import quarterfold.money.Amount;
import quarterfold.money.Rounding;
import quarterfold.treatment.TakenUp;

/**
 * The worksheet of corrections: everything a return takes up of earlier periods, row by row, with
 * the limit its errors were held against.
 *
 * @param outputBoxes the boxes of what is due, such as 1 and 2
 * @param inputBoxes the boxes of what is reclaimed, such as 4
 * @param limit what it is for errors discovered in the period; empty where there are none, or the
 *     tables have no limit for it
 */
public record CorrectionSheet(
        List<Correction> rows,
        Set<String> outputBoxes,
        Set<String> inputBoxes,
        Optional<CorrectionLimit> limit) {

    public static final CorrectionSheet NONE =
            new CorrectionSheet(List.of(), Set.of(), Set.of(), Optional.empty());

    public CorrectionSheet {
        rows = List.copyOf(rows);
        outputBoxes = Set.copyOf(outputBoxes);
        inputBoxes = Set.copyOf(inputBoxes);
    }

    static CorrectionSheet of(List<Correction> rows, Sides sides, Optional<CorrectionLimit> limit) {
        return rows.isEmpty()
                ? NONE
                : new CorrectionSheet(rows, sides.output(), sides.input(), limit);
    }

    public boolean isEmpty() {
        return rows.isEmpty();
    }

    /** The rows by the period each is of. */
    public List<Correction> byPeriod() {
        return rows.stream().sorted(Comparator.comparing(Correction::of)).toList();
    }

    /** The rows taken up in a way. */
    public List<Correction> rows(TakenUp how) {
        return rows.stream().filter(r -> r.takenUp() == how).toList();
    }

    /** What a row changes on the output side: more VAT due is positive. */
    public Amount output(Correction row) {
        return new Sides(outputBoxes, inputBoxes).outputOf(row.difference());
    }

    /** What a row changes on the input side: more VAT reclaimed is positive. */
    public Amount input(Correction row) {
        return new Sides(outputBoxes, inputBoxes).inputOf(row.difference());
    }

    /** The rows' one figure on the output side, to the penny: reg 34(4). */
    public Amount output(List<Correction> of) {
        return of.stream()
                .map(this::output)
                .reduce(Amount.ZERO, Amount::plus)
                .rounded(Rounding.NEAREST_PENNY);
    }

    /** The rows' one figure on the input side, to the penny: reg 34(5). */
    public Amount input(List<Correction> of) {
        return of.stream()
                .map(this::input)
                .reduce(Amount.ZERO, Amount::plus)
                .rounded(Rounding.NEAREST_PENNY);
    }

    /** VAT owed to the tax authority less VAT owed by it: reg 34(3). */
    public Amount net(List<Correction> of) {
        return output(of).minus(input(of));
    }

    /** What this return takes up of the rows, by box id. */
    public Map<String, Amount> boxes(List<Correction> of) {
        Map<String, Amount> boxes = new TreeMap<>();
        of.forEach(r -> r.boxes().forEach((b, amount) -> boxes.merge(b, amount, Amount::plus)));
        return boxes;
    }
}
