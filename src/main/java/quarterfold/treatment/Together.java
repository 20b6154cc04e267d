package quarterfold.treatment;

import java.util.function.Consumer;
import quarterfold.law.Law;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;

/**
 * What several entries of the ledger come to together.
 *
 * @param documents what suppliers' documents come to, and which are entered twice
 * @param stockVat the VAT on all goods on hand when the registration ended, in sterling
 */
public record Together(SupplierDocuments documents, Amount stockVat) {

    /** Of a ledger without such entries. */
    public static final Together NONE = new Together(SupplierDocuments.NONE, Amount.ZERO);

    /** A way through entries of the ledger, in the order of their numbers. */
    public interface Scan {
        void forEach(Consumer<Entry> each);
    }

    /**
     * What the entries of a ledger come to.
     *
     * @param withDocument shows at least the entries that state a document
     * @param stock shows at least the entries of goods on hand
     */
    public static Together of(
            Scan withDocument,
            Scan stock,
            Law law,
            Settings settings,
            Liabilities liabilities,
            Answers answers,
            Exchange exchange) {
        return new Together(
                SupplierDocuments.of(withDocument, answers),
                new StockOnHand(law, settings, liabilities, answers, exchange).vat(stock));
    }
}
