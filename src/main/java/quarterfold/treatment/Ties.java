package quarterfold.treatment;

import quarterfold.law.Law;

/** What the entries of a ledger say of one another: payments of documents, refunds of exports. */
public final class Ties {

    /** Entries that say nothing of one another. */
    public static final Ties NONE = new Ties(Payments.NONE, ExportSales.NONE);

    private final Payments payments;
    private final ExportSales exportSales;

    private Ties(Payments payments, ExportSales exportSales) {
        this.payments = payments;
        this.exportSales = exportSales;
    }

    /** The ties in a ledger; of a book without payment rows and exports, found at once. */
    public static Ties of(Search ledger, Law law, Answers answers) {
        return new Ties(
                Payments.of(ledger, answers),
                ExportSales.of(ledger, new ExportEvidence(law), answers));
    }

    Payments payments() {
        return payments;
    }

    ExportSales exportSales() {
        return exportSales;
    }
}
