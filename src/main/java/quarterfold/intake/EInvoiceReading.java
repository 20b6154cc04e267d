package quarterfold.intake;

import quarterfold.ledger.Line;

/** An e-invoice being read: a row for each line of its VAT breakdown. */
final class EInvoiceReading implements Reading {
    private final Invoice invoice;
    private final InvoiceQuestions questions;
    private final InvoiceLines lines;
    private final String place;
    private final Problems problems;
    private int row;

    /**
     * @param pages of the PDF that holds it
     * @param place the name of the file that is the invoice, for problems
     * @param file that is it, or holds it
     */
    EInvoiceReading(
            Invoice invoice, InvoiceSide side, InvoicePages pages, String place, Brought file) {
        this.invoice = invoice;
        this.questions = new InvoiceQuestions(invoice, side, pages);
        this.lines = new InvoiceLines(invoice, side, questions.evidence(), file.book().currency());
        this.place = place;
        this.problems = file.problems();
    }

    @Override
    public String layout() {
        return EInvoice.NAME;
    }

    @Override
    public String kind() {
        return "e-invoice";
    }

    @Override
    public boolean next() {
        if (row == invoice.breakdown().size()) {
            return false;
        }
        row++;
        return true;
    }

    private Invoice.VatLine current() {
        return invoice.breakdown().get(row - 1);
    }

    @Override
    public long read(RowReader.Output output) {
        Line line = lines.line(row);
        output.line(line);
        return Math.addExact(current().net().tenThousandths(), current().vat().tenThousandths())
                * line.profile().kind().direction();
    }

    @Override
    public void fault(String fault) {
        problems.add(new Problem(place + ":" + current().line(), "", fault));
    }

    @Override
    public void finish() {}

    @Override
    public void raise(Payouts.Raise raise) {
        questions.raise(raise);
    }

    @Override
    public void close() {}
}
