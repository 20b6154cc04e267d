package quarterfold.treatment;

import java.util.Optional;
import java.util.function.Consumer;
import quarterfold.law.Law;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;

/**
 * What several entries of the ledger come to together.
 *
 * @param claims what suppliers' documents come to, and which seem to be claimed twice; empty where
 *     entries stand alone
 * @param stockVat the VAT on all goods on hand when the registration ended, in sterling
 */
public record Together(Optional<DoubleClaims> claims, Amount stockVat) {

    /** Of a ledger without such entries. */
    public static final Together NONE = new Together(Optional.empty(), Amount.ZERO);

    /** A way through entries of the ledger, in the order of their numbers. */
    public interface Scan {
        void forEach(Consumer<Entry> each);
    }

    /**
     * What the entries of a ledger come to.
     *
     * @param claims shows at least the entries of {@link DoubleClaims#mayConcern}
     * @param known what is known of entries beside themselves
     * @param imports which lines of import certificates and statements count
     * @param stock shows at least the entries of goods on hand
     */
    public static Together of(
            Scan claims,
            Scan stock,
            Law law,
            Settings settings,
            Liabilities liabilities,
            Answers answers,
            Exchange exchange,
            DoubleClaims.Known known,
            ImportStatements imports) {
        return new Together(
                Optional.of(DoubleClaims.of(claims, law, answers, known, imports)),
                new StockOnHand(law, settings, liabilities, answers, exchange).vat(stock));
    }
}
