package quarterfold.intake;

import quarterfold.ledger.Line;

/** Gives the lines of a file's rows to its settlements, and all that rows give on. */
final class ToSettlements implements RowReader.Output {
    private final Payouts payouts;
    private RowReader.Output next =
            new RowReader.Output() {
                @Override
                public void line(Line line) {}

                @Override
                public void setAside(long row, String reason) {}
            };

    ToSettlements(Payouts payouts) {
        this.payouts = payouts;
    }

    /** This, giving on to {@code output} from now on. */
    RowReader.Output and(RowReader.Output output) {
        next = output;
        return this;
    }

    @Override
    public void line(Line line) {
        payouts.add(line);
        next.line(line);
    }

    @Override
    public void asked(Ask ask) {
        next.asked(ask);
    }

    @Override
    public void setAside(long row, String reason) {
        next.setAside(row, reason);
    }
}
