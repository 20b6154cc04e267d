package quarterfold.treatment;

import quarterfold.law.Law;

/**
 * What the entries of a ledger say of one another: payments of documents, refunds of exports, lines
 * of import certificates and statements.
 */
public final class Ties {

    /** Entries that say nothing of one another. */
    public static final Ties NONE =
            new Ties(Payments.NONE, ExportSales.NONE, ImportStatements.NONE);

    private final Payments payments;
    private final ExportSales exportSales;
    private final ImportStatements imports;

    private Ties(Payments payments, ExportSales exportSales, ImportStatements imports) {
        this.payments = payments;
        this.exportSales = exportSales;
        this.imports = imports;
    }

    /** The ties in a ledger; of a book without payment rows, exports and imports found at once. */
    public static Ties of(Search ledger, Law law, Answers answers) {
        return new Ties(
                Payments.of(ledger, answers),
                ExportSales.of(ledger, new ExportEvidence(law), answers),
                ImportStatements.of(ledger, answers));
    }

    /** Which lines of import certificates and statements count. */
    public ImportStatements imports() {
        return imports;
    }

    Payments payments() {
        return payments;
    }

    ExportSales exportSales() {
        return exportSales;
    }
}
