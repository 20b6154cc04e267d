package quarterfold.period;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import quarterfold.law.AccountLine.Portion;
import quarterfold.law.Box;

/**
 * Which portion of the VAT account a box of the form is the sum of: the form's one gap is between
 * the box of all that is payable and the box of all that is allowable.
 */
final class Portions {

    private Portions() {}

    /** The portion of each box that has one, by box id. */
    static Map<String, Portion> of(List<Box> form) {
        Map<String, Portion> portions = new HashMap<>();
        for (Portion portion : Portion.values()) {
            boxes(form, portion).forEach(box -> portions.put(box, portion));
        }
        return portions;
    }

    /** The boxes that entries add to and that a portion feeds, in the form's order. */
    static List<String> boxes(List<Box> form, Portion portion) {
        return form.stream()
                .filter(b -> b.formula().operation() == Box.Operation.GAP)
                .map(b -> b.formula().boxes().get(portion == Portion.PAYABLE ? 0 : 1))
                .flatMap(id -> form.stream().filter(b -> b.id().equals(id)))
                .flatMap(
                        b ->
                                b.isComputed()
                                        ? b.formula().boxes().stream()
                                        : List.of(b.id()).stream())
                .toList();
    }
}
