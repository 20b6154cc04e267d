package quarterfold.period;

import java.util.Optional;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Products;

/**
 * Whether anything in a book says that there are exempt supplies, or purchases to be used for such.
 * Nothing does in most books, and then partial exemption costs them no reading. Looked up once.
 */
final class ExemptTrade {

    private static final String EXEMPT = "exempt";

    private final Ledger ledger;
    private final Products products;
    private Optional<Boolean> mayBe = Optional.empty();

    ExemptTrade(Ledger ledger, Products products) {
        this.ledger = ledger;
        this.products = products;
    }

    boolean mayBe() {
        if (mayBe.isEmpty()) {
            mayBe =
                    Optional.of(
                            ledger.search().hasExemptSales()
                                    || products.has(EXEMPT)
                                    || decidedExempt()
                                    || usedExempt());
        }
        return mayBe.get();
    }

    private boolean decidedExempt() {
        return Decision.inForce(ledger.decisions()).stream()
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
