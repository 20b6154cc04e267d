package quarterfold.papers;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import quarterfold.money.Amount;
import quarterfold.period.Correction;
import quarterfold.period.CorrectionLimit;
import quarterfold.period.CorrectionSheet;
import quarterfold.period.Pack;

/**
 * The worksheet of corrections in the workbook: what the return takes up of earlier periods, a row
 * for each entry and box. A return that takes up none has no such sheet.
 */
final class CorrectionRows {

    private static final double MONEY = 14;

    private record Row(Correction correction, String box) {
        Amount declared() {
            return in(correction.declared());
        }

        Amount right() {
            return in(correction.right());
        }

        Amount difference() {
            return right().minus(declared());
        }

        Amount takenUp() {
            return in(correction.boxes());
        }

        private Amount in(Map<String, Amount> boxes) {
            return boxes.getOrDefault(box, Amount.ZERO);
        }
    }

    private CorrectionRows() {}

    static void write(Sheets sheets, Pack pack) {
        CorrectionSheet corrections = pack.vatReturn().corrections();
        List<Row> rows = corrections.byPeriod().stream().flatMap(CorrectionRows::of).toList();
        if (rows.isEmpty()) {
            return;
        }
        List<Column<Row>> columns =
                List.of(
                        Column.text("Of period", 11, r -> r.correction().of().toString()),
                        Column.whole("Entry", 9, r -> r.correction().entry()),
                        Column.of("Day", 14, r -> new Value.Day(r.correction().day())),
                        Column.text("Box", 6, Row::box),
                        Column.money("Declared", MONEY, Row::declared),
                        Column.money("Right", MONEY, Row::right),
                        Column.money("Difference", MONEY, Row::difference),
                        Column.money("On this return", MONEY, Row::takenUp),
                        Column.text("Taken up as", 40, r -> r.correction().takenUp().words()),
                        Column.text("Why", 84, r -> r.correction().why()));
        ListSheet<Row> list =
                new ListSheet<>(
                        sheets,
                        new ListSheet.Heading(
                                "Corrections",
                                corrections
                                        .limit()
                                        .map(CorrectionRows::limit)
                                        .orElse("What this return takes up of earlier periods."),
                                "Nothing of an earlier period was taken up.",
                                30),
                        columns,
                        rows.size(),
                        (page, column) -> Amount.ZERO);
        rows.forEach(list::add);
    }

    private static String limit(CorrectionLimit limit) {
        return "What this return takes up of earlier periods. Errors are put right on it up to "
                + limit.amount()
                + " net: "
                + limit.why()
                + ".";
    }

    private static Stream<Row> of(Correction correction) {
        return correction.boxIds().stream().map(box -> new Row(correction, box));
    }
}
