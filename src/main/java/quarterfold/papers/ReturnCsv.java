package quarterfold.papers;

import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.commons.csv.CSVFormat;
import quarterfold.money.Amount;
import quarterfold.period.BoxFigure;
import quarterfold.period.VatReturn;

/**
 * A return as CSV (RFC 4180): a row per box, with its figure, the sum before rounding and the part
 * of that sum that is no entry's.
 */
final class ReturnCsv {

    private ReturnCsv() {}

    static String of(VatReturn vatReturn) {
        StringBuilder text = new StringBuilder();
        try {
            row(text, "box", "label", "figure", "exact", "adjusted", "export_name");
            for (BoxFigure box : vatReturn.boxes()) {
                row(
                        text,
                        box.box().id(),
                        box.box().label(),
                        box.text(),
                        box.exact(),
                        adjusted(vatReturn, box.box().id()),
                        box.box().exportName());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    /** The part of a box's sum that is no entry's. */
    private static Amount adjusted(VatReturn vatReturn, String box) {
        return vatReturn.adjustments().stream()
                .map(a -> a.boxes().getOrDefault(box, Amount.ZERO))
                .reduce(Amount.ZERO, Amount::plus);
    }

    private static void row(StringBuilder text, Object... cells) throws IOException {
        CSVFormat.RFC4180.printRecord(text, cells);
    }
}
