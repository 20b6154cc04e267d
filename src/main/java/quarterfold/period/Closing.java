package quarterfold.period;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import quarterfold.law.Law;
import quarterfold.ledger.Close;
import quarterfold.ledger.CloseWriter;
import quarterfold.ledger.ClosedEntry;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.TableText;
import quarterfold.money.Amount;
import quarterfold.treatment.EvidenceGrade;
import quarterfold.treatment.Treated;

/**
 * Closes a period: freezes its entries as treated, its figures, its open queries and the tables
 * used, in one transaction.
 */
public final class Closing {

    private final Ledger ledger;
    private final Law law;
    private final Returns returns;

    public Closing(Ledger ledger, Law law, Returns returns) {
        this.ledger = ledger;
        this.law = law;
        this.returns = returns;
    }

    /** An earlier period that must be closed first: it is open and has entries. */
    public Optional<Period> openBefore(Period period) {
        return OutOfPeriod.earliestOpenBefore(ledger, returns.calendar(), period);
    }

    /**
     * Freezes the period.
     *
     * @throws LedgerException if it is closed already, or another process is writing
     */
    public VatReturn close(Period period) throws LedgerException {
        try (CloseWriter writer = ledger.beginClose(period.name())) {
            VatReturn draft = returns.draft(period, treated -> writer.add(frozen(treated)));
            writer.commit(
                    new Close(
                            period.name(),
                            period.start(),
                            period.end(),
                            period.due(),
                            draft.direction().code(),
                            returns.settings(),
                            ledger.lastEntry(),
                            ledger.lastDecision(),
                            figures(draft, BoxFigure::exact),
                            figures(draft, BoxFigure::figure),
                            inOrder(draft, returns.otherRounding(period)),
                            draft.adjustments().stream().map(Adjustment::frozen).toList(),
                            draft.queries().stream().map(ClosedReturn::frozen).toList(),
                            law.files().stream()
                                    .map(f -> new TableText(f.name(), f.sha256(), f.text()))
                                    .toList()));
        }
        return returns.of(period);
    }

    private static ClosedEntry frozen(Treated treated) {
        return new ClosedEntry(
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
                EvidenceGrade.text(treated.evidence()));
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
