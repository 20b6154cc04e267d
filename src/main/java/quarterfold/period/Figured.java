package quarterfold.period;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import quarterfold.law.Box;
import quarterfold.money.Amount;

/** Sums what entries add to the boxes and works out the form: each box rounded once. */
final class Figured {

    private final Map<String, Amount> sums = new HashMap<>();

    void add(Map<String, Amount> boxes) {
        boxes.forEach((box, amount) -> sums.merge(box, amount, Amount::plus));
    }

    /**
     * The figures of the form's boxes, in its order; a computed box takes the figures before it.
     */
    List<BoxFigure> boxes(List<Box> form) {
        Map<String, Amount> figures = new HashMap<>();
        List<BoxFigure> boxes = new ArrayList<>();
        for (Box box : form) {
            Amount exact = exact(box, figures);
            Amount figure = exact.rounded(box.rounding());
            figures.put(box.id(), figure);
            boxes.add(new BoxFigure(box, exact, figure));
        }
        return boxes;
    }

    private Amount exact(Box box, Map<String, Amount> figures) {
        List<Amount> operands =
                box.formula().boxes().stream()
                        .map(id -> figures.getOrDefault(id, Amount.ZERO))
                        .toList();
        return switch (box.formula().operation()) {
            case ENTRIES -> sums.getOrDefault(box.id(), Amount.ZERO);
            case SUM -> operands.stream().reduce(Amount.ZERO, Amount::plus);
            case GAP -> operands.get(0).minus(operands.get(1)).abs();
        };
    }

    /**
     * Which way the money goes, by the form's one box that is a gap: its first box is what is due.
     */
    static Direction direction(List<BoxFigure> boxes) {
        return boxes.stream()
                .filter(b -> b.box().formula().operation() == Box.Operation.GAP)
                .map(b -> b.box().formula().boxes())
                .map(due -> figure(boxes, due.get(0)).compareTo(figure(boxes, due.get(1))))
                .map(c -> c > 0 ? Direction.PAY : c < 0 ? Direction.RECLAIM : Direction.NIL)
                .findFirst()
                .orElse(Direction.NIL);
    }

    private static Amount figure(List<BoxFigure> boxes, String id) {
        return boxes.stream()
                .filter(b -> b.box().id().equals(id))
                .map(BoxFigure::figure)
                .findFirst()
                .orElse(Amount.ZERO);
    }
}
