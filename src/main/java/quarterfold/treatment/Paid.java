package quarterfold.treatment;

import java.time.LocalDate;
import java.util.List;
import quarterfold.money.Amount;

/**
 * What was paid of an entry, by day.
 *
 * @param whole what is to be paid: of the document, where payments name one, else of the entry
 * @param parts each day's payment as the stretch of the whole that it covers, rising by day; a
 *     payment that was taken back runs backward
 */
record Paid(Amount whole, List<Part> parts) {

    /** What was paid on one day. */
    record Part(LocalDate day, Share share) {}

    Paid {
        parts = List.copyOf(parts);
    }

    /** All of it, on one day. */
    static Paid on(LocalDate day, Amount whole) {
        return new Paid(whole, List.of(new Part(day, new Share(Amount.ZERO, whole, whole))));
    }

    static Paid nothing(Amount whole) {
        return new Paid(whole, List.of());
    }

    /** How much was paid up to the end of a day. */
    Amount by(LocalDate day) {
        Amount paid = Amount.ZERO;
        for (Part part : parts) {
            if (!part.day().isAfter(day)) {
                paid = part.share().end();
            }
        }
        return paid;
    }

    /** All of what is to be paid. */
    Share all() {
        return whole.isZero() ? Share.WHOLE : new Share(Amount.ZERO, whole, whole);
    }
}
