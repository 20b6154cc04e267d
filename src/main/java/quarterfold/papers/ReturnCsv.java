package quarterfold.papers;

import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.commons.csv.CSVFormat;
import quarterfold.period.BoxFigure;
import quarterfold.period.VatReturn;

/** A return as CSV (RFC 4180): a row per box, with its figure and the sum before rounding. */
final class ReturnCsv {

    private ReturnCsv() {}

    static String of(VatReturn vatReturn) {
        StringBuilder text = new StringBuilder();
        try {
            row(text, "box", "label", "figure", "exact", "export_name");
            for (BoxFigure box : vatReturn.boxes()) {
                row(
                        text,
                        box.box().id(),
                        box.box().label(),
                        box.text(),
                        box.exact(),
                        box.box().exportName());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private static void row(StringBuilder text, Object... cells) throws IOException {
        CSVFormat.RFC4180.printRecord(text, cells);
    }
}
