package quarterfold.period;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Products;
import quarterfold.treatment.Answers;
import quarterfold.treatment.Treated;

/** The book's other periods, read from its ledger. */
final class OtherPeriods implements Basis.Others {

    private static final String EXEMPT = "exempt";

    private final Ledger ledger;
    private final Products products;
    private final Open open;
    private Optional<Boolean> mayBePartlyExempt = Optional.empty();

    /** Treats the entries of a period that is open. */
    interface Open {
        void forEachTreated(Period period, Consumer<Treated> each);
    }

    OtherPeriods(Ledger ledger, Products products, Open open) {
        this.ledger = ledger;
        this.products = products;
        this.open = open;
    }

    @Override
    public void forEachTreated(Period period, Consumer<Treated> each) {
        ledger.close(period.name())
                .ifPresentOrElse(
                        close -> new ClosedPack(ledger, close).forEachTreated(each),
                        () -> open.forEachTreated(period, each));
    }

    @Override
    public Optional<List<Adjustment>> taken(Period period) {
        return ledger.close(period.name())
                .map(close -> close.adjustments().stream().map(Adjustment::of).toList());
    }

    @Override
    public boolean mayBePartlyExempt() {
        if (mayBePartlyExempt.isEmpty()) {
            mayBePartlyExempt =
                    Optional.of(
                            ledger.hasExemptSales()
                                    || products.has(EXEMPT)
                                    || decidedExempt()
                                    || usedExempt());
        }
        return mayBePartlyExempt.get();
    }

    private boolean decidedExempt() {
        return Answers.inForce(ledger.decisions()).stream()
                .map(Decision::value)
                .anyMatch(value -> value.contains(EXEMPT) || value.contains("both"));
    }

    private boolean usedExempt() {
        boolean[] found = {false};
        ledger.forEachWithParticulars(
                entry ->
                        found[0] |=
                                entry.line()
                                        .particulars()
                                        .word(Particular.USE)
                                        .filter(use -> !use.equals("taxable"))
                                        .isPresent());
        return found[0];
    }
}
