package quarterfold.period;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Ledger;
import quarterfold.treatment.Answers;
import quarterfold.treatment.Context;
import quarterfold.treatment.ImportStatements;
import quarterfold.treatment.Occasion;
import quarterfold.treatment.TakenUp;
import quarterfold.treatment.Treated;
import quarterfold.treatment.TreatmentRun;

/**
 * Sets the line of a postponed import VAT statement against the estimate of the same import: only
 * the difference counts, in the period of the statement's line, and it is no error (GOV.UK,
 * Understanding your monthly postponed import VAT statements; Complete your VAT Return to account
 * for import VAT).
 *
 * <p>An estimate is a line of postponed import VAT without its statement; the two are one import
 * where they name the same entry as their document. Of several lines of a statement for one entry
 * the first that counts takes the estimate off.
 */
final class TrueUps {

    private final Answers answers;
    private final ImportStatements imports;
    private final Map<String, List<Entry>> estimates = new HashMap<>();
    private final Map<String, Long> statements = new HashMap<>();

    private TrueUps(Context context) {
        this.answers = context.answers();
        this.imports = context.ties().imports();
    }

    static TrueUps of(Ledger ledger, Context context) {
        TrueUps trueUps = new TrueUps(context);
        if (ledger.search()
                .hasOtherEvidence(Kind.IMPORT_VAT_POSTPONED, Evidence.POSTPONED_STATEMENT)) {
            ledger.forEachOfKind(Kind.IMPORT_VAT_POSTPONED, trueUps::see);
        }
        return trueUps;
    }

    private void see(Entry entry) {
        String document = entry.line().document();
        if (document.isEmpty()) {
            return;
        }
        if (isStatement(entry)) {
            if (imports.counts(entry)) {
                statements.putIfAbsent(document, entry.number());
            }
        } else {
            estimates.computeIfAbsent(document, d -> new ArrayList<>()).add(entry);
        }
    }

    private boolean isStatement(Entry entry) {
        return answers.stated(entry).profile().evidence() == Evidence.POSTPONED_STATEMENT;
    }

    /** The same, less the estimate where it is the statement of one. */
    Treated apply(Treated treated, TreatmentRun run) {
        Entry entry = treated.entry();
        if (estimates.isEmpty()
                || entry.kind() != Kind.IMPORT_VAT_POSTPONED
                || statements.getOrDefault(entry.line().document(), 0L) != entry.number()) {
            return treated;
        }
        Treated left = treated;
        for (Entry estimate : estimates.getOrDefault(entry.line().document(), List.of())) {
            left = less(left, run.treat(Occasion.of(estimate)));
        }
        return left;
    }

    private static Treated less(Treated statement, Treated estimate) {
        return new Treated(
                statement.occasion(),
                TakenUp.TRUED_UP,
                statement.treatment(),
                statement.rule(),
                statement.why(),
                statement.citation(),
                statement.rate(),
                statement.net().minus(estimate.net()),
                statement.vat().minus(estimate.vat()),
                statement.claim().minus(estimate.claim()),
                Wrong.difference(estimate.boxes(), statement.boxes()),
                statement.queries());
    }
}
