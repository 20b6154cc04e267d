package quarterfold.intake;

import java.time.LocalDate;
import java.util.Optional;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.Line;
import quarterfold.ledger.Profile;

/** Makes the lines of a row: what they share is read once. For one thread. */
final class LineMaker {
    private final Cell dateCell;
    private final Cell paidCell;
    private final DateReader dates;
    private final DateReader payments;
    private final Notes notes;
    private final ParticularCells particulars;
    private final ItemReader items = new ItemReader();
    private Optional<LocalDate> date = Optional.empty();
    private Optional<LocalDate> paid = Optional.empty();
    private String note = "";

    LineMaker(FieldCells cells, DateReader dates, Notes notes) {
        dateCell = cells.cell(Field.DATE);
        paidCell = cells.cell(Field.PAID);
        this.dates = dates;
        payments = dates.another();
        this.notes = notes;
        particulars = new ParticularCells(cells, dates);
    }

    /** Reads the row's dates and notes; false where a date is not one, as problems say. */
    boolean start(Row row) {
        int column = dateCell.column();
        date = dates.read(row.text(column));
        if (date.isEmpty()) {
            row.wrong(column, dates.expected());
        }
        String payment = paidCell.text(row);
        paid = Optional.empty();
        if (!payment.isEmpty()) {
            paid = payments.read(payment);
            if (paid.isEmpty()) {
                row.wrong(paidCell.column(), payments.expected());
            }
        }
        note = notes.read(row);
        boolean particular = particulars.start(row);
        return particular && date.isPresent() && (payment.isEmpty() || paid.isPresent());
    }

    /** {@code own}: the cells of this line, where they differ from the row's. */
    Line line(Row row, LineCells own, Profile profile, Amounts amounts, String original) {
        return new Line(
                row.number(),
                date.orElseThrow(),
                profile,
                items.read(own, row),
                own.document().text(row),
                own.order().text(row),
                amounts,
                paid,
                particulars.stated(),
                original,
                note);
    }
}
