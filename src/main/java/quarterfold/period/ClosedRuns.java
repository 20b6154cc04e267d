package quarterfold.period;

import java.time.YearMonth;
import java.util.HashMap;
import java.util.Map;
import quarterfold.ledger.Close;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Ledger;
import quarterfold.treatment.Context;
import quarterfold.treatment.Occasion;
import quarterfold.treatment.Timing;
import quarterfold.treatment.Treated;
import quarterfold.treatment.TreatmentRun;

/**
 * Treats occasions of closed returns again, with the tables and settings of the close and the
 * decisions of now. An entry of a document with several is treated after those before it, since VAT
 * on a document is rounded once for the whole.
 */
final class ClosedRuns {

    private final Ledger ledger;
    private final Context context;
    private final Timing timing;
    private final TrueUps trueUps;
    private final Map<YearMonth, Context> contexts = new HashMap<>();

    ClosedRuns(Ledger ledger, Context context, Timing timing, TrueUps trueUps) {
        this.ledger = ledger;
        this.context = context;
        this.timing = timing;
        this.trueUps = trueUps;
    }

    Treated treat(Occasion occasion, Close close) {
        TreatmentRun run =
                new TreatmentRun(
                        contexts.computeIfAbsent(
                                close.period(),
                                p -> context.under(ClosedReturn.law(close), close.settings())));
        Entry entry = occasion.entry();
        if (Closes.contains(close, occasion.day()) && !entry.line().document().isEmpty()) {
            ledger.forEach(
                    close.start(),
                    close.end(),
                    other -> {
                        if (isOfItsDocument(other, entry)) {
                            timing.of(other).stream()
                                    .filter(o -> Closes.contains(close, o.day()))
                                    .forEach(run::treat);
                        }
                    });
        }
        return trueUps.apply(run.treat(occasion), run);
    }

    /** Whether an entry came before another one of the same document. */
    private static boolean isOfItsDocument(Entry other, Entry entry) {
        return other.number() < entry.number()
                && other.line().document().equals(entry.line().document())
                && other.profile().party().equals(entry.profile().party());
    }
}
