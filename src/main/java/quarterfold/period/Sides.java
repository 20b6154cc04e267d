package quarterfold.period;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import quarterfold.law.Box;
import quarterfold.money.Amount;

/**
 * The two sides of the VAT account as boxes of the form, by the form's one box that is a gap: what
 * is due, and what is reclaimed.
 *
 * @param output the boxes that sum what is due
 * @param input the boxes that sum what is reclaimed
 */
record Sides(Set<String> output, Set<String> input) {

    static Sides of(List<Box> form) {
        Set<String> output = new LinkedHashSet<>();
        Set<String> input = new LinkedHashSet<>();
        for (Box box : form) {
            if (box.formula().operation() == Box.Operation.GAP) {
                summed(form, box.formula().boxes().get(0), output);
                summed(form, box.formula().boxes().get(1), input);
            }
        }
        return new Sides(output, input);
    }

    private static void summed(List<Box> form, String id, Set<String> to) {
        for (Box box : form) {
            if (box.id().equals(id)) {
                if (box.isComputed()) {
                    box.formula().boxes().forEach(operand -> summed(form, operand, to));
                } else {
                    to.add(id);
                }
            }
        }
    }

    boolean has(String box) {
        return output.contains(box) || input.contains(box);
    }

    Amount outputOf(Map<String, Amount> boxes) {
        return sum(output, boxes);
    }

    Amount inputOf(Map<String, Amount> boxes) {
        return sum(input, boxes);
    }

    private static Amount sum(Set<String> ids, Map<String, Amount> boxes) {
        return ids.stream()
                .map(id -> boxes.getOrDefault(id, Amount.ZERO))
                .reduce(Amount.ZERO, Amount::plus);
    }
}
