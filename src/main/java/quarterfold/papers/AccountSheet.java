package quarterfold.papers;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import quarterfold.period.VatAccount;

/**
 * The VAT account of the period, one row for each of its lines: VAT Regulations 1995 reg 32. Each
 * box column adds up to the box of the return before its rounding.
 */
final class AccountSheet {

    private static final double MONEY = 16;

    private record Row(String portion, VatAccount.Line line) {}

    private AccountSheet() {}

    static void write(Sheets sheets, VatAccount account) {
        List<Row> rows =
                Stream.of(account.payable(), account.allowable())
                        .flatMap(AccountSheet::of)
                        .toList();
        List<String> ids =
                Stream.of(account.payable(), account.allowable())
                        .flatMap(half -> half.boxes().stream())
                        .toList();
        List<Column<Row>> columns =
                new ArrayList<>(
                        List.of(
                                Column.text("Portion", 24, Row::portion),
                                Column.text("Line", 58, r -> r.line().line().label()),
                                Column.count("Entries", 10, r -> r.line().entries()),
                                Column.count("Adjustments", 13, r -> r.line().adjustments())));
        BoxColumns<Row> boxes = new BoxColumns<>(ids, columns.size(), r -> r.line().boxes());
        columns.addAll(boxes.columns(MONEY));
        columns.add(Column.text("Rests on", 60, r -> r.line().source()));
        ListSheet<Row> list =
                new ListSheet<>(
                        sheets,
                        new ListSheet.Heading(
                                "VAT account",
                                "What is payable and what is allowable, line by line; each box"
                                        + " column adds up to its box before the rounding.",
                                "Nothing was payable or allowable.",
                                30),
                        columns,
                        rows.size(),
                        (page, column) -> boxes.total(rows, column));
        rows.forEach(list::add);
    }

    private static Stream<Row> of(VatAccount.Half half) {
        String portion = "VAT " + half.portion().code().toLowerCase(Locale.ROOT) + " portion";
        return half.lines().stream().map(line -> new Row(portion, line));
    }
}
