package quarterfold.papers;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import quarterfold.law.Box;
import quarterfold.law.Law;
import quarterfold.ledger.Attachment;
import quarterfold.ledger.SetAside;
import quarterfold.ledger.Settings;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;
import quarterfold.period.Adjustment;
import quarterfold.period.BoxFigure;
import quarterfold.period.Direction;
import quarterfold.period.Pack;
import quarterfold.period.Period;
import quarterfold.period.VatReturn;
import quarterfold.treatment.Query;
import quarterfold.treatment.Treated;

/**
 * A pack of lists: the boxes are added up here, in exact amounts, apart from the papers' formulas.
 */
record ListPack(
        Settings settings,
        VatReturn vatReturn,
        Law law,
        List<Source> sources,
        List<SetAside> setAside,
        Map<String, Amount> otherRounding,
        List<Treated> entries)
        implements Pack {

    @Override
    public List<Attachment> attachments() {
        return List.of();
    }

    static ListPack of(
            Settings settings,
            Period period,
            VatReturn.Status status,
            Law law,
            List<Source> sources,
            List<SetAside> setAside,
            List<Treated> entries,
            List<Adjustment> adjustments,
            List<Query> queries) {
        Map<String, Amount> exact = new TreeMap<>();
        Map<String, Amount> other = new TreeMap<>();
        for (Treated treated : entries) {
            treated.boxes().forEach((box, amount) -> exact.merge(box, amount, Amount::plus));
            treated.boxes()
                    .forEach(
                            (box, amount) ->
                                    other.merge(
                                            box,
                                            amount.rounded(
                                                    quarterfold.money.Rounding.NEAREST_PENNY),
                                            Amount::plus));
        }
        for (Adjustment adjustment : adjustments) {
            adjustment.boxes().forEach((box, amount) -> exact.merge(box, amount, Amount::plus));
            adjustment.boxes().forEach((box, amount) -> other.merge(box, amount, Amount::plus));
        }
        List<BoxFigure> boxes = figures(law.form(period.end()), exact);
        List<BoxFigure> others = figures(law.form(period.end()), other);
        Map<String, Amount> otherFigures = new TreeMap<>();
        others.forEach(b -> otherFigures.put(b.box().id(), b.figure()));
        int way = boxes.get(2).figure().compareTo(boxes.get(3).figure());
        Direction direction = way > 0 ? Direction.PAY : way < 0 ? Direction.RECLAIM : Direction.NIL;
        return new ListPack(
                settings,
                new VatReturn(period, status, boxes, direction, adjustments, queries),
                law,
                sources,
                setAside,
                otherFigures,
                entries);
    }

    private static List<BoxFigure> figures(List<Box> form, Map<String, Amount> exact) {
        Map<String, Amount> figures = new TreeMap<>();
        return form.stream()
                .map(
                        box -> {
                            List<Amount> parts =
                                    box.formula().boxes().stream().map(figures::get).toList();
                            Amount sum =
                                    switch (box.formula().operation()) {
                                        case ENTRIES -> exact.getOrDefault(box.id(), Amount.ZERO);
                                        case SUM ->
                                                parts.stream().reduce(Amount.ZERO, Amount::plus);
                                        case GAP -> parts.get(0).minus(parts.get(1)).abs();
                                    };
                            figures.put(box.id(), sum.rounded(box.rounding()));
                            return new BoxFigure(box, sum, sum.rounded(box.rounding()));
                        })
                .toList();
    }

    @Override
    public void forEachTreated(Consumer<Treated> each) {
        entries.forEach(each);
    }
}
