package quarterfold.period;

import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import quarterfold.law.Law;
import quarterfold.law.TableFile;
import quarterfold.ledger.Bundles;
import quarterfold.ledger.Close;
import quarterfold.ledger.ClosedCorrection;
import quarterfold.ledger.ClosedQuery;
import quarterfold.ledger.Products;
import quarterfold.ledger.TableText;
import quarterfold.money.Amount;
import quarterfold.treatment.Query;
import quarterfold.treatment.TakenUp;

/** A frozen return, read back with the tables it was closed with. */
final class ClosedReturn {

    /** The book's own lists among the tables of a close. */
    private static final Set<String> OWN = Set.of(Products.FILE, Bundles.FILE);

    private static final Set<TakenUp> TAKEN_AFTER_THE_LIMIT =
            EnumSet.of(TakenUp.ERROR, TakenUp.NIL_NET);

    private ClosedReturn() {}

    static VatReturn of(Close close, List<ClosedCorrection> corrections) {
        Law law = law(close);
        List<BoxFigure> boxes =
                law.form(close.end()).stream()
                        .map(
                                box ->
                                        new BoxFigure(
                                                box,
                                                close.exact().getOrDefault(box.id(), Amount.ZERO),
                                                close.figures()
                                                        .getOrDefault(box.id(), Amount.ZERO)))
                        .toList();
        return new VatReturn(
                new Period(close.period(), close.start(), close.end(), close.due()),
                VatReturn.Status.CLOSED,
                boxes,
                Figured.direction(boxes),
                close.adjustments().stream().map(Adjustment::of).toList(),
                close.queries().stream().map(ClosedReturn::query).toList(),
                corrections(close, law, corrections));
    }

    /** The worksheet, with the limit as it was: by the figures without what was taken up. */
    private static CorrectionSheet corrections(
            Close close, Law law, List<ClosedCorrection> corrections) {
        List<Correction> rows = corrections.stream().map(Correction::of).toList();
        Figured figured = new Figured();
        figured.add(close.exact());
        rows.stream()
                .filter(r -> TAKEN_AFTER_THE_LIMIT.contains(r.takenUp()))
                .forEach(r -> figured.add(Wrong.difference(r.boxes(), Map.of())));
        Map<String, Amount> figures = new HashMap<>();
        figured.boxes(law.form(close.end())).forEach(b -> figures.put(b.box().id(), b.figure()));
        return CorrectionSheet.of(
                rows,
                Sides.of(law.form(close.end())),
                CorrectionLimit.of(law, close.settings().choices(), close.start(), figures));
    }

    static Law law(Close close) {
        return Law.of(
                close.tables().stream()
                        .filter(t -> !OWN.contains(t.name()))
                        .map(t -> new TableFile(t.name(), t.sha256(), t.text()))
                        .toList());
    }

    /** The product list a period was closed with. */
    static Products products(Close close) {
        return own(close, Products.FILE).map(Products::parse).orElse(Products.none());
    }

    /** The list of bundles a period was closed with. */
    static Bundles bundles(Close close) {
        return own(close, Bundles.FILE).map(Bundles::parse).orElse(Bundles.none());
    }

    private static Optional<String> own(Close close, String name) {
        return close.tables().stream()
                .filter(t -> t.name().equals(name))
                .findFirst()
                .map(TableText::text);
    }

    private static Query query(ClosedQuery closed) {
        return new Query(
                closed.id(),
                closed.entry() == 0 ? OptionalLong.empty() : OptionalLong.of(closed.entry()),
                closed.place(),
                closed.question(),
                closed.money(),
                closed.holdsClose(),
                closed.answer());
    }

    static ClosedQuery frozen(Query query) {
        return new ClosedQuery(
                query.id(),
                query.entry().orElse(0),
                query.place(),
                query.question(),
                query.money(),
                query.holdsClose(),
                query.answer());
    }
}
