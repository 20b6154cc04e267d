package quarterfold.papers;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import quarterfold.money.Amount;
import quarterfold.period.Correction;
import quarterfold.period.CorrectionSheet;
import quarterfold.period.VatReturn;
import quarterfold.treatment.TakenUp;

/**
 * The worksheet of corrections as CSV (RFC 4180): a row for each entry and box, by closed period,
 * with what was declared, what is right and the difference; then a row for each way of being taken
 * up with both sides and the net, and one for the limit. Amounts are plain digits.
 */
final class CorrectionCsv {

    private CorrectionCsv() {}

    static String of(VatReturn vatReturn) {
        CorrectionSheet sheet = vatReturn.corrections();
        StringBuilder text = new StringBuilder();
        try {
            print(
                    text,
                    "row",
                    "of_period",
                    "entry",
                    "day",
                    "box",
                    "declared",
                    "right",
                    "difference",
                    "taken_up",
                    "on_this_return",
                    "output",
                    "input",
                    "net",
                    "why");
            for (Correction row :
                    sheet.rows().stream().sorted(Comparator.comparing(Correction::of)).toList()) {
                entry(text, row);
            }
            for (TakenUp how : TakenUp.values()) {
                List<Correction> rows = sheet.rows(how);
                if (!rows.isEmpty()) {
                    total(text, sheet, how, rows);
                }
            }
            if (sheet.limit().isPresent()) {
                print(
                        text,
                        "limit",
                        "",
                        "",
                        "",
                        "",
                        "",
                        "",
                        "",
                        "",
                        "",
                        "",
                        "",
                        sheet.limit().get().amount(),
                        sheet.limit().get().why() + " [" + sheet.limit().get().authority() + "]");
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private static void entry(StringBuilder text, Correction row) throws IOException {
        TreeSet<String> boxes = new TreeSet<>(row.declared().keySet());
        boxes.addAll(row.right().keySet());
        for (String box : boxes) {
            print(
                    text,
                    "entry",
                    row.of(),
                    row.entry(),
                    row.day(),
                    box,
                    of(row.declared(), box),
                    of(row.right(), box),
                    of(row.difference(), box),
                    row.takenUp().code(),
                    of(row.boxes(), box),
                    "",
                    "",
                    "",
                    row.why());
        }
    }

    private static void total(
            StringBuilder text, CorrectionSheet sheet, TakenUp how, List<Correction> rows)
            throws IOException {
        print(
                text,
                "total",
                "",
                "",
                "",
                "",
                "",
                "",
                "",
                how.code(),
                sheet.boxes(rows).entrySet().stream()
                        .map(b -> b.getKey() + ": " + b.getValue())
                        .collect(Collectors.joining("; ")),
                sheet.output(rows),
                sheet.input(rows),
                sheet.net(rows),
                how.words());
    }

    private static Amount of(Map<String, Amount> boxes, String box) {
        return boxes.getOrDefault(box, Amount.ZERO);
    }

    private static void print(StringBuilder text, Object... cells) throws IOException {
        CSVFormat.RFC4180.printRecord(text, cells);
    }
}
