package quarterfold.papers;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
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

    private static final List<String> COLUMNS =
            List.of(
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

    private final StringBuilder text = new StringBuilder();

    private CorrectionCsv() {}

    static String of(VatReturn vatReturn) {
        CorrectionSheet sheet = vatReturn.corrections();
        CorrectionCsv csv = new CorrectionCsv();
        csv.print(COLUMNS);
        sheet.byPeriod().forEach(csv::entry);
        for (TakenUp how : TakenUp.values()) {
            List<Correction> rows = sheet.rows(how);
            if (!rows.isEmpty()) {
                csv.total(sheet, how, rows);
            }
        }
        sheet.limit()
                .ifPresent(
                        limit ->
                                csv.row(
                                        Map.of(
                                                "row",
                                                "limit",
                                                "net",
                                                limit.amount(),
                                                "why",
                                                limit.why() + " [" + limit.authority() + "]")));
        return csv.text.toString();
    }

    private void entry(Correction correction) {
        for (String box : correction.boxIds()) {
            row(
                    Map.ofEntries(
                            Map.entry("row", "entry"),
                            Map.entry("of_period", correction.of()),
                            Map.entry("entry", correction.entry()),
                            Map.entry("day", correction.day()),
                            Map.entry("box", box),
                            Map.entry("declared", of(correction.declared(), box)),
                            Map.entry("right", of(correction.right(), box)),
                            Map.entry("difference", of(correction.difference(), box)),
                            Map.entry("taken_up", correction.takenUp().code()),
                            Map.entry("on_this_return", of(correction.boxes(), box)),
                            Map.entry("why", correction.why())));
        }
    }

    private void total(CorrectionSheet sheet, TakenUp how, List<Correction> rows) {
        row(
                Map.of(
                        "row",
                        "total",
                        "taken_up",
                        how.code(),
                        "on_this_return",
                        sheet.boxes(rows).entrySet().stream()
                                .map(b -> b.getKey() + ": " + b.getValue())
                                .collect(Collectors.joining("; ")),
                        "output",
                        sheet.output(rows),
                        "input",
                        sheet.input(rows),
                        "net",
                        sheet.net(rows),
                        "why",
                        how.words()));
    }

    private static Amount of(Map<String, Amount> boxes, String box) {
        return boxes.getOrDefault(box, Amount.ZERO);
    }

    /** A row of cells by their columns; a column that is not there stays blank. */
    private void row(Map<String, ?> cells) {
        print(
                COLUMNS.stream()
                        .map(
                                column ->
                                        cells.containsKey(column)
                                                ? String.valueOf(cells.get(column))
                                                : "")
                        .toList());
    }

    private void print(List<String> cells) {
        try {
            CSVFormat.RFC4180.printRecord(text, cells.toArray());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
