package quarterfold.period;

import java.time.YearMonth;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import quarterfold.ledger.Close;
import quarterfold.ledger.CloseWriter;
import quarterfold.ledger.ClosedEntry;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.LedgerException;
import quarterfold.money.Amount;
import quarterfold.treatment.Conversion;
import quarterfold.treatment.EvidenceGrade;
import quarterfold.treatment.Treated;

/**
 * Closes a period: freezes its entries as treated, its figures, its queries, the decisions known,
 * and the tables and the product list used, in one transaction.
 */
public final class Closing {

    private final Ledger ledger;
    private final Returns returns;

    public Closing(Ledger ledger, Returns returns) {
        this.ledger = ledger;
        this.returns = returns;
    }

    /**
     * An earlier period that must be closed first: it is open and has entries, or takes up what is
     * wrong in closed returns.
     */
    public Optional<Period> openBefore(Period period) {
        return OutOfPeriod.earliestOpenBefore(ledger, returns.calendar(), period)
                .or(
                        () ->
                                returns.takesUpErrors()
                                        .filter(p -> p.end().isBefore(period.start()))
                                        .filter(p -> returns.hasErrors()));
    }

    /**
     * Freezes the period, unless an earlier one must be closed first or open questions hold it:
     * then nothing is written.
     *
     * @throws LedgerException if it is closed already, or another process is writing
     */
    public CloseResult close(Period period) throws LedgerException {
        Optional<Period> before = openBefore(period);
        if (before.isPresent()) {
            return new CloseResult.OutOfTurn(period, before.get());
        }
        try (CloseWriter writer = ledger.beginClose(period.name())) {
            VatReturn draft =
                    returns.draft(period, treated -> writer.add(frozen(period.name(), treated)));
            if (!draft.holdingClose().isEmpty()) {
                return new CloseResult.Held(draft);
            }
            draft.corrections().rows().forEach(row -> writer.add(row.frozen()));
            writer.commit(close(period, draft));
        }
        return new CloseResult.Closed(returns.of(period));
    }

    private Close close(Period period, VatReturn draft) {
        return new Close(
                period.name(),
                period.start(),
                period.end(),
                period.due(),
                draft.direction().code(),
                returns.settings(),
                ledger.lastEntry(),
                ledger.lastDecision(),
                ledger.rates().last(),
                figures(draft, BoxFigure::exact),
                figures(draft, BoxFigure::figure),
                inOrder(draft, returns.otherRounding(period)),
                draft.adjustments().stream().map(Adjustment::frozen).toList(),
                draft.queries().stream().map(ClosedReturn::frozen).toList(),
                returns.tables());
    }

    static ClosedEntry frozen(YearMonth closedIn, Treated treated) {
        return new ClosedEntry(
                closedIn,
                treated.entry().number(),
                treated.occasion().day(),
                treated.occasion().cause().code(),
                treated.takenUp().code(),
                treated.treatment(),
                treated.rule(),
                treated.rate(),
                treated.net(),
                treated.vat(),
                treated.claim(),
                treated.boxes(),
                EvidenceGrade.text(treated.evidence()),
                treated.conversion().map(Conversion::text).orElse(""));
    }

    private static Map<String, Amount> figures(
            VatReturn vatReturn, Function<BoxFigure, Amount> figure) {
        Map<String, Amount> figures = new LinkedHashMap<>();
        vatReturn.boxes().forEach(b -> figures.put(b.box().id(), figure.apply(b)));
        return figures;
    }

    private static Map<String, Amount> inOrder(VatReturn vatReturn, Map<String, Amount> figures) {
        Map<String, Amount> ordered = new LinkedHashMap<>();
        vatReturn
                .boxes()
                .forEach(
                        b ->
                                ordered.put(
                                        b.box().id(),
                                        figures.getOrDefault(b.box().id(), Amount.ZERO)));
        return ordered;
    }
}
